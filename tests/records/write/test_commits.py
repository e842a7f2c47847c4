"""The message of an entry in git."""

import datetime as dt

import pytest

from recordgen.records.write.commits import Other, message

FOURTEENTH, SIXTEENTH = dt.date(2026, 10, 14), dt.date(2026, 10, 16)


@pytest.mark.parametrize(
    ("visits", "others", "expected"),
    [
        (
            [("Otter", FOURTEENTH), ("Bramble", FOURTEENTH), ("Pippin", FOURTEENTH)],
            [],
            "Willowmere, 14 October 2026: Bramble, Otter and Pippin seen",
        ),
        (
            [("Otter", SIXTEENTH), ("Bramble", FOURTEENTH)],
            [],
            "Willowmere: Bramble seen on 14 October 2026; Otter seen on 16 October 2026",
        ),
        ([], [Other("amended", "Bramble", FOURTEENTH)], "Willowmere: Bramble's visit of 14 October 2026 amended"),
        ([], [Other("taken out", "Bramble", FOURTEENTH)], "Willowmere: Bramble's visit of 14 October 2026 taken out"),
        ([], [Other("amended", "Bramble")], "Willowmere: Bramble's details amended"),
        ([], [Other("added", "Bramble")], "Willowmere: Bramble added"),
        ([], [Other(), Other()], "Willowmere: details of the stable amended"),
        ([], [Other(about="practice")], "Willowmere: details of the practice amended"),
        ([], [Other("added", about="pages")], "Willowmere: own pages added"),
        ([], [Other("added", about="files")], "Willowmere: other files added"),
        (
            [],
            [Other("added", "Bramble", about="photographs"), Other("added", "Bramble", about="photographs")],
            "Willowmere: photographs of Bramble added",
        ),
        (
            [],
            [Other("amended", "Bramble", about="sharing")],
            "Willowmere: whom Bramble's record was shared with amended",
        ),
        (
            [("Otter", FOURTEENTH)],
            [Other("added", "Otter")],
            "Willowmere, 14 October 2026: Otter seen; Otter added",
        ),
    ],
)
def test_an_entry_reads_as_a_line_of_a_diary(
    visits: list[tuple[str, dt.date]], others: list[Other], expected: str
) -> None:
    """Stable, day, horses, and what else changed."""
    assert message("Willowmere", visits, others).splitlines()[-1] == expected


def test_a_long_entry_begins_with_a_short_line() -> None:
    """Lists of entries stay readable; the names stand below."""
    visits = [(f"Horse{number:02d}", FOURTEENTH if number < 5 else SIXTEENTH) for number in range(12)]
    lines = message("Willowmere", visits, [Other()]).splitlines()

    assert lines[0] == "Willowmere, 14 October 2026 to 16 October 2026: 12 visits and 1 other change"
    assert lines[1] == ""
    assert "Horse11" in lines[2]

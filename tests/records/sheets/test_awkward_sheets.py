"""Ten awkward sheets, as people keep them: what was written is read, and what does not fit is told with its cell."""

from __future__ import annotations

import datetime as dt

import pytest

from tests.support.own_sheets import DAY, csv_of, feet, incoming, ods_of, proposed, xlsx_of

HEADS = ("Horse", "Date", "Foot", "Toe before (mm)")
ROWS = (HEADS, ("Bramble", "2024-03-14", "LF", "88"), ("Bramble", "2024-03-14", "RF", "86.5"))
READ = [
    (
        "bramble",
        "2024-03-14",
        {"left_fore": {"before": {"toe_length": "88"}}, "right_fore": {"before": {"toe_length": "86.5"}}},
    )
]


def test_one_with_a_mark_of_its_encoding() -> None:
    """A spreadsheet program puts three bytes before the first heading."""
    assert feet(b"\xef\xbb\xbf" + csv_of(ROWS).encode()) == READ


@pytest.mark.parametrize("encoding", ["utf-16", "utf-8"])
def test_one_in_another_unicode(encoding: str) -> None:
    """With tabs, as 'Unicode text' is saved."""
    assert feet(csv_of(ROWS, "\t").encode(encoding), "visits.tsv") == READ


def test_one_with_semicolons_and_decimal_commas() -> None:
    """The semicolon parts the values, though each line holds a comma too."""
    rows = (HEADS, ("Bramble", "14.3.2024", "LF", "88,5"), ("Fennel", "2.4.2024", "LF", "90,25"))
    found = feet(csv_of(rows, ";"))

    assert [one[2]["left_fore"]["before"]["toe_length"] for one in found] == ["88.5", "90.25"]
    assert [one[1] for one in found] == ["2024-03-14", "2024-04-02"]


def test_one_with_other_signs_within_its_texts() -> None:
    """A note in quotes over several lines, with semicolons at their ends, does not tell what parts the values."""
    raw = (
        'Horse,Date,Foot,Toe before (in),Notes\nBramble,2024-03-14,LF,3 1/4",";\n;"\nFennel,2024-03-14,LF,3",";;\n;;"\n'
    )
    found = feet(raw)

    assert [one[2]["left_fore"]["before"]["toe_length"] for one in found] == ['3 1/4"', '3"']
    assert found[0][2]["left_fore"]["note"] == ";\n;"


def test_one_in_the_code_page_of_old_windows() -> None:
    """A name with a letter that UTF-8 writes in two bytes is read as it was."""
    rows = (HEADS, ("Bjørk", "2024-03-14", "LF", "88"))
    found = incoming(csv_of(rows).encode("cp1252"))

    assert [(one.horse, one.name) for one in found.visits] == [("willowmere/?", "Bjørk")]


def test_one_with_merged_cells() -> None:
    """A name and a day merged over four rows tell of all four; what stands beside them is not spread."""
    rows = (
        (*HEADS, "Notes"),
        ("Bramble", DAY, "LF", 88, "short"),
        (None, None, "RF", 86.5, None),
        ("Fennel", DAY, "LF", 90, None),
    )
    found = feet(xlsx_of(rows, ["A2:A3", "B2:B3"]), "visits.xlsx")

    assert [(one[0], list(one[2])) for one in found] == [
        ("bramble", ["left_fore", "right_fore"]),
        ("fennel", ["left_fore"]),
    ]
    assert found[0][2]["right_fore"] == {"before": {"toe_length": "86.5"}}


def test_one_with_dates_of_the_spreadsheet() -> None:
    """A cell that is a date is that day, whatever its form; so is one with an hour; a bare number is told."""
    rows = (HEADS, ("Bramble", dt.datetime(2024, 3, 14, 9, 30), "LF", 88), ("Fennel", 45365, "LF", 90))
    found = incoming(xlsx_of(rows), "visits.xlsx")

    assert [one.day for one in found.visits] == [DAY]
    assert [problem.as_line() for problem in found.problems] == [
        "visits.xlsx[Visits]:3:2: error: B3: 45365 is a number, not a day. Give the column the form of a date in your "
        "program. [sheet-row]"
    ]


def test_one_with_a_row_of_totals() -> None:
    """It is proposed to be left out by its first word, and only where somebody agrees is nothing told of it."""
    raw = csv_of((*ROWS, ("Average", "", "", "87.25")))

    assert proposed(raw).record.leave_out == ("Average",)
    assert feet(raw) == READ
    assert [str(problem.place) for problem in incoming(raw, leave_out=()).problems] == ["visits.csv:4:2"]


def test_one_with_blank_rows_and_headings_again() -> None:
    """Both are passed over, as where a sheet was printed page by page."""
    assert feet(csv_of((ROWS[0], ROWS[1], ("", "", "", ""), ROWS[0], ROWS[2]))) == READ


def test_one_with_two_rows_of_headings_and_a_title() -> None:
    """The foot over several columns, merged or not, is joined with the measure below it."""
    rows = (
        ("Hoof book", None, None, None, None, None),
        (None, None, "Left fore", None, "Right fore", None),
        ("Horse", "Date", "Toe before", "Toe after", "Toe before", "Toe after"),
        ("Bramble", DAY, 88, 80, 86.5, 80),
    )
    for merged in ((), ("C2:D2", "E2:F2")):
        columns = proposed(xlsx_of(rows, merged), "visits.xlsx").record
        assert [one.is_ for one in columns.columns[2:]] == [
            *("left_fore.before.toe_length", "left_fore.after.toe_length"),
            *("right_fore.before.toe_length", "right_fore.after.toe_length"),
        ]
        (read,) = feet(xlsx_of(rows, merged), "visits.xlsx")
        assert read[2]["right_fore"] == {"before": {"toe_length": "86.5"}, "after": {"toe_length": "80"}}


def test_one_with_units_in_its_headings() -> None:
    """Inches and their fractions stay as they were typed, for the record to reckon; angles have no length."""
    rows = (
        ("Horse", "Date", "Foot", "Toe before (in)", "Sole depth (cm)", "Toe angle before °"),
        ("Bramble", "3/14/2024", "near fore", "3 5/16", "1.2", "48.5"),
        ("Fennel", "3/15/2024", "off hind", "3 1/4", "1", "50"),
    )
    first, second = feet(csv_of(rows))

    assert first[1:] == (
        "2024-03-14",
        {"left_fore": {"before": {"toe_length": "3 5/16 in", "toe_angle": "48.5"}, "sole": {"depth": "1.2 cm"}}},
    )
    assert list(second[2]) == ["right_hind"]


def test_one_with_words_in_a_number() -> None:
    """The visit comes in; the cell is told, and its words are kept for the private note."""
    found = incoming(csv_of((*ROWS, ("Fennel", "2024-03-14", "LF", "88 or so"))))
    (problem,) = found.problems

    assert (len(found.visits), problem.level, str(problem.place)) == (2, "warning", "visits.csv:4:4")
    assert problem.message.startswith("D4: ")
    assert "88 or so" in problem.message
    assert found.visits[1].record["feet"]["left_fore"]["before"]["toe_length"] == "88 or so"


def test_one_of_an_open_office() -> None:
    """The same rows as .ods, where an empty cell below a name means the same horse."""
    rows = (HEADS, ("Bramble", DAY, "LF", 88), (None, None, "RF", 86.5), (None, None, "LH", 85), (None, None, "RH", 85))
    columns = proposed(ods_of(rows), "visits.ods").record

    assert columns.same_as_above == ("horse", "date")
    (read,) = feet(ods_of(rows), "visits.ods")
    assert list(read[2]) == ["left_fore", "right_fore", "left_hind", "right_hind"]

"""recordgen receive with CSV and spreadsheets: proposed, corrected, shown, taken in, and never twice."""

from __future__ import annotations

import json
from pathlib import Path

import pytest
from click.testing import Result

from recordgen.records.load.folders import RECEIVED
from tests.support.commands import run
from tests.support.own_sheets import DAY, xlsx_of
from tests.support.practice_folders import TODAY, build

SHEET = """\
Horse;Date;Foot;Toe before (mm);Toe after (mm);Notes
Bramble;14.3.2024;LF;88,5;80;
Bramble;14.3.2024;RF;86;79;long since last time
Fennel;2.4.2024;near hind;84;79;
"""
TAKEN = """\
# Bramble, 14 March 2024. Out of visits.csv, row 2.
date: 2024-03-14
feet:
  left_fore:
    before: {toe_length: 88.5}
    after:  {toe_length: 80}
  right_fore:
    before: {toe_length: 86}
    after:  {toe_length: 79}
    note: long since last time
"""
FILE = "willowmere/bramble/2024-03-14.yaml"


class SheetDesk:
    """A practice of two horses, and a sheet of an earlier year beside it."""

    def __init__(self, folder: Path) -> None:
        self.records = build(folder / "records", {"willowmere/fennel/horse.yaml": "name: Fennel\n"})
        self.sheet = folder / "visits.csv"
        self.sheet.write_text(SHEET)
        self.columns = self.records / RECEIVED / "visits.columns.yaml"

    def receive(self, *words: str | Path) -> Result:
        """Give what taking in told."""
        return run("receive", self.sheet, *words, "--records", self.records, "--today", TODAY.isoformat())

    def files(self, whole: bool = False) -> dict[str, bytes]:
        """All files by their paths; without what was received unless `whole`."""
        found = {path.relative_to(self.records).as_posix(): path for path in self.records.rglob("*") if path.is_file()}
        return {name: path.read_bytes() for name, path in found.items() if whole or not name.startswith(RECEIVED)}

    def correct(self, before: str, after: str) -> None:
        """Change the file of columns."""
        text = self.columns.read_text()
        assert before in text
        self.columns.write_text(text.replace(before, after))


@pytest.fixture
def desk(tmp_path: Path) -> SheetDesk:
    """A practice and a sheet for one test."""
    return SheetDesk(tmp_path)


def test_a_new_sheet_is_proposed_and_nothing_of_it_is_taken_in(desk: SheetDesk) -> None:
    """Its columns lie in a file to correct, and visits are shown as they will be."""
    before = desk.files()
    told = desk.receive()

    assert (told.exit_code, desk.files()) == (0, before)
    assert "{column: D, heading: Toe before (mm), is: foot.before.toe_length, unit: mm}" in desk.columns.read_text()
    assert "".join(f"    {line}\n" for line in TAKEN.splitlines()) in told.output


def test_a_dry_run_shows_and_writes_nothing(desk: SheetDesk) -> None:
    """Not even the file of columns, which is printed instead."""
    before = desk.files(whole=True)
    told = desk.receive("--dry-run")

    assert desk.files(whole=True) == before
    assert "is: foot.before.toe_length" in told.output
    assert f"As {FILE} it will be:" in told.output


def test_the_second_time_it_is_taken_in_as_a_person_would_have_typed_it(desk: SheetDesk) -> None:
    """All visits, with the sheet kept as it came; the check passes."""
    desk.receive()
    told = desk.receive()

    assert (told.exit_code, desk.files()[FILE].decode()) == (0, TAKEN)
    assert (desk.records / RECEIVED / "sheet-visits.csv").read_bytes() == desk.sheet.read_bytes()
    assert "Receipt" not in told.output
    assert run("check", "--records", desk.records, "--today", TODAY.isoformat()).exit_code == 0


def test_the_same_sheet_again_changes_nothing(desk: SheetDesk) -> None:
    """Nor does one that grew by a row, but for that row; nor a file that was taken out since."""
    desk.receive()
    desk.receive()
    before = desk.files(whole=True)
    told = desk.receive()
    desk.sheet.write_text(SHEET + "Bramble;5.5.2024;LF;87;80;\n")
    (desk.records / FILE).unlink()
    grown = desk.receive()

    assert (told.exit_code, "2 visits of this sheet: here already." in told.output) == (0, True)
    assert grown.exit_code == 0
    assert desk.files().keys() ^ {name for name in before if not name.startswith(RECEIVED)} == {
        *(FILE, "willowmere/bramble/2024-05-05.yaml")
    }


def test_a_corrected_column_lays_the_other_reading_beside_what_is_there(desk: SheetDesk) -> None:
    """A visit that came in by a wrong column is not written over; somebody is asked."""
    desk.receive()
    desk.receive()
    desk.correct("is: foot.after.toe_length", "is: nothing")
    told = desk.receive()

    assert told.exit_code == 1
    assert desk.files()[FILE].decode() == TAKEN
    assert "There is another record of that day" in told.output


@pytest.mark.parametrize(
    ("before", "after", "line"),
    [
        (
            "is: foot.after.toe_length",
            "is: foot.after.toe_lenght",
            "17:42: error: no column can be 'foot.after.toe_lenght'. Did you mean foot.after.toe_length?",
        ),
        (
            "is: foot.after.toe_length",
            "is: foot.before.toe_length",
            "17:42: error: columns D and E are both 'foot.before.toe_length'. Keep one, and write is: nothing for the "
            "other.",
        ),
        (
            "{column: E",
            "{column: F",
            "17:17: error: over column F (F1) stands 'Notes', not 'Toe after (mm)'. Name the column where it is now, "
            "or the heading as it is.",
        ),
        ("is: date", "is: nothing", "12:1: error: no column is the date. Write is: date for the one that is."),
        (
            "each_row: foot",
            "each_row: visit",
            "7:1: error: column C is of the foot of its row, and each row is a whole visit. Name the foot, as "
            "left_fore.before.toe_length; or each_row: foot.",
        ),
        (
            "toe_length, unit: mm}\n  - {column: F",
            "toe_length}\n  - {column: F",
            "17:5: error: column E holds lengths, and nothing tells their unit. Write lengths: mm, lengths: cm or "
            "lengths: in.",
        ),
    ],
    ids=["misspelt", "twice", "moved", "without a day", "a row a visit", "without a unit"],
)
def test_a_file_of_columns_that_does_not_fit_is_told_line_by_line(
    desk: SheetDesk, before: str, after: str, line: str
) -> None:
    """Nothing of the sheet is read until it does."""
    desk.receive()
    desk.correct(before, after)
    told = desk.receive()

    assert told.exit_code == 1
    assert f"visits.columns.yaml:{line} [sheet-columns]" in told.output
    assert FILE not in desk.files()


def test_a_file_of_columns_that_is_none_is_told(desk: SheetDesk) -> None:
    """With its line; the sheet is not taken in."""
    desk.receive()
    desk.correct("first_row: 2", "first_row: two")
    told = desk.receive()

    assert told.exit_code == 1
    assert (
        "the columns cannot be read: visits.columns.yaml:6:1: first_row: 'two' does not read as a number" in told.output
    )


def test_what_does_not_fit_is_told_with_its_cell_and_stops_no_other_visit(desk: SheetDesk) -> None:
    """A day that is none, a foot that is none and with it all of its visit, a foot twice, a horse that is missing."""
    desk.sheet.write_text(
        SHEET
        + "Bramble;31.4.2024;LF;88;80;\nFennel;1.6.2024;LX;88;80;\nFennel;1.6.2024;LF;88;80;\n;1.6.2024;LF;88;80;\n"
        "Fennel;1.7.2024;LF;88;80;\nFennel;1.7.2024;LF;86;80;\n"
    )
    desk.receive()
    told = desk.receive()

    assert told.exit_code == 1
    assert [line.split(":")[4].strip() for line in told.output.splitlines() if line.startswith("visits.csv")] == [
        *("B5", "C6", "A8", "C10"),
    ]
    assert "visits.csv:6:3: error: C6: 'LX' is no foot, so nothing of that visit is taken in." in told.output
    assert "C10: the left fore of that visit stands in row 9 already" in told.output
    assert not any("2024-06" in name or "2024-07" in name for name in desk.files())
    assert FILE in desk.files()


def test_a_word_in_a_number_is_asked_about_and_stands_in_the_private_note(desk: SheetDesk) -> None:
    """Until it is answered; the answer then takes its place, and the sheet stays as it is."""
    desk.sheet.write_text(SHEET.replace("88,5", "ca 88"))
    desk.receive()
    told = desk.receive()
    answers = desk.records / RECEIVED / "answers.yaml"

    assert "visits.csv:2:4: warning: D2: feet, left_fore, before, toe_length: 'ca 88'" in told.output
    assert "Came as left fore, before, toe length: ca 88" in desk.files()[FILE].decode()
    answers.write_text(answers.read_text().replace("    answer:\n", "    answer: 88\n"))
    assert (desk.receive().exit_code, desk.files()[FILE].decode()) == (0, TAKEN.replace("88.5", "88"))


def test_an_unknown_horse_is_asked_about_or_begun_where_the_trimmer_says_so(desk: SheetDesk) -> None:
    """Its visits wait until then."""
    desk.sheet.write_text(SHEET.replace("Fennel", "Nettle"))
    desk.receive()
    waiting = desk.receive()

    assert "Nettle at Willowmere, 2 April 2024: not taken in yet" in waiting.output
    desk.correct("new_horses: no", "new_horses: yes")
    assert desk.receive().exit_code == 0
    assert desk.files()["willowmere/nettle/horse.yaml"] == b"name: Nettle\n"
    assert "willowmere/nettle/2024-04-02.yaml" in desk.files()


def test_several_stables_stand_in_one_sheet(desk: SheetDesk) -> None:
    """By name or folder, or by a name of their own in the file of columns; an unknown one is told once for all rows."""
    build(
        desk.records, {"old-mill/stable.yaml": "name: The Old Mill\n", "old-mill/bramble/horse.yaml": "name: Bramble\n"}
    )
    rows = [
        f"Bramble,{stable},2024-03-1{day},LF,88"
        for day, stable in enumerate(("Willowmere", "old-mill", "Mill yard", "Mill yard"))
    ]
    desk.sheet.write_text("\n".join(["Horse,Stable,Date,Foot,Toe before (mm)", *rows]))
    desk.receive()
    told = desk.receive()

    assert "visits.csv:4:2: error: B4, B5: there is no stable 'Mill yard' here" in told.output
    desk.correct("new_horses: no", "stables: {Mill yard: old-mill}\nnew_horses: no")
    assert desk.receive().exit_code == 0
    assert sorted(name for name in desk.files() if "2024" in name) == [
        *(f"old-mill/bramble/2024-03-1{day}.yaml" for day in (1, 2, 3)),
        "willowmere/bramble/2024-03-10.yaml",
    ]


def test_a_row_may_be_a_whole_visit_of_a_workbook(desk: SheetDesk) -> None:
    """With a column that is passed over, words that stand for others, and a scale that its heading names."""
    heads = ("Horse", "Date", "LF toe before (cm)", "RF toe before (cm)", "Lameness AAEP", "Sore", "Price")
    desk.sheet = desk.sheet.with_suffix(".xlsx")
    desk.sheet.write_bytes(
        xlsx_of([heads, ("Bramble", DAY, 8.8, 8.65, 1, "x", 45), ("Fennel", DAY, 9, None, None, None, 45)])
    )
    desk.receive()
    told = desk.receive()

    assert told.exit_code == 0
    assert desk.files()[FILE].decode().partition("\n")[2] == (
        "date: 2024-03-14\nlameness: {scale: AAEP, grade: 1}\nsore_after_last_trim: yes\nfeet:\n"
        "  left_fore:\n    before: {toe_length: 8.8 cm}\n  right_fore:\n    before: {toe_length: 8.65 cm}\n"
    )


def test_json_tells_the_cells_and_the_proposal(desk: SheetDesk) -> None:
    """For other programs."""
    proposed = json.loads(desk.receive("--json").output)
    taken = json.loads(desk.receive("--json").output)

    assert proposed["files"][0]["proposed"] == desk.columns.read_text()
    assert [one["did"] for one in taken["files"][0]["visits"]] == ["new", "new"]


@pytest.mark.parametrize(
    ("name", "raw", "told"),
    [
        ("visits.xlsx", b"PK\x03\x04 and no more", "visits.xlsx cannot be read as a spreadsheet. Open it in your"),
        ("visits.csv", b"\x00\x01\x02", "visits.csv is neither CSV nor a spreadsheet"),
        ("visits.csv", b" \n\n", "visits.csv is empty"),
        ("visits.csv", b"Horse,Date,Foot,Toe before\n", "visits.csv holds nothing below its headings"),
    ],
)
def test_what_is_no_sheet_is_told(desk: SheetDesk, name: str, raw: bytes, told: str) -> None:
    """With the way out, and nothing written but the file as it came."""
    desk.sheet = desk.sheet.with_name(name)
    desk.sheet.write_bytes(raw)
    found = desk.receive()

    assert found.exit_code == 1
    assert told in found.output
    assert "Traceback" not in found.output


def test_a_day_that_is_too_long_ago_is_asked_about(desk: SheetDesk) -> None:
    """A slip of a digit in the year is no end of the run; the other visits come in."""
    desk.sheet.write_text(SHEET.replace("2.4.2024", "2.4.1024"))
    proposed = desk.receive()
    told = desk.receive()

    assert (proposed.exit_code, told.exit_code) == (0, 1)
    assert "which is too long ago. On which day was it?" in told.output
    assert desk.files()[FILE].decode() == TAKEN

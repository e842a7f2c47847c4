"""Comments that YAML drops though they were meant, and comments that stay comments."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.load.practice import read_practice
from recordgen.records.models.horse import Horse
from recordgen.records.write.visit import skeleton
from tests.conftest import RECORDS, TODAY
from tests.support.practice_folders import VISIT, lines_of, problems_of

DATE = "date: 2026-10-14\n"


@pytest.mark.parametrize(
    ("typed", "lost", "way_out"),
    [
        ("note: Stall #4 is wet", "#4 is wet", 'Write note: "Stall #4 is wet"'),
        ("note: Stall # 4 is wet", "# 4 is wet", 'Write note: "Stall # 4 is wet"'),
        ("note: Stall   #4 is wet", "#4 is wet", 'Write note: "Stall #4 is wet"'),
        ("private_note: #urgent", "#urgent", 'Write private_note: "#urgent"'),
        ("private_note: # urgent", "# urgent", 'Write private_note: "# urgent"'),
        ("note: 'Stall 4' #wet", "#wet", 'Write note: "Stall 4 #wet"'),
        ("by: two\n  lines #3", "#3", 'Write by: "two lines #3"'),
        ("care: [dry-bed #straw\n  , x]", "#straw", 'Write "dry-bed #straw"'),
        ("care:\n  - dry-bed #straw", "#straw", 'Write "dry-bed #straw"'),
        ("care_ends: #all", "#all", "Take out the # where the value follows it"),
        ("feet: {LF: {landing: #flat\n  }}", "#flat", "Take out the # where the value follows it"),
        ("keeping: #mud\n  work: lanes", "#mud", "Write it where it belongs, such as in a note"),
        ("care: [dry-bed] #and hay", "#and hay", "Write it where it belongs, such as in a note"),
    ],
)
def test_text_behind_a_hash_is_told_with_its_place_and_the_way_to_keep_it(
    tmp_path: Path, typed: str, lost: str, way_out: str
) -> None:
    """A warning, since the file can be read; it stands where the # does."""
    text = f"{DATE}{typed}\n"
    found = [problem for problem in problems_of(tmp_path, text) if "#" in problem.message]

    (problem,) = found
    before = text[: text.index(lost)]
    assert problem.level == "warning"
    assert (problem.place.line, problem.place.column) == (before.count("\n") + 1, len(before.split("\n")[-1]) + 1)
    assert problem.message.endswith(f"'{lost}' is not read, since # begins a comment")
    assert problem.way_out.startswith(way_out)


@pytest.mark.parametrize(
    "typed",
    [
        "note: Rode out.  # ask Mara about hay",
        "note:   # for the owner",
        "# note: Stall #4 is wet",
        "note: 'Stall #4 is wet'",
        "note: Stall#4 is wet",
        "note: |\n  Stall #4\n  is wet",
        "note: >  #folded\n  Stall 4",
        "feet: {LF: {before: {toe_length: 88 #gauge\n  }}}",
        "feet:\n  LF:\n    landing: flat #as ever\n  #RF:\n  RF: {note: x}",
        "trimmed: no #only looked",
    ],
)
def test_a_comment_that_stands_apart_or_behind_a_whole_value_is_left_alone(tmp_path: Path, typed: str) -> None:
    """Two blanks and a # with a blank behind it, a line of its own, or behind a number or a word of a list."""
    assert [line for line in lines_of(tmp_path, f"{DATE}{typed}\n") if "comment" in line] == []


def test_nothing_is_told_of_files_that_we_write(tmp_path: Path) -> None:
    """The begun visit of every horse of the demo, with what was found last time beside the lines."""
    practice, _ = read_practice(RECORDS, TODAY)
    assert practice is not None
    lines = [line for horse in practice.horses for line in lines_of(tmp_path, skeleton(horse, TODAY))]

    assert [line for line in lines if "#" in line] == []
    assert sum("# " in skeleton(horse, TODAY) for horse in practice.horses) == len(practice.horses)


def test_a_comment_is_told_beside_what_cannot_be_read(tmp_path: Path) -> None:
    """One run tells both, also where nothing is left of the record."""
    lines = lines_of(tmp_path, "kind: #pony\nborn: x\n", Horse)

    assert [line.split(": ")[1] for line in lines] == ["error", "error", "warning"]
    assert lines_of(tmp_path, VISIT) == []


@pytest.mark.parametrize(
    ("typed", "place", "way_out"),
    [
        ("feet:\n  LF:\n    before:\n      toe_length:88\n", "5:7", "toe_length: 88"),
        ("feet:\n  LF:\n    before:\n      toe_length:88\n      toe_angle:49\n", "5:7", "toe_length: 88"),
        ("feet:\n  LF: {before: {toe_length:88}}\n", "3:17", "toe_length: 88"),
        ("lameness: {scale:AAEP, grade: 2}\n", "2:12", "scale: AAEP"),
    ],
)
def test_a_missing_space_is_told_where_yaml_reads_it_as_text(
    tmp_path: Path, typed: str, place: str, way_out: str
) -> None:
    """The very line, and the line as it should be."""
    (line,) = lines_of(tmp_path, DATE + typed)

    assert line.startswith(f"file.yaml:{place}: error: ")
    assert line.endswith(f" {way_out}.")

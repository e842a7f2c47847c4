"""A file to a record, or to problems that point at the very line in words anybody can act on."""

import datetime as dt
import re
from collections.abc import Iterator
from pathlib import Path

import pytest
from hypothesis import HealthCheck, example, given, settings
from hypothesis import strategies as st
from pydantic import BaseModel

from recordgen.records.models.annotations import bare, is_model
from recordgen.records.models.fields import Record
from recordgen.records.models.horse import Horse
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import read_partly, read_record
from recordgen.records.yaml.text import MOST_PROBLEMS
from tests.support.practice_folders import VISIT, lines_of, problems_of

FOOT = "date: 2026-10-14\nfeet:\n  left_fore:\n"

# Words that tell of the program instead of the record.
INNER = re.compile(
    r"\b(str|int|float|bool|dict|tuple|None|NoneType|pydantic|validator|Input|instance|Literal|literal|Traceback)\b"
    r"|<class|\{'|\['|not in its form"
)


def visit(tmp_path: Path, text: str) -> Visit:
    """The visit in a text that nothing is wrong with."""
    file = tmp_path / "file.yaml"
    file.write_bytes(text.encode())
    written, problems = read_record(file, "file.yaml", Visit)
    assert written is not None, problems
    return written.record


def test_a_good_visit_is_read_without_a_word(tmp_path: Path) -> None:
    """The example of a visit holds what it says."""
    found = visit(tmp_path, VISIT)

    assert problems_of(tmp_path, VISIT) == []
    assert (found.date, found.feet["left_fore"].before.toe_length) == (dt.date(2026, 10, 14), 86)
    wall = found.feet["left_fore"].wall
    assert wall
    assert wall["medial toe quarter"].separation.length == 18


def test_text_stays_what_was_typed(tmp_path: Path) -> None:
    """`no`, `0012` and `1:30` are text where text is meant."""
    found = visit(tmp_path, "date: 2026-10-14\nsince_last: no\nby: 0012\nnote: 1:30\n")

    assert (found.since_last, found.by, found.note) == ("no", "0012", "1:30")


@pytest.mark.parametrize("name", ["left_fore", "near_fore", "LF", "NF", "Left fore", "near-fore"])
def test_both_ways_of_naming_a_foot_are_understood(tmp_path: Path, name: str) -> None:
    """Left and near are one side."""
    found = visit(tmp_path, f"date: 2026-10-14\nfeet: {{{name}: {{note: x}}}}\nresolved: []\n")

    assert list(found.feet) == ["left_fore"]


def test_a_foot_and_a_zone_given_as_values_may_be_spelled_in_every_way(tmp_path: Path) -> None:
    """The same names hold as keys and as values."""
    text = "resolved: [{caution: x, foot: NF, date: 2026-10-01, by: y}]\n"
    text += FOOT + "    marks: [{kind: crack end, zone: lateral_quarter, below_hairline: 20}]\n"
    found = visit(tmp_path, text)

    assert found.resolved[0].foot == "left_fore"
    assert found.feet["left_fore"].marks[0].zone == "lateral quarter"


def test_empty_values_are_left_out(tmp_path: Path) -> None:
    """A form may keep its empty lines; a foot nobody filled in was not looked at."""
    text = VISIT + "signs:\ntrimmed:\nnote:\ncondition: {henneke: , girth: }\n"
    text = text.replace("care:", "  right_fore:\n    before: {toe_length: , heel_height: {medial: }}\n    done:\ncare:")
    found = visit(tmp_path, text)

    assert (found.signs, found.trimmed, found.note, found.condition) == ((), True, None, None)
    assert list(found.feet) == ["left_fore"]


def test_an_unknown_key_is_told_though_it_is_empty(tmp_path: Path) -> None:
    """A missing space makes a key of both; nothing typed gets lost."""
    assert lines_of(tmp_path, FOOT + "    before: {toe_length:86}\n") == [
        "file.yaml:4:14: error: 'toe_length:86' is not a known key here. Put a space after the colon: toe_length: 86."
    ]


@pytest.mark.parametrize("typed", ["", "null", "~", "''", "'  '"])
def test_a_name_that_must_be_there_is_told_empty(tmp_path: Path, typed: str) -> None:
    """At the line of its key."""
    (problem,) = problems_of(tmp_path, f"sex: mare\nname: {typed}\n", Horse)

    assert (problem.place.line, problem.message) == (2, "name is empty")


def test_a_key_misspelt_and_out_of_its_place_is_told_with_both(tmp_path: Path) -> None:
    """Nearer than a key of this place is one that stands a step further in."""
    (line,) = lines_of(tmp_path, "date: 2026-10-14\nfeet:\n  left_fore: {heel_heigth: 34}\n")

    assert line.endswith("Did you mean heel_height? It belongs under before: or after:.")


@pytest.mark.parametrize(("name", "added"), [("2026-10-14.yaml", "date: 2026-10-14"), ("bramble.yaml", "date")])
def test_a_visit_without_its_date_is_told_the_day_of_its_file(tmp_path: Path, name: str, added: str) -> None:
    """The line to add is there already, in the file's name."""
    file = tmp_path / name
    file.write_text("since_last: x\n", "utf-8")
    (problem,) = read_record(file, name, Visit)[1]

    assert problem.way_out == f"Add {added}"


@pytest.mark.parametrize(
    ("text", "expected"),
    [
        (
            "[1, 2]\n",
            "1:1: error: the file should hold keys with values. "
            "Take out the dashes or brackets: each key stands on its own line, without one.",
        ),
        (
            "hello\n",
            "1:1: error: the file should hold keys with values. "
            "Write key: value, each on its own line, and free words behind note:.",
        ),
        ("since_last: x\n", "1:1: error: date is missing. Add date."),
        (
            "date: 2026-02-30\n",
            "1:1: error: date: '2026-02-30' is not a day in the calendar. Look at the month and the day.",
        ),
        ("date: 14/10/2026\n", "1:1: error: date: '14/10/2026' is not a date. Write date: 2026-10-14."),
        ("date: ٢٠٢٦-١٠-١٤\n", "1:1: error: date: '٢٠٢٦-١٠-١٤' is not a date. Write year-month-day, like 2026-10-14."),
        ("date: 0202-10-14\n", "1:1: error: date: '0202-10-14' is too long ago. Write a year from 1950 on."),
        (
            "date: {}\n",
            "1:1: error: date: a date is expected, but several values stand here. Write it like 2026-10-14.",
        ),
        ("date: 2026-10-14\nnxt: {weeks: 6}\n", "2:1: error: 'nxt' is not a known key here. Did you mean next?"),
        (
            "date: 2026-10-14\ntrimmed: off\n",
            "2:1: error: trimmed: 'off' is neither yes nor no. Write yes or no.",
        ),
        (
            "date: 2026-10-14\nfeet: [left_fore]\n",
            "2:1: error: feet should hold keys with values. "
            "Take out the dashes or brackets: each key stands on its own line, without one.",
        ),
        (
            "date: 2026-10-14\nfeet: {left: {}}\n",
            "2:8: error: 'left' is none of the names used here. "
            "The names are left_fore, right_fore, left_hind, right_hind.",
        ),
        (
            "date: 2026-10-14\ncare: daily-grooves\n",
            "2:1: error: care should be a list. Write care: [daily-grooves].",
        ),
        ("date: 2026-10-14\ncare:\n  -\n", "3:4: error: care, number 1 is empty. Fill it in, or take it out."),
        (
            "date: 2026-10-14\nnote: [a]\n",
            "2:1: error: note should be text. Write words, in quotes where they hold : or # or begin with a bracket.",
        ),
        (f"date: 2026-10-14\nnote: {'x' * 40001}\n", "2:1: error: note is longer than 40000 characters. Shorten it."),
        (
            "date: 2026-10-14\nnext: {weeks: 6, date: 2026-11-25}\n",
            "2:1: error: next: it holds either weeks or a date. Write next: {weeks: 6} or next: {date: 2026-11-25}.",
        ),
        (
            "date: 2026-10-14\nlameness: {scale: AAEP, grade: 6}\n",
            "2:25: error: lameness, grade: 6 is not on the AAEP scale. That scale runs from 0 to 5.",
        ),
        (
            FOOT + "    before: {toe_length: 86 in}\n",
            "4:14: error: feet, left_fore, before, toe_length: 86 in is not possible; 13/16 to 9 13/16 in is. "
            "Type it anew, with its unit where it is another.",
        ),
        (
            FOOT + "    before: {toe_length: '8,2 cm'}\n",
            "4:14: error: feet, left_fore, before, toe_length: '8,2 cm' does not read as a number: "
            "a comma stands in it. Write toe_length: 8.2 cm.",
        ),
        (
            FOOT + "    before: {toe_length: 82, 5 cm}\n",
            "4:30: error: '5 cm' is not a known key here. A comma parts two values; write toe_length: 82.5 cm.",
        ),
        (
            FOOT + "    landing: lateral\u00a0first\n",
            "4:5: error: feet, left_fore, landing: an unusual space stands in 'lateral first'. Type the space anew.",
        ),
        (
            FOOT + "    landing: Latteral first\n",
            "4:5: error: feet, left_fore, landing: 'Latteral first' is not one of the words for it. Did you mean "
            "lateral first? Choose from heel first, flat, toe first, lateral first, medial first.",
        ),
        (
            FOOT + "    marks: [{kind: crack end}]\n",
            "4:13: error: feet, left_fore, marks, number 1, below_hairline is missing. Add below_hairline.",
        ),
    ],
)
def test_a_wrong_value_is_told_at_its_line_with_a_way_out(tmp_path: Path, text: str, expected: str) -> None:
    """Line, what is wrong, and what to do about it."""
    assert [line.replace("\u00a0", " ") for line in lines_of(tmp_path, text)] == [f"file.yaml:{expected}"]


@pytest.mark.parametrize(("first", "second"), [("left_fore", "near_fore"), ("near_fore", "left_fore"), ("LF", "NF")])
def test_a_foot_named_twice_is_told(tmp_path: Path, first: str, second: str) -> None:
    """Two names of one foot are one foot too many, in whichever order."""
    (problem,) = problems_of(tmp_path, f"date: 2026-10-14\nfeet:\n  {first}: {{note: a}}\n  {second}: {{note: b}}\n")

    assert re.fullmatch(r"'\w+' means left_fore, which is described twice", problem.message)
    assert problem.place.line in (3, 4)


def test_a_foot_is_called_as_it_was_typed(tmp_path: Path) -> None:
    """Who writes near_fore reads near_fore."""
    (problem,) = problems_of(tmp_path, FOOT.replace("left_fore", "near_fore") + "    landing: sideways\n")

    assert problem.message.startswith("feet, near_fore, landing")


def test_an_unlikely_value_is_a_warning(tmp_path: Path) -> None:
    """It may stand if it is right."""
    assert lines_of(tmp_path, FOOT + "    before: {heel_angle: 75}\n") == [
        "file.yaml:4:14: warning: feet, left_fore, before, heel_angle: 75 degrees is outside 20 to 70, so look again. "
        "It may stand if it is right."
    ]


def test_one_wrong_value_does_not_hide_another(tmp_path: Path) -> None:
    """Errors and warnings of one file come in one run."""
    text = FOOT + "    before: {heel_angle: 75, toe_angle: 500}\n    landing: sideways\nnext: {weeks: many}\nx: 1\n"

    assert sorted(problem.place.line for problem in problems_of(tmp_path, text)) == [4, 4, 5, 6, 7]


def test_a_record_is_read_as_far_as_it_is_right(tmp_path: Path) -> None:
    """The right part of a file can still be looked at."""
    file = tmp_path / "file.yaml"
    file.write_text(VISIT.replace("toe_angle: 50", "toe_angle: 500") + "vet: [{date: 2026-10-01, by: x, kind: y}]\n")
    written, problems = read_partly(file, "file.yaml", Visit)

    assert len(problems) == 2
    assert not written.whole
    assert (written.record.feet["left_fore"].before.toe_length, written.record.vet) == (86, ())
    assert read_record(file, "file.yaml", Visit)[0] is None


def test_a_file_full_of_mistakes_tells_the_first_ones(tmp_path: Path) -> None:
    """Nobody reads thousands of lines."""
    text = "date: 2026-10-14\n" + "".join(f"wrong{number}: 1\n" for number in range(5000))
    problems = problems_of(tmp_path, text)

    assert len(problems) == MOST_PROBLEMS + 1
    assert problems[-1].message == "more is wrong from here on"


def test_a_file_that_cannot_be_opened_is_a_problem(tmp_path: Path) -> None:
    """A folder in its place, or no file at all."""
    (tmp_path / "folder.yaml").mkdir()

    for name in ("folder.yaml", "none.yaml"):
        written, problems = read_record(tmp_path / name, name, Visit)
        assert (written, problems[0].message) == (None, "the file cannot be opened")


def test_a_place_is_one_of_the_text_that_was_read(tmp_path: Path) -> None:
    """Whatever became of the file meanwhile."""
    file = tmp_path / "file.yaml"
    file.write_text("date: 2026-10-14\nnext: {weeks: 6}\n")
    written, _ = read_record(file, "file.yaml", Visit)
    file.unlink()

    assert str(written.place("next", "weeks")) == "file.yaml:2:8"


def fields_of(model: type[BaseModel], around: tuple[str, ...] = ()) -> Iterator[tuple[str, ...]]:
    """Every key of a model as a chain of keys, down to the innermost."""
    for name, info in model.model_fields.items():
        yield (*around, name)
        inner = bare(info.annotation)
        args = getattr(inner, "__args__", ())
        within = [bare(part) for part in (inner, *args) if is_model(bare(part))]
        between = {"feet": "left_fore", "wall": "toe"}.get(name)
        for record in within[:1]:
            yield from fields_of(record, (*around, name, *([between] if between else [])))


def written_at(keys: tuple[str, ...], typed: str) -> str:
    """One line of YAML that holds `typed` under a chain of keys."""
    return "{" + ": {".join(keys) + ": " + typed + "}" * len(keys)


@pytest.mark.parametrize("model", [Visit, Horse, Stable, PracticeFile])
def test_no_wrong_value_anywhere_is_told_in_the_programs_own_words(tmp_path: Path, model: type[Record]) -> None:
    """Every key of every record, with every kind of wrong value."""
    wrong = [
        "{}",
        "[]",
        "[{}]",
        "[[x]]",
        "{x: y}",
        "''",
        "x",
        "-1",
        "1e400",
        ".nan",
        "99999999",
        "[~]",
        f"'{'x' * 5000}'",
    ]
    for keys in fields_of(model):
        for typed in wrong:
            for line in lines_of(tmp_path, written_at(keys, typed), model):
                assert not INNER.search(line), line
                assert len(line) < 900


PIECES = st.sampled_from(
    [
        *(
            "\n",
            "\r\n",
            "  ",
            ": ",
            "- ",
            "? ",
            "{",
            "}",
            "[",
            "]",
            "{}",
            "[]",
            ",",
            "'",
            '"',
            "#",
            "|",
            "@",
            "`",
            "\\",
        ),
        *("~", "null", "no", "1:30", "٣", "½", "8,2 cm", "1e400", ".nan", "-5", "9" * 400, "toe_length: 90", "date"),
        *("&a ", "*a", "&a [*a]", "<<: ", "!!python/object:os.system ", "---\n", "...\n", "%YAML 1.1\n"),
        *("\t", "\u00a0", "\x00", "\ufeff", "\u2028", '"\\x00"', '"\\ud800"', "left_fore", "near_fore", "LF"),
    ]
)
EDITS = st.lists(st.tuples(st.integers(0, len(VISIT)), st.integers(0, 12), PIECES), min_size=1, max_size=4)


def is_told_or_read(folder: Path, raw: bytes) -> bool:
    """Whether bytes lead to a record or to problems with places and printable words."""
    file = folder / "file.yaml"
    file.write_bytes(raw)
    written, problems = read_partly(file, "file.yaml", Visit)
    lines = raw.count(b"\n") + raw.count(b"\r") + 1
    errors = [problem for problem in problems if problem.level == "error"]
    fine = all(0 <= problem.place.line <= lines + 1 and problem.as_line().isprintable() for problem in problems)
    return fine and (bool(errors) or (written is not None and written.whole))


@settings(max_examples=150, deadline=None, suppress_health_check=list(HealthCheck))
@given(edits=EDITS)
@example(edits=[(7, 10, "\t")])
def test_a_visit_edited_at_random_is_read_or_told(tmp_path: Path, edits: list[tuple[int, int, str]]) -> None:
    """Never a traceback."""
    text = VISIT
    for at, cut, piece in edits:
        text = text[:at] + piece + text[at + cut :]

    assert is_told_or_read(tmp_path, text.encode("utf-8", "surrogatepass"))


@settings(max_examples=100, deadline=None, suppress_health_check=list(HealthCheck))
@given(raw=st.binary(max_size=200) | st.lists(PIECES, max_size=30).map(lambda pieces: "".join(pieces).encode()))
def test_any_bytes_are_read_or_told(tmp_path: Path, raw: bytes) -> None:
    """Never a traceback."""
    assert is_told_or_read(tmp_path, raw)

"""Warnings that were seen and may stand: which entry fits which warning, and what opens it again."""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Mapping
from pathlib import Path

import pytest

from recordgen.problems import Problems
from recordgen.records.change.seen import Seeing, leave
from recordgen.records.checks.copies import twice
from recordgen.records.checks.seen import seen_in_vain
from recordgen.records.history.versions import differences
from recordgen.records.load.practice import read_practice
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written
from tests.support.practice_folders import TODAY, VISIT_FILE, build
from tests.support.problem_examples import REFERENCE

LONG = "date: 2026-10-14\nfeet:\n  LF: {before: {toe_length: 160}}\n  RF: {before: {toe_length: 86}}\n"
WAS = "feet, LF, before, toe_length: 160 mm is outside"


def found(folder: Path, files: Mapping[str, str]) -> Problems:
    """All problems of the practice that `build` writes, with what fits nothing."""
    _, problems = read_practice(build(folder, files), TODAY, None, REFERENCE)
    problems.extend(seen_in_vain(problems))
    return problems


def said_of(folder: Path, visit: str = LONG) -> str:
    """The message of the first warning of a visit."""
    return found(folder, {VISIT_FILE: visit}).warnings[0].message


def entry(code: str, was: str, on: str = "2026-11-20", more: str = "") -> str:
    """The lines of one entry."""
    return f"seen:\n  - warning: {code}\n    was: {json.dumps(was)}\n    on: {on}\n    why: measured twice\n{more}"


def codes(problems: Problems) -> list[str]:
    """The codes of what is open, in order."""
    return [problem.code for problem in problems.open]


def test_a_warning_that_was_seen_is_open_no_more_and_counted(tmp_path: Path) -> None:
    """It is listed apart, with its entry."""
    problems = found(tmp_path, {VISIT_FILE: LONG + entry("value-unlikely", said_of(tmp_path))})

    ((problem, told),) = problems.left
    assert problems.open == []
    assert problems.counted() == "no problems, 1 seen before"
    assert (problem.code, told.on, told.why) == ("value-unlikely", dt.date(2026, 11, 20), "measured twice")


def test_two_entries_for_one_warning_are_told(tmp_path: Path) -> None:
    """The warning stays seen."""
    one = entry("value-unlikely", said_of(tmp_path))
    problems = found(tmp_path, {VISIT_FILE: LONG + one + one.removeprefix("seen:\n")})

    assert [problem.message for problem in problems.open] == [
        "another entry lets the same warning value-unlikely stand"
    ]
    assert len(problems.left) == 1


def test_another_value_opens_it_again(tmp_path: Path) -> None:
    """And the entry is told, since it fits nothing now."""
    was = said_of(tmp_path)
    problems = found(tmp_path, {VISIT_FILE: LONG.replace("160", "161") + entry("value-unlikely", was)})

    assert codes(problems) == ["value-unlikely", "seen-fits-nothing"]
    assert "says something else than when it was seen on 2026-11-20" in problems.open[1].message


@pytest.mark.parametrize(
    ("lines", "level", "told"),
    [
        (entry("value-unlikly", "x"), "warning", "there is no warning 'value-unlikly'. Did you mean value-unlikely?"),
        (entry("seen-fits-nothing", "x"), "warning", "there is no warning 'seen-fits-nothing'"),
        (entry("visit-without-feet", "x"), "warning", "no warning visit-without-feet stands here any more"),
        (entry("next-too-far", "x"), "warning", "next-too-far is an error here, and an error cannot be left"),
        (entry("value-unlikely", "x", "2026-10-13"), "error", "before the visit of 2026-10-14"),
        (entry("value-unlikely", "x", "2026-12-02"), "error", "the date 2026-12-02 is in the future"),
        ("seen: [{warning: value-unlikely, on: 2026-11-20, why: so it is}]\n", "warning", f"Write was: '{WAS}"),
    ],
)
def test_an_entry_that_lets_nothing_stand_is_told(tmp_path: Path, lines: str, level: str, told: str) -> None:
    """With its place and the way out; nothing of the warning or the error is lost by it."""
    problems = found(tmp_path, {VISIT_FILE: f"{LONG}next: {{date: 2028-01-01}}\n{lines}"})

    telling = [problem.as_line() for problem in problems.open if told in problem.as_line()]
    assert len(telling) == 1
    assert f"/{VISIT_FILE}:" in telling[0]
    assert f": {level}: " in telling[0]
    assert {"value-unlikely", "next-too-far"} <= set(codes(problems))


@pytest.mark.parametrize("code", ["value-unlikly", "seen-fits-nothing"])
def test_an_entry_for_no_warning_is_told_once(tmp_path: Path, code: str) -> None:
    """Not also as one whose warning is no more."""
    open_before = found(tmp_path, {VISIT_FILE: LONG}).open

    assert len(found(tmp_path, {VISIT_FILE: LONG + entry(code, "x")}).open) == len(open_before) + 1


def test_an_entry_lets_one_warning_stand_and_its_place_tells_which(tmp_path: Path) -> None:
    """Two that say the same are told apart by `at`, which the command writes."""
    both = f"{LONG.replace('160', '90')}care_ends: [dry-bed, dry-bed]\n"
    asked = Seeing(tmp_path, build(tmp_path, {VISIT_FILE: both}) / VISIT_FILE, "care-end-not-in-force", "care_ends.1")
    said = said_of(tmp_path, both)
    unclear = found(tmp_path, {VISIT_FILE: both + entry("care-end-not-in-force", said)})
    plan = leave(asked, found(tmp_path, {VISIT_FILE: both}), "so said the vet", TODAY, False)
    clear = found(tmp_path, {VISIT_FILE: plan.files[asked.file].decode()})

    assert unclear.left == []
    assert "2 warnings care-end-not-in-force say the same here" in unclear.open[-1].message
    assert [entry.about.column for _, entry in clear.left] == [22]
    assert codes(clear) == ["care-end-not-in-force"]


def test_what_an_entry_lacks_is_told_as_it_is_typed(tmp_path: Path) -> None:
    """With the quotes of YAML around its own, so that it fits once it is copied."""
    text = f"{LONG.replace('160', '90')}care_ends: [dry-bed]\n"
    lines = "seen:\n  - warning: care-end-not-in-force\n    on: 2026-11-20\n    why: so said the vet\n"
    told = found(tmp_path, {VISIT_FILE: text + lines}).open[-1].way_out

    was = told.removeprefix("Write ")
    assert found(tmp_path, {VISIT_FILE: f"{text}{lines}    {was}\n"}).open == []


def test_a_file_beside_is_named_by_its_path(tmp_path: Path) -> None:
    """A stray in the stable's folder is left in the stable's file."""
    stray = {"willowmere/plan.txt": "of the yard", "willowmere/stable.yaml": "name: Willowmere\n"}
    (problem,) = found(tmp_path, stray).warnings
    lines = entry(problem.code, problem.message, more="    at: plan.txt\n")
    problems = found(tmp_path, stray | {"willowmere/stable.yaml": f"name: Willowmere\n{lines}"})

    assert problems.open == []
    assert len(problems.left) == 1


def test_the_command_writes_what_lets_it_stand_and_renews_an_old_entry(tmp_path: Path) -> None:
    """Comments and order stay, and the entry that says something else is replaced."""
    old = entry("value-unlikely", said_of(tmp_path))
    changed = LONG.replace("160}}", "161}}   # with the new rule") + "# Seen:\n" + old
    file = build(tmp_path, {VISIT_FILE: changed}) / VISIT_FILE
    plan = leave(
        Seeing(tmp_path, file, "value-unlikely"), found(tmp_path, {} | {VISIT_FILE: changed}), "again", TODAY, False
    )
    made = plan.files[file].decode()

    assert made.startswith(changed[: changed.index("seen:")])
    assert made.count("warning: value-unlikely") == 1
    assert found(tmp_path, {VISIT_FILE: made}).open == []


def test_of_two_warnings_one_takes_the_place_of_an_old_entry_and_one_is_new(tmp_path: Path) -> None:
    """Neither is written over the other."""
    text = LONG.replace("86}}", "165}}") + entry("value-unlikely", "something else")
    asked = Seeing(tmp_path, build(tmp_path, {VISIT_FILE: text}) / VISIT_FILE, "value-unlikely")
    made = leave(asked, found(tmp_path, {VISIT_FILE: text}), "a heavy horse", TODAY, True).files[asked.file].decode()
    problems = found(tmp_path, {VISIT_FILE: made})

    assert (problems.open, len(problems.left), len(problems.seen)) == ([], 2, 2)


def test_what_was_seen_is_nothing_of_the_visit(tmp_path: Path) -> None:
    """A file that was only begun stays so, a copy stays a copy, and no page tells a change."""
    entries = [{"warning": "visit-not-filled-in", "was": "x", "on": "2026-11-20", "why": "she was ill"}]
    begun, filled = {"date": "2026-10-14"}, {"date": "2026-10-14", "feet": {"LF": {"landing": "flat"}}}
    one, same = Visit.model_validate(filled), Visit.model_validate({**filled, "seen": entries})
    files = [Written(visit, tmp_path / name, name, b"date: 2026-10-14") for visit, name in ((one, "a"), (same, "b"))]

    assert Visit.model_validate({**begun, "seen": entries}).is_blank
    assert differences([one], same) == []
    assert [problem.code for problem in twice(files)] == ["visit-twice"]

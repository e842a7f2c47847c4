"""recordgen seen, and what the other commands tell afterwards."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from tests.support.commands import run
from tests.support.git_practice import Kept, alone, begun
from tests.support.practice_folders import TODAY, VISIT_FILE

LONG = (
    "date: 2026-10-14   # cold\nfeet:\n  LF: {before: {toe_length: 160}}\n  RF: {before: {toe_length: 161}}\n"
    "next: {weeks: 6}\n"
)


@pytest.fixture
def kept(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Kept:
    """A practice with two unlikely values in a visit that git does not keep yet."""
    alone(monkeypatch, tmp_path)
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    made = begun(tmp_path)
    made.write({VISIT_FILE: LONG})
    return made


def do(kept: Kept, *words: str) -> str:
    """The answer of a command on these records."""
    return run(*words, "--records", kept.records, "--today", TODAY.isoformat()).output


def test_warnings_are_left_one_or_all_and_nothing_is_left_to_look_at(kept: Kept) -> None:
    """Which of several is asked; the file keeps its own lines; then check and commit count them."""
    code = ("bramble", "2026-10-14", "value-unlikely", "--why", "a heavy horse")
    asked = do(kept, "seen", *code)
    one = do(kept, "seen", *code, "--at", "feet.LF.before.toe_length")
    between = do(kept, "check")
    rest = do(kept, "seen", *code, "--all")

    assert "feet.LF.before.toe_length and feet.RF.before.toe_length. Say one of them with --at, or --all." in asked
    assert "Written; recordgen commit keeps it" in one
    assert "1 warning in 1 file, 1 seen before." in between
    assert "Line 4: feet, RF" in rest
    assert (kept.records / VISIT_FILE).read_text().startswith(LONG + "seen:\n  - warning: value-unlikely\n")
    assert do(kept, "check").startswith("Nothing left to look at: 1 stable, 1 horse, 1 visit; 2 warnings were seen")
    assert do(kept, "commit").startswith("2 warnings seen before: recordgen check --seen\n")


def test_once_the_visit_is_kept_it_is_an_entry_of_git_that_no_page_tells(kept: Kept) -> None:
    """And check --seen lists it with its day and reason, for people and for programs."""
    kept.entry("2026-10-15", "corrected")
    before = kept.told()
    done = do(kept, "seen", "bramble", "2026-10-14", "value-unlikely", "--all", "--why", "a heavy horse")
    listed = json.loads(do(kept, "check", "--seen", "--json"))

    assert "Kept in git; recordgen undo takes it back." in done
    assert kept.told() == before
    assert [(one["code"], one["on"], one["why"]) for one in listed] == [
        ("value-unlikely", "2026-12-01", "a heavy horse")
    ] * 2
    assert "    seen on 1 December 2026: a heavy horse\n" in do(kept, "check", "--seen")


@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("bramble", "2026-10-14", "value-unlikly"), "Did you mean value-unlikely?"),
        (("bramble", "2026-10-13", "value-unlikely"), "Bramble has no visit '2026-10-13'"),
        (("bramble", "horse-twice"), "No warning 'horse-twice' stands in"),
        (("willowmere", "2026-10-14", "value-unlikely"), "is a stable, and a stable has no visit"),
        (("file-no-record",), "Nothing is told of"),
        (("seen-fits-nothing",), "Take out the entry that it stands at"),
        (("bramble", "2026-10-14", "after-without-trim"), "is an error there, and an error cannot be left"),
    ],
)
def test_what_cannot_be_left_is_told_and_nothing_is_written(kept: Kept, words: tuple[str, ...], told: str) -> None:
    """With what there is instead."""
    kept.write(
        {VISIT_FILE: LONG.replace("RF: {before", "RF: {after") + "trimmed: no\n"}
        if "after-without" in words[-1]
        else {}
    )
    lines = (kept.records / VISIT_FILE).read_text()

    assert told in do(kept, "seen", *words, "--why", "so it is")
    assert (kept.records / VISIT_FILE).read_text() == lines

"""Sixty-six mistakes of a first week, each answered with its file, its line and the way out."""

from __future__ import annotations

from pathlib import Path

import pytest

from recordgen.records.load.practice import read_practice
from recordgen.records.load.tables import read_reference
from tests.support.commands import run
from tests.support.first_week_mistakes import RUN, TYPED, Run, Typed
from tests.support.practice_folders import TODAY, build

REFERENCE = read_reference(None)[0]


def test_there_are_sixty_six_of_them() -> None:
    """Each another one."""
    assert len({*TYPED} | {*RUN}) == 66


@pytest.mark.parametrize("one", TYPED, ids=lambda one: f"{one.file}-{str(one.text)[-40:]}")
def test_a_mistake_in_a_file_is_told_with_its_line_and_the_way_out(one: Typed, tmp_path: Path) -> None:
    """The corrected line where it is known."""
    records = build(tmp_path / "records", {one.file: one.text})
    problems = read_practice(records, TODAY, None, REFERENCE)[1]
    told = [problem for problem in problems if one.message in problem.message]

    assert [(problem.place.line or 1, one.way_out in problem.way_out) for problem in told] == [(one.line, True)], list(
        problems
    )
    assert told[0].place.path.removeprefix("records/") in (one.file, one.file.removesuffix("/horse.yaml"))


@pytest.mark.parametrize("one", RUN, ids=lambda one: " ".join(one.words))
def test_a_mistake_in_a_command_is_told_with_the_way_out(
    one: Run, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """In a sentence, without a traceback, and nothing changes."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    records = build(tmp_path / "records")
    monkeypatch.chdir(records)
    before = sorted(records.rglob("*"))
    result = run(*(word.replace("{}", str(tmp_path)) for word in one.words))

    assert (result.exit_code, one.told in " ".join(result.output.split())) == (one.code, True), result.output
    assert sorted(records.rglob("*")) == before

"""From a new practice to the trail of a visit, by the commands and plain git."""

from __future__ import annotations

import json
import os
import subprocess
import sys
from pathlib import Path

import pytest

from recordgen.records.history.trails import trails
from recordgen.records.load.everything import read_whole
from tests.conftest import ROOT, TODAY
from tests.support.commands import run, run_today

VISIT = "old-mill/daisy/2026-11-25.yaml"


def write(records: Path, toe: int) -> None:
    """The horse and its one visit."""
    (records / "old-mill" / "daisy").mkdir(exist_ok=True)
    (records / "old-mill" / "daisy" / "horse.yaml").write_text("name: Daisy\n")
    (records / VISIT).write_text(f"date: 2026-11-25\nfeet: {{LF: {{before: {{toe_length: {toe}}}}}}}\n")


@pytest.fixture
def records(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A new practice, with recordgen on the path of git."""
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Wren Ashdown")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "wren@example.org")
        monkeypatch.setenv(f"GIT_{role}_DATE", "2026-11-25T12:00:00Z")
    program = tmp_path / "bin" / "recordgen"
    program.parent.mkdir()
    program.write_text(f'#!/bin/sh\nPYTHONPATH={ROOT} exec {sys.executable} -m recordgen "$@"\n')
    program.chmod(0o755)
    monkeypatch.setenv("PATH", f"{program.parent}{os.pathsep}{os.environ['PATH']}")
    names = ("--practice", "Hazel Hoof Care", "--trimmer", "Wren Ashdown", "--stable", "Old Mill")
    assert "Git looks through the records before" in run("init", tmp_path / "own", *names).output
    return tmp_path / "own"


def git(records: Path, *words: str) -> subprocess.CompletedProcess[str]:
    """The words of git."""
    return subprocess.run(["git", "-C", str(records), *words], capture_output=True, text=True)


def test_plain_git_is_told_what_is_wrong_and_keeps_nothing(records: Path) -> None:
    """The line and the way out; once mended, it is kept."""
    write(records, toe=880)
    git(records, "add", "--all")
    refused = git(records, "commit", "--message=x")
    write(records, toe=88)
    git(records, "add", "--all")
    kept = git(records, "commit", "--message=x")

    assert (refused.returncode, kept.returncode) == (1, 0)
    assert "old-mill/daisy/2026-11-25.yaml:2:22: error: feet, LF, before, toe_length: 880" in refused.stderr


def test_a_correction_kept_by_the_command_is_told_of_the_visit(records: Path) -> None:
    """With the line of the diary as its reason, which the stable may read."""
    write(records, toe=88)
    first = run_today("commit", records=records)
    write(records, toe=86)
    second = run_today("commit", records=records)
    whole = read_whole(records, TODAY)
    trail = trails(whole.practice, whole.reference).of(records / VISIT)

    assert (first.exit_code, second.exit_code) == (0, 0), first.output + second.output
    assert trail is not None
    (change,) = trail.for_stable().changes
    assert change.reason == "Old Mill: Daisy's visit of 25 November 2026 amended"
    assert (change.parts[0].before, change.parts[0].after) == ("88 mm", "86 mm")


def test_the_sheet_tells_a_correction_without_its_reason(records: Path) -> None:
    """The reason may name other horses of the stable."""
    for toe in (88, 86):
        write(records, toe)
        run_today("commit", records=records)
    told = json.loads(run_today("sheet", "old-mill/daisy", "--json", "--for-myself", records=records).output)

    (amended,) = told["amendments"]
    assert amended["visit"] == "2026-11-25"
    assert amended["text"].endswith("left fore, toe length, before the trim: 88 mm → 86 mm")

"""The first week of the guide, replayed from an empty folder in a real git."""

from __future__ import annotations

import re
import subprocess
from pathlib import Path

import pytest

from recordgen.packaged import packaged
from tests.support.commands import run
from tests.support.git_practice import alone
from tests.support.shell_lines import Ran, run_lines, shell_blocks

WEEK = shell_blocks((packaged() / "site_templates/pages/guide/first-week.md").read_text("utf-8"))


@pytest.fixture(scope="module")
def week(tmp_path_factory: pytest.TempPathFactory) -> tuple[Path, list[Ran]]:
    """The practice after the week, and what each command printed."""
    folder = tmp_path_factory.mktemp("week")
    with pytest.MonkeyPatch.context() as patch:
        alone(patch, folder)
        patch.setenv("RECORDGEN_PRIVATE", str(folder / "keys"))
        patch.chdir(folder)
        return folder / "my-practice", list(run_lines(WEEK))


def test_every_line_ends_well(week: tuple[Path, list[Ran]]) -> None:
    """And there are as many as the guide shows."""
    wrong = [(ran.line, ran.result.output) for ran in week[1] if ran.result.exit_code]

    assert wrong == []
    assert len(week[1]) == len(re.findall("^recordgen ", WEEK, re.MULTILINE))


def test_three_stables_hold_the_horses(week: tuple[Path, list[Ran]]) -> None:
    """One moved, one dead and listed no more, and a name that was taken back."""
    listed = next(ran.result.output for ran in week[1] if ran.line == "recordgen list")

    assert [line.split()[0] for line in listed.splitlines()] == [
        *("hazel-bottom", "bilberry", "clover"),
        *("three-oaks", "teasel"),
        *("willowmere", "bramble", "fennel", "moss", "sorrel"),
        "7",
    ]
    assert "why: died" in (week[0] / "hazel-bottom/dunnock/horse.yaml").read_text()


def test_what_was_written_is_found_and_told(week: tuple[Path, list[Ran]]) -> None:
    """By the search, by who has what, and by the due day that was set."""
    told = {ran.line: ran.result.output for ran in week[1]}

    assert (
        "willowmere/bramble/2026-11-23.yaml:4: feet, left_fore, before, toe_length: 86"
        in told['recordgen find "toe_length>80"']
    )
    assert "1 horse at 1 stable." in told['recordgen list --with "infection" --since 2026-11-01']
    assert "willowmere/bramble" in told["recordgen due"]
    assert "2027-01-04" in told["recordgen due"]


def test_git_keeps_the_week_like_a_diary(week: tuple[Path, list[Ran]]) -> None:
    """Each change in an entry of its own, with nothing left over."""
    says = subprocess.run(
        ["git", "-C", week[0], "log", "--first-parent", "--format=%s", "-9"], capture_output=True, text=True, check=True
    ).stdout.splitlines()
    left = subprocess.run(["git", "-C", week[0], "status", "--porcelain"], capture_output=True, check=True).stdout

    assert says == [
        "Both computers joined",
        "read again",
        "Willowmere: Bramble seen on 14 March 2025; Fennel seen on 2 April 2025",
        "Taken back: Three Oaks: Teasel is called Little Teasel now",
        "Three Oaks: Teasel is called Little Teasel now",
        "Hazel Bottom: the record of Dunnock ends, died",
        "Willowmere: Sorrel moved from three-oaks/sorrel",
        "misread the rule",
        "Willowmere, 23 November 2026: Bramble seen",
    ]
    assert left == b""


def test_two_computers_hold_the_same(week: tuple[Path, list[Ran]]) -> None:
    """The visits of the book, and both corrections of one visit; the stick has all of it."""
    text = (week[0] / "willowmere/bramble/2026-11-23.yaml").read_text()
    told = [ran.result.output for ran in week[1] if ran.line.startswith("recordgen backup")]

    assert "before: {toe_length: 88.5}" in (week[0] / "willowmere/bramble/2025-03-14.yaml").read_text()
    assert "toe_length: 76" in text
    assert "weeks: 5" in text
    assert all("read back whole" in one or "Restored into" in one for one in told)
    assert run("fetch", "--records", week[0].parent / "second-computer").exit_code == 0
    assert (week[0].parent / "second-computer/willowmere/bramble/2026-11-23.yaml").read_text() == text


def test_the_records_are_right(week: tuple[Path, list[Ran]]) -> None:
    """As the last look tells."""
    assert run("check", "--records", week[0]).exit_code == 0

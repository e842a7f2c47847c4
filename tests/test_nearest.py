"""The one 'did you mean'."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from recordgen.nearest import did_you_mean, nearest
from recordgen.sentences import worded
from tests.conftest import ROOT
from tests.support.commands import run, run_today, small_practice

FEET = ("left_fore", "right_fore", "left_hind", "right_hind")


@pytest.mark.parametrize("typed", ["left-fore", "Left Fore", "lef_fore", "leftfore"])
def test_the_nearest_name_is_found_however_it_is_typed(typed: str) -> None:
    """Case, blanks, hyphens and a slip of the pen do not matter."""
    assert nearest(typed, FEET) == "left_fore"


def test_nothing_is_guessed_where_nothing_is_near() -> None:
    """Then the other way out is told."""
    assert did_you_mean("tail", FEET, worded("Known are the feet")) == "Known are the feet"
    assert did_you_mean("left_for", FEET, worded("Known are the feet")) == "Did you mean left_fore?"


def test_it_stands_in_one_place() -> None:
    """Nobody else compares names by likeness."""
    users = [file.name for file in (ROOT / "recordgen").rglob("*.py") if "get_close_matches" in file.read_text("utf-8")]

    assert users == ["nearest.py"]


def test_a_command_misspelt_names_the_nearest() -> None:
    """`recordgen chek` is told check, and exit code 2."""
    result = run("chek")

    assert result.exit_code == 2
    assert "There is no command 'chek'. Did you mean check?" in result.output


@pytest.mark.parametrize(
    "words",
    [
        ("check", "--stable", "wilowmere"),
        ("build", "--stable", "wilowmere", "--out", "out"),
        ("due", "--stable", "wilowmere"),
        ("visit", "wilowmere"),
        ("publish", "wilowmere", "--dry-run"),
        ("readers", "wilowmere"),
        ("verify", "wilowmere"),
    ],
    ids=" ".join,
)
def test_a_stable_misspelt_names_the_nearest(words: tuple[str, ...], tmp_path: Path) -> None:
    """Every command that asks for a stable says so."""
    result = run(*words, "--records", small_practice(tmp_path))

    assert result.exit_code == 1
    assert "there is no stable 'wilowmere'. did you mean willowmere?" in result.output.lower()


@pytest.mark.parametrize(
    "words",
    [
        ("summary", "willowmere/brambel"),
        ("sheet", "willowmere/brambel"),
        ("share", "willowmere/brambel", "--with", "A vet"),
        ("photo", "willowmere/brambel", "a.jpg"),
    ],
    ids=" ".join,
)
def test_a_horse_misspelt_names_the_nearest(words: tuple[str, ...], tmp_path: Path) -> None:
    """Every command that asks for a horse says so."""
    result = run_today(*words, records=small_practice(tmp_path))

    assert result.exit_code == 1
    assert re.search("Did you mean (willowmere/)?bramble[?]", result.output)

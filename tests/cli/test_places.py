"""Names in the place of folders, from any folder of the records, and offered while they are typed."""

from __future__ import annotations

from pathlib import Path

import click
import pytest
from click.shell_completion import ShellComplete

from recordgen.cli import main
from tests.support.commands import run
from tests.support.practice_folders import TODAY, build

DAY = ("--today", TODAY.isoformat())
FILES = {
    "hazel-bottom/stable.yaml": "name: Hazel Bottom\n",
    "hazel-bottom/bilberry/horse.yaml": "name: Bilberry\n",
    "hazel-bottom/bramble/horse.yaml": "name: Bramble\n",
    "lone-ash/stable.yaml": "name: Lone Ash\n",
}


@pytest.fixture
def inside(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """The folder of a horse, in which the commands are called."""
    records = build(tmp_path / "records", FILES)
    monkeypatch.chdir(records / "willowmere" / "bramble")
    return records


@pytest.mark.usefixtures("inside")
@pytest.mark.parametrize(
    ("words", "told"),
    [
        (("summary", "Hazel Bottom/Bilberry", *DAY), "Bilberry, no visit yet"),
        (("summary", "bilberry", *DAY), "Bilberry, no visit yet"),
        (("due", "--stable", "HAZEL BOTTOM", *DAY), "hazel-bottom/bilberry"),
        (("check", "Hazel Bottom", *DAY), "1 stable, 2 horses"),
        (("visit", "bilberry"), "../../hazel-bottom/bilberry/"),
    ],
)
def test_names_work_where_folders_do(words: tuple[str, ...], told: str) -> None:
    """From within the records, without --records."""
    found = run(*words)

    assert found.exit_code == 0, found.output
    assert told in found.output


@pytest.mark.usefixtures("inside")
@pytest.mark.parametrize(
    ("typed", "told"),
    [
        ("bramble", "'bramble' can be any of hazel-bottom/bramble, willowmere/bramble. Name one of them."),
        ("bilbery", "There is no horse 'bilbery' in these records. Did you mean hazel-bottom/bilberry?"),
        ("Lone Ash", "is a stable. Name the stable and the horse"),
    ],
)
def test_a_horse_that_is_not_clear_is_asked_for(typed: str, told: str) -> None:
    """With those it can be, or the nearest."""
    found = run("summary", typed, *DAY)

    assert found.exit_code == 2
    assert told in " ".join(found.output.split())


@pytest.mark.usefixtures("inside")
def test_a_stable_or_a_horse_that_is_near_is_asked_about() -> None:
    """Where either may be told."""
    told = " ".join(run("rename", "bilbery", "Blueberry").output.split())

    assert "There is no horse 'bilbery' in these records. Did you mean hazel-bottom/bilberry?" in told


def test_a_stable_without_a_horse_says_what_to_do(inside: Path) -> None:
    """Rather than to begin nothing and end well."""
    found = run("visit", "lone-ash", "--records", inside)

    assert found.exit_code == 1
    assert found.output == "There is no horse at Lone Ash yet. Begin one: recordgen begin lone-ash/bramble.\n"


@pytest.mark.usefixtures("inside")
@pytest.mark.parametrize(
    ("typed", "offered"),
    [
        (["summary"], ["hazel-bottom/bilberry", "hazel-bottom/bramble", "willowmere/bramble"]),
        (["summary", "bil"], ["hazel-bottom/bilberry"]),
        (["due", "--stable", "Ha"], ["hazel-bottom"]),
    ],
)
def test_a_shell_offers_stables_and_horses(typed: list[str], offered: list[str]) -> None:
    """By the way that click itself completes."""
    assert isinstance(main, click.Command)
    *before, last = typed if len(typed) > 1 else [*typed, ""]
    found = ShellComplete(main, {}, "recordgen", "_RECORDGEN_COMPLETE").get_completions(before, last)

    assert [item.value for item in found] == offered

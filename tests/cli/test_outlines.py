"""recordgen outlines: refused while few soles are traced, then a table that screens and checks go by."""

from __future__ import annotations

import json
from pathlib import Path

import pytest

from recordgen.hoof.tracing.own_outlines import FEWEST
from recordgen.records.load.practice import read_practice
from recordgen.records.yaml.write import as_yaml
from recordgen.site.trace.screen import screen_of
from tests.support.commands import run
from tests.support.practice_folders import TODAY
from tests.support.tracing_screen import traced_practice
from tests.support.typed_tracings import tapped


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """A practice with so many traced soles in one visit after another."""
    folder = tmp_path_factory.mktemp("practice")
    traced_practice(folder)
    for number in range(0, FEWEST, 2):
        date = f"2026-01-{number // 2 + 1:02}"
        feet = {
            foot: {"tracings": [tapped(hand_px=4, seed=number + side, hand_error=2)]}
            for side, foot in enumerate(("left_fore", "left_hind"))
        }
        visit = {"date": date, "feet": feet}
        (folder / "willowmere" / "bramble" / f"{date}.yaml").write_text(as_yaml(visit))
    return folder


def test_too_few_are_told(tmp_path: Path) -> None:
    """With how many more it takes; nothing is written."""
    traced_practice(tmp_path)
    told = run("outlines", "--records", tmp_path, "--today", TODAY.isoformat())

    asked = run("outlines", "--dry-run", "--records", tmp_path, "--today", TODAY.isoformat())

    assert (asked.exit_code, asked.output[:14]) == (0, "0 traced soles")
    assert told.exit_code == 1
    assert "0 traced soles with wall, white line and frog are here, 50 are needed. Trace 50 more" in told.output
    assert not (tmp_path / "outlines").exists()


def test_a_table_is_made_once_and_traced_by(records: Path) -> None:
    """Its name is what the screen sends with a tracing; a second run has nothing to do."""
    first, again = (run("outlines", "--records", records, "--today", TODAY.isoformat()) for _ in range(2))
    (file,) = (records / "outlines").iterdir()
    practice, problems = read_practice(records, TODAY)
    photo = traced_practice(records)
    (_, page) = screen_of(records, photo).files[""]

    assert (first.exit_code, "of 50 traced soles" in first.output) == (0, True), first.output
    assert "is there already" in again.output
    assert practice is not None
    assert (practice.outlines.version, [one.as_line() for one in problems]) == (file.stem, [])
    assert json.dumps({"version": file.stem})[1:-1] in page.decode()


def test_a_table_that_was_changed_is_told(records: Path, tmp_path: Path) -> None:
    """At its line; so no old tracing is drawn otherwise without a word."""
    traced_practice(tmp_path)
    (tmp_path / "outlines").mkdir()
    (made,) = (records / "outlines").iterdir()
    (tmp_path / "outlines" / made.name).write_text(made.read_text().replace("wall: |\n  1", "wall: |\n  2"))
    _, problems = read_practice(tmp_path, TODAY)

    assert [one.code for one in problems] == ["outlines-changed"]


def test_other_files_beside_the_tables_stop_nothing(tmp_path: Path) -> None:
    """They are no records, which check tells of any such file."""
    traced_practice(tmp_path)
    (tmp_path / "outlines").mkdir()
    (tmp_path / "outlines" / "notes.txt").write_text("of feet")
    asked = run("check", tmp_path, "--today", TODAY.isoformat())

    assert asked.exit_code == 0, asked.output
    assert "outlines:1:1: warning: this folder holds no record (1 file)" in asked.output

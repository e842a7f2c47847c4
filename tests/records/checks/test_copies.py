"""A file that was copied rather than typed."""

from __future__ import annotations

from pathlib import Path

import pytest

from tests.support.practice_folders import VISIT, VISIT_FILE, told

FEW = "date: 2026-10-14\nfeet: {LF: {before: {toe_length: 92}, after: {toe_length: 83}}}\n"
BRAMBLE, FENNEL = "willowmere/bramble/", "willowmere/fennel/"


def copies(folder: Path, files: dict[str, str]) -> list[str]:
    """Problems of a practice whose Bramble has one visit, with these files beside it."""
    return told(folder, dict(files))


def on(day: str, text: str = VISIT) -> str:
    """The visit as of another day."""
    return text.replace("2026-10-14", day)


def test_a_visit_under_another_horse_is_told_once_a_pair(tmp_path: Path) -> None:
    """At the first of its visits, with the file that it is like and how many more there are."""
    files = {
        f"{FENNEL}horse.yaml": "name: Fennel\n",
        f"{FENNEL}2026-09-02.yaml": on("2026-09-02").replace("86", "90"),
        f"{FENNEL}2026-10-14.yaml": f"note: Another one.\n{VISIT}",
        "willowmere/bramble/2026-09-02.yaml": on("2026-09-02").replace("86", "90"),
    }
    (line,) = copies(tmp_path, files)

    assert line.startswith(f"{FENNEL}2026-09-02.yaml:4:1: warning: the readings are those of willowmere/bramble/")
    assert "willowmere/bramble/2026-09-02.yaml, number for number and so on 1 day more. " in line


@pytest.mark.parametrize(
    ("text", "horse"),
    [
        (VISIT.replace("medial: 33", "medial: 35"), "name: Fennel\n"),
        (VISIT.replace("depth: 3", "depth: 4"), "name: Fennel\n"),
        (VISIT, "name: Fennel\nleft: {date: 2026-11-01}\n"),
    ],
)
def test_one_other_reading_or_a_horse_that_moved_is_no_copy(tmp_path: Path, text: str, horse: str) -> None:
    """The record of one that left may go on elsewhere."""
    assert copies(tmp_path, {f"{FENNEL}horse.yaml": horse, f"{FENNEL}2026-10-14.yaml": text}) == []


def test_a_few_readings_may_be_alike_by_chance(tmp_path: Path) -> None:
    """On one day; on three days they are not. The bound: six readings in all."""
    fennel = {f"{FENNEL}horse.yaml": "name: Fennel\n", VISIT_FILE: FEW}
    files: dict[str, str] = {}
    for length, day in enumerate(["2026-08-05", "2026-09-02", "2026-10-14"], 90):
        files |= {f"{horse}{day}.yaml": on(day, FEW.replace("92", str(length))) for horse in (BRAMBLE, FENNEL)}
    two = {name: text for name, text in files.items() if "2026-08" not in name}

    assert copies(tmp_path / "two", fennel | two) == []
    assert len(copies(tmp_path / "three", fennel | files)) == 1


def test_the_same_visit_twice_on_a_day_is_told(tmp_path: Path) -> None:
    """However little stands in it; a second look at the same foot is another visit."""
    second, other = FEW.replace("LF", "left_fore"), FEW.replace("83", "84")
    (line,) = copies(tmp_path / "same", {VISIT_FILE: FEW, VISIT_FILE.replace(".yaml", "-b.yaml"): second})

    assert "2026-10-14-b.yaml:1:1: warning: the same visit stands in 2026-10-14.yaml too. " in line
    assert copies(tmp_path / "other", {VISIT_FILE: FEW, VISIT_FILE.replace(".yaml", "-b.yaml"): other}) == []


def test_the_last_visit_under_a_new_day_is_told(tmp_path: Path) -> None:
    """A copy whose day alone was changed; a few readings may stay as they were."""
    (line,) = copies(tmp_path / "all", {"willowmere/bramble/2026-11-25.yaml": on("2026-11-25")})
    few = {VISIT_FILE: FEW, "willowmere/bramble/2026-11-25.yaml": on("2026-11-25", FEW)}

    assert "2026-11-25.yaml:4:1: warning: all 14 readings are those of 2026-10-14.yaml, number for number. " in line
    assert copies(tmp_path / "few", few) == []

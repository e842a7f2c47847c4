"""Repeated readings are found in every stable of a practice."""

from __future__ import annotations

from pathlib import Path

from recordgen.records.load.everything import read_whole
from tests.support.practice_folders import TODAY, build

TWICE = "date: 2026-10-15\nfeet:\n  LF:\n    after: {toe_length: 80}\n    repeat: {after: [{toe_length: 81}]}\n"
FILES: dict[str, str | bytes | None] = {
    "fallow-end/stable.yaml": "name: Fallow End\n",
    "fallow-end/otter/horse.yaml": "name: Otter\n",
    "fallow-end/otter/2026-10-15.yaml": TWICE,
}


def test_only_visits_that_repeat_are_kept(tmp_path: Path) -> None:
    """The others tell nothing of how well readings repeat."""
    (found,) = read_whole(build(tmp_path, FILES), TODAY).repeated

    assert found.feet["left_fore"].repeat is not None
    assert [again.toe_length for again in found.feet["left_fore"].repeat.after] == [81]


def test_a_stable_read_alone_knows_the_readings_of_all(tmp_path: Path) -> None:
    """So its pages are told by the same errors as when all are built."""
    folder = build(tmp_path, FILES)

    assert read_whole(folder, TODAY, "willowmere").repeated == read_whole(folder, TODAY).repeated != ()

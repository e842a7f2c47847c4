"""Folders by all that is in them: whatever changes there gives another digest."""

from __future__ import annotations

import os
from collections.abc import Callable
from pathlib import Path

import pytest

from recordgen.cache import inputs
from recordgen.cache.inputs import content_digest, files_in, stat_digest

LARGE = bytes(inputs.LARGE_BYTES)


@pytest.fixture
def folder(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Path:
    """A folder with a small file, a large one that is told by its times, and a link to another such."""
    monkeypatch.setattr(inputs, "SETTLED_S", -1)
    made = tmp_path / "made"
    (made / "photos").mkdir(parents=True)
    (made / "visit.yaml").write_text("date: 2026-10-14")
    for path in (made / "photos" / "large.jpg", tmp_path / "elsewhere.jpg"):
        path.write_bytes(LARGE)
    (made / "photos" / "linked.jpg").symlink_to(tmp_path / "elsewhere.jpg")
    return made


def _other_bytes(folder: Path) -> None:
    (folder / "visit.yaml").write_text("date: 2026-10-15")


def _other_large(folder: Path) -> None:
    (folder / "photos" / "large.jpg").write_bytes(LARGE[:-1] + b"x")


def _other_large_at_the_same_time(folder: Path) -> None:
    file = folder / "photos" / "large.jpg"
    before = file.stat()
    _other_large(folder)
    os.utime(file, ns=(before.st_atime_ns, before.st_mtime_ns))


def _other_behind_the_link(folder: Path) -> None:
    (folder.parent / "elsewhere.jpg").write_bytes(LARGE + b"x")


def _other_link(folder: Path) -> None:
    (folder / "photos" / "linked.jpg").unlink()
    (folder / "photos" / "linked.jpg").symlink_to(folder / "photos" / "large.jpg")


def _link_to_nowhere(folder: Path) -> None:
    (folder.parent / "elsewhere.jpg").unlink()


def _folder_of_folders(folder: Path) -> None:
    (folder / "willowmere" / "bramble").mkdir(parents=True)


def _renamed(folder: Path) -> None:
    (folder / "visit.yaml").rename(folder / "visits.yaml")


CHANGES = [
    *(_other_bytes, _other_large, _other_large_at_the_same_time, _other_behind_the_link, _other_link),
    *(_link_to_nowhere, _folder_of_folders, _renamed),
]


@pytest.mark.parametrize("change", CHANGES, ids=lambda change: change.__name__)
def test_any_change_of_what_is_read_shows(folder: Path, change: Callable[[Path], None]) -> None:
    """And nothing else does."""
    before = content_digest(folder)
    assert content_digest(folder) == before
    change(folder)

    assert content_digest(folder) != before


def test_folders_that_are_left_out_do_not_count(folder: Path) -> None:
    """Such as the sites that are built there."""
    before = content_digest(folder, [folder / "sites"])
    (folder / "sites").mkdir()
    (folder / "sites" / "index.html").write_text("x")

    assert content_digest(folder, [folder / "sites"]) == before


def test_a_file_that_was_written_is_told_by_more_than_its_size(folder: Path) -> None:
    """Even when it holds as much as before."""
    before = stat_digest(files_in(folder))
    (folder / "visit.yaml").write_text("date: 2026-10-15")
    os.utime(folder / "visit.yaml", (1, 1))

    assert stat_digest(files_in(folder)) != before

"""The folder of the cache: measured, pruned to a size, cleared of what is ours alone."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

import pytest

from recordgen.cache.entries import Cache
from recordgen.cache.place import SIGNATURE, TAG, clear, prune, stored


def filled(folder: Path, count: int = 10) -> list[str]:
    """The keys of entries of 1 kB each and what stands before it, the first of them the longest unused."""
    keys = [hashlib.sha256(str(number).encode()).hexdigest() for number in range(count)]
    for number, key in enumerate(keys):
        Cache(folder).put("pictures", key, bytes(1000))
        os.utime(folder / "pictures" / key[:2] / key, (number, number))
    return keys


def test_it_is_marked_for_programs_that_make_backups(tmp_path: Path) -> None:
    """Source: Cache Directory Tagging Specification, version 0.6: the name, and how the file begins."""
    filled(tmp_path, 1)

    assert TAG == "CACHEDIR.TAG"
    assert (tmp_path / TAG).read_text().startswith("Signature: 8a477f597d28d172789f06886806bc55\n")
    assert SIGNATURE.endswith("8a477f597d28d172789f06886806bc55")


def test_pruning_takes_what_was_unused_longest(tmp_path: Path) -> None:
    """Down to four fifths of what may be kept, and nothing while there is less."""
    keys = filled(tmp_path)
    size = sum(one.size for one in stored(tmp_path))

    assert prune(tmp_path, size) == 0
    assert prune(tmp_path, size - 1) == 3
    assert [Cache(tmp_path).get("pictures", key) is None for key in keys] == [True] * 3 + [False] * 7


def test_clearing_takes_all_of_ours_and_nothing_else(tmp_path: Path) -> None:
    """A file that somebody put there stays, and so does its folder."""
    filled(tmp_path)
    (tmp_path / "pictures" / "mine.txt").write_text("somebody's")

    assert clear(tmp_path) == 10
    assert sorted(path.name for path in tmp_path.rglob("*")) == [TAG, "mine.txt", "pictures"]


def test_a_folder_without_the_mark_is_left_alone(tmp_path: Path) -> None:
    """Even where its files are named like ours."""
    filled(tmp_path)
    (tmp_path / TAG).unlink()

    assert (clear(tmp_path), prune(tmp_path, 0)) == (0, 0)
    assert len(list(stored(tmp_path))) == 10


@pytest.mark.parametrize("sweep", [clear, prune])
def test_what_a_killed_run_left_half_written_goes(tmp_path: Path, sweep: object) -> None:
    """Nobody holds such a part any longer."""
    (key,) = filled(tmp_path, 1)
    part = tmp_path / "pictures" / key[:2] / f".{key}.0123abcd.part"
    part.write_bytes(b"half")
    assert callable(sweep)
    sweep(tmp_path)

    assert not part.exists()

"""Entries of the cache: given back as they were kept, or not at all, whatever happened to their files."""

from __future__ import annotations

import hashlib
import os
import shutil
import signal
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.cache import entries
from recordgen.cache.entries import Cache
from recordgen.cache.place import TAG, stored

KEY, OTHER = hashlib.sha256(b"one").hexdigest(), hashlib.sha256(b"other").hexdigest()
CONTENT = b'{"toe_length": [81.25, 0.5]}'


def kept(folder: Path, key: str = KEY, content: bytes = CONTENT, kind: str = "figures") -> Path:
    """The file of an entry that was kept just now."""
    Cache(folder).put(kind, key, content)
    return folder / kind / key[:2] / key


def test_what_was_kept_is_given_back(tmp_path: Path) -> None:
    """To the last byte, by its kind and key alone."""
    kept(tmp_path)

    assert Cache(tmp_path).get("figures", KEY) == CONTENT
    assert Cache(tmp_path).get("figures", OTHER) is None
    assert Cache(tmp_path).get("pictures", KEY) is None


@given(st.data())
def test_any_change_of_a_byte_is_no_entry(tmp_path_factory: pytest.TempPathFactory, data: st.DataObject) -> None:
    """Wherever it lies: in the form, the kind, the key, the hash or the content."""
    folder = tmp_path_factory.mktemp("kept")
    file = kept(folder)
    whole = bytearray(file.read_bytes())
    whole[data.draw(st.integers(0, len(whole) - 1))] ^= data.draw(st.integers(1, 255))
    file.write_bytes(whole)

    assert Cache(folder).get("figures", KEY) is None


@given(st.integers(0, 400), st.binary(max_size=20))
def test_any_other_length_is_no_entry(tmp_path_factory: pytest.TempPathFactory, length: int, more: bytes) -> None:
    """Cut short, as a full disk leaves it, or with something behind it."""
    folder = tmp_path_factory.mktemp("kept")
    file = kept(folder)
    whole = file.read_bytes()
    file.write_bytes(whole[:length] + more)

    assert Cache(folder).get("figures", KEY) == (CONTENT if file.read_bytes() == whole else None)


def _swap(one: Path, other: Path) -> None:
    kept_there = other.read_bytes()
    other.write_bytes(one.read_bytes())
    one.write_bytes(kept_there)


def test_entries_that_changed_places_are_none(tmp_path: Path) -> None:
    """Each is whole, and each tells that it is another."""
    _swap(kept(tmp_path), kept(tmp_path, OTHER, b"{}"))

    assert [Cache(tmp_path).get("figures", key) for key in (KEY, OTHER)] == [None, None]


def test_another_kind_under_the_same_key_is_none(tmp_path: Path) -> None:
    """A picture is not taken for figures."""
    _swap(kept(tmp_path), kept(tmp_path, kind="pictures", content=b"<svg/>"))

    assert Cache(tmp_path).get("figures", KEY) is None


def test_another_form_is_no_entry(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """An entry of a newer program is not read by an older one, and is replaced."""
    with monkeypatch.context() as newer:
        newer.setattr(entries, "MAGIC", b"recordgen cache 2")
        kept(tmp_path)

    assert Cache(tmp_path).get("figures", KEY) is None
    kept(tmp_path)
    assert Cache(tmp_path).get("figures", KEY) == CONTENT


def _file_in_the_way(folder: Path) -> None:
    folder.write_text("somebody's")


def _folder_of_somebody(folder: Path) -> None:
    folder.mkdir()
    (folder / "letters.txt").write_text("somebody's")


def _folder_as_entry(folder: Path) -> None:
    file = kept(folder)
    file.unlink()
    file.mkdir()
    (file / "inside").write_text("x")


@pytest.mark.parametrize("hinder", [_file_in_the_way, _folder_of_somebody, _folder_as_entry])
def test_a_place_that_takes_nothing_costs_only_time(tmp_path: Path, hinder: Callable[[Path], None]) -> None:
    """Nothing is kept, nothing of somebody's is touched, and no trouble is raised."""
    hinder(tmp_path / "kept")
    before = sorted(path for path in tmp_path.rglob("*") if path.is_file())
    kept(tmp_path / "kept")

    assert Cache(tmp_path / "kept").get("figures", KEY) is None
    assert sorted(path for path in tmp_path.rglob("*") if path.is_file()) == before


def test_it_may_be_deleted_at_any_time(tmp_path: Path) -> None:
    """Even while somebody works with it."""
    cache = Cache(tmp_path / "kept")
    cache.put("figures", KEY, CONTENT)
    shutil.rmtree(tmp_path / "kept")

    assert cache.get("figures", KEY) is None
    cache.put("figures", KEY, CONTENT)
    assert cache.get("figures", KEY) == CONTENT


def test_nobody_else_may_look(tmp_path: Path) -> None:
    """The folder and all in it are this user's alone, also where the folder was open before."""
    (tmp_path / "kept").mkdir(mode=0o755)
    kept(tmp_path / "kept")
    modes = {path.stat().st_mode & 0o077 for path in [tmp_path / "kept", *(tmp_path / "kept").rglob("*")]}

    assert modes == {0}


def test_nowhere_keeps_nothing() -> None:
    """Asking for no cache is one that holds nothing."""
    Cache(None).put("figures", KEY, CONTENT)

    assert Cache(None).get("figures", KEY) is None


WRITER = f"""
import sys
from pathlib import Path
from recordgen.cache.entries import Cache
cache = Cache(Path(sys.argv[1]))
print("began", flush=True)
while True:
    cache.put("figures", "{KEY}", sys.argv[2].encode() * 20_000)
"""


def test_two_that_write_at_once_and_are_killed_leave_a_whole_entry(tmp_path: Path) -> None:
    """Read meanwhile and afterwards it is the one or the other."""
    writers = [
        subprocess.Popen([sys.executable, "-c", WRITER, str(tmp_path), sign], stdout=subprocess.PIPE) for sign in "ab"
    ]
    assert [writer.stdout and writer.stdout.readline() for writer in writers] == [b"began\n"] * 2
    seen = {(found := Cache(tmp_path).get("figures", KEY)) and found[:1] + found[-1:] for _ in range(200)}
    for writer in writers:
        writer.send_signal(signal.SIGKILL)
        writer.communicate()

    assert seen <= {None, b"aa", b"bb"}
    assert Cache(tmp_path).get("figures", KEY) in (b"a" * 20_000, b"b" * 20_000)


def test_what_was_of_use_is_marked_as_used(tmp_path: Path) -> None:
    """So that pruning takes what nobody asks for."""
    file = kept(tmp_path)
    os.utime(file, (0, 0))
    Cache(tmp_path).get("figures", KEY)

    assert [one.used > 0 for one in stored(tmp_path)] == [True]
    assert (tmp_path / TAG).is_file()

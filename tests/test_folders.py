"""Folders put in the place of others, and what killed runs leave."""

from __future__ import annotations

import os
import signal
import subprocess
import sys
from pathlib import Path

import pytest

from recordgen import folders
from recordgen.files import list_files
from recordgen.folders import refuse_strangers, replace_folder, workroom
from recordgen.locks import hold_lock
from recordgen.problems import Trouble
from recordgen.sentences import worded

# Replaces a folder by renamings, and is killed before the so-manieth of them.
KILLED = """
import os, pathlib, signal, sys
from recordgen import folders
place, left = pathlib.Path(sys.argv[1]), [int(sys.argv[2])]
rename = pathlib.Path.rename
def counted(self, target):
    left[0] -= 1
    if left[0] < 0:
        os.kill(os.getpid(), signal.SIGKILL)
    return rename(self, target)
pathlib.Path.rename = counted
folders.exchange = lambda one, other: False
with folders.workroom(place.parent) as room:
    (room / "site").mkdir()
    (room / "site" / "index.html").write_text("new")
    folders.replace_folder(room / "site", place)
"""


@pytest.fixture
def place(tmp_path: Path) -> Path:
    """A folder that holds a site."""
    (tmp_path / "sites" / "willowmere").mkdir(parents=True)
    (tmp_path / "sites" / "willowmere" / "index.html").write_text("old")
    return tmp_path / "sites" / "willowmere"


def replaced(place: Path) -> None:
    """Put a new site in its place."""
    with workroom(place.parent) as room:
        (room / "site").mkdir()
        (room / "site" / "index.html").write_text("new")
        replace_folder(room / "site", place)


@pytest.mark.parametrize("in_one_step", [True, False])
def test_a_folder_takes_the_place_of_another(place: Path, in_one_step: bool, monkeypatch: pytest.MonkeyPatch) -> None:
    """With or without an exchange; nothing else is left."""
    if not in_one_step:
        monkeypatch.setattr(folders, "exchange", lambda *_: False)
    replaced(place)

    assert (place / "index.html").read_text() == "new"
    assert [path.name for path in place.parent.iterdir()] == ["willowmere"]


def test_a_new_folder_that_cannot_be_put_leaves_the_old_one(place: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    """A folder moved aside comes back."""
    monkeypatch.setattr(folders, "exchange", lambda *_: False)
    with pytest.raises(FileNotFoundError), workroom(place.parent) as room:
        replace_folder(room / "nothing", place)

    assert (place / "index.html").read_text() == "old"


@pytest.mark.parametrize("renamings", [0, 1])
def test_killed_between_two_renamings_no_site_is_missing(place: Path, renamings: int) -> None:
    """The next workroom there puts the old one back, and clears what was left."""
    done = subprocess.run([sys.executable, "-c", KILLED, str(place), str(renamings)])
    assert done.returncode == -signal.SIGKILL
    assert place.exists() is (renamings == 0)
    with workroom(place.parent):
        pass

    assert (place / "index.html").read_text() == "old"
    assert [path.name for path in place.parent.iterdir()] == ["willowmere"]


def test_a_workroom_in_use_and_folders_of_others_stay(tmp_path: Path) -> None:
    """Whatever their names; an empty one is of nobody, and goes."""
    (tmp_path / ".recordgen-plans").mkdir()
    (tmp_path / ".recordgen-plans" / "notes.txt").write_text("mine")
    (tmp_path / ".recordgen-begun").mkdir()
    (tmp_path / ".recordgen-file").write_text("mine")
    with workroom(tmp_path) as first, workroom(tmp_path) as second:
        assert first.is_dir()
        assert second.is_dir()
        assert first.stat().st_mode & 0o777 == 0o700

    assert list_files(tmp_path) == [".recordgen-file", ".recordgen-plans/notes.txt"]
    assert not (tmp_path / ".recordgen-begun").exists()


def test_a_link_in_a_left_workroom_is_not_followed(tmp_path: Path) -> None:
    """The file it leads to stays."""
    (tmp_path / "mine").mkdir()
    (tmp_path / "mine" / "notes.txt").write_text("mine")
    with workroom(tmp_path) as room:
        (room / "link").symlink_to(tmp_path / "mine")
        (room / "deep").mkdir()
        (room / "deep" / "link").symlink_to(tmp_path / "mine")

    assert list_files(tmp_path) == ["mine/notes.txt"]


def test_strangers_are_named_and_counted() -> None:
    """The first five, and how many others."""
    with pytest.raises(Trouble, match=r"out holds files that are not of this site: 0, 1, 2, 3, 4 and 2 others"):
        refuse_strangers([str(number) for number in range(7)], "out", worded(""))


@pytest.mark.skipif(os.name != "posix", reason="a folder is held by a file in it elsewhere")
def test_a_folder_is_held_without_a_trace(tmp_path: Path) -> None:
    """Nobody else gets it meanwhile, and afterwards everybody does."""
    with hold_lock(tmp_path, worded("a build works there")):
        with (
            pytest.raises(Trouble, match="a build works there in another window"),
            hold_lock(tmp_path, worded("a build works there")),
        ):
            pass
        assert list(tmp_path.iterdir()) == []
    with hold_lock(tmp_path, worded("a build works there")):
        pass

"""A sealed site in a folder that is served: swapped in one step, never over somebody's files."""

from __future__ import annotations

import errno
import multiprocessing
import os
import shutil
import signal
import sys
from pathlib import Path
from typing import Any

import pytest

from recordgen import folders
from recordgen.files import fingerprints
from recordgen.private.publishing.ownership import Ours
from recordgen.private.publishing.to_folder import put_folder
from recordgen.problems import Trouble
from tests.support.sealed_folders import OURS, sealed_like

# What the system is asked for while a folder is put in place; before each of these a run is killed once.
STEPS = {"open", "os.mkdir", "os.rename", "os.chmod", "os.remove", "os.rmdir", "ctypes.call_function"}


@pytest.fixture
def old(tmp_path: Path) -> Path:
    """The edition before."""
    return sealed_like(tmp_path / "old", "old")


@pytest.fixture
def new(tmp_path: Path) -> Path:
    """The edition to be put in its place."""
    return sealed_like(tmp_path / "new", "new")


@pytest.fixture
def place(tmp_path: Path, old: Path) -> Path:
    """A served folder that holds the edition before."""
    put_folder(old, tmp_path / "served" / "site", OURS)
    return tmp_path / "served" / "site"


def killed_at(step: int, new: Path, place: Path) -> int | None:
    """How a process ended that was killed before its so-manieth step; 0 where it took fewer."""
    process = multiprocessing.get_context("fork").Process(target=_put_and_die, args=(step, new, place))
    process.start()
    process.join(60)
    return process.exitcode


def _put_and_die(step: int, new: Path, place: Path) -> None:
    left = [step]

    def watch(event: str, _: tuple[Any, ...]) -> None:
        if event in STEPS:
            left[0] -= 1
            if left[0] < 0:
                os.kill(os.getpid(), signal.SIGKILL)

    sys.addaudithook(watch)
    put_folder(new, place, OURS)


@pytest.mark.skipif(sys.platform != "linux", reason="kills by forking")
def test_killed_at_any_step_the_place_holds_one_whole_edition(place: Path, old: Path, new: Path) -> None:
    """Old before the swap, new after it, at no step anything else; the next run clears what was left."""
    before, after = fingerprints(old), fingerprints(new)
    seen, step = [], 0
    while killed_at(step, new, place) != 0:
        seen.append(fingerprints(place))
        step += 1
        if seen[-1] == after:
            put_folder(old, place, OURS)

    assert all(found in (before, after) for found in seen)
    assert before in seen
    assert after in seen
    assert step > 20
    assert fingerprints(place) == after
    assert [path.name for path in place.parent.iterdir()] == ["site"]


@pytest.mark.skipif(sys.platform != "linux", reason="kills by forking")
def test_without_an_exchange_the_next_run_puts_back_what_was_moved_aside(
    place: Path, old: Path, new: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Killed between two renamings the old edition lies aside, whole, and returns even if the disk is full by then."""
    monkeypatch.setattr(folders, "exchange", lambda one, other: False)
    step = 0
    while place.exists():
        assert killed_at(step, new, place) == -signal.SIGKILL
        step += 1
    monkeypatch.setattr(shutil, "copyfile", _full)
    with pytest.raises(Trouble):
        put_folder(new, place, OURS)

    assert fingerprints(place) == fingerprints(old)


def _full(*_: object, **__: object) -> None:
    raise OSError(errno.ENOSPC, "No space left on device")


def test_a_full_disk_is_told_and_changes_nothing(
    place: Path, old: Path, new: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """The old edition is served on, and nothing is left beside it."""
    monkeypatch.setattr(shutil, "copyfile", _full)
    with pytest.raises(Trouble, match=r"the disk of .* is full") as stopped:
        put_folder(new, place, OURS)

    assert "What is served stays as it was" in stopped.value.way_out
    assert fingerprints(place) == fingerprints(old)
    assert [path.name for path in place.parent.iterdir()] == ["site"]


def test_a_folder_is_made_with_all_above_it(tmp_path: Path, new: Path) -> None:
    """The first time nothing is there yet; a web server may read it, whatever the sealed folder's own modes."""
    for path in (new, *new.rglob("*")):
        path.chmod(0o700 if path.is_dir() else 0o600)
    assert put_folder(new, tmp_path / "a" / "b", OURS)

    assert fingerprints(tmp_path / "a" / "b") == fingerprints(new)
    assert {oct(path.stat().st_mode & 0o044) for path in (tmp_path / "a/b").rglob("*")} == {oct(0o044)}


def test_the_same_edition_is_not_put_there_twice(place: Path, old: Path) -> None:
    """The folder stays the very folder it was."""
    before = place.stat().st_ino

    assert put_folder(old, place, OURS) is False
    assert place.stat().st_ino == before


def test_somebodys_files_are_named_and_kept(place: Path, old: Path, new: Path) -> None:
    """A file beside the site, or in a folder of it, stops everything."""
    for name in ("holiday.jpg", "d/list.txt"):
        (place / name).write_text("mine")
    with pytest.raises(Trouble, match=r"not of this site: d/list\.txt, holiday\.jpg"):
        put_folder(new, place, OURS)

    assert (place / "holiday.jpg").read_text() == "mine"


def test_a_site_of_somebody_elses_is_not_taken_for_ours(tmp_path: Path, new: Path) -> None:
    """An index.html alone is no sealed site; of many files the first are named."""
    theirs = tmp_path / "theirs"
    theirs.mkdir()
    for name in ("index.html", *(f"page{number}.html" for number in range(7))):
        (theirs / name).write_text("<h1>Somebody's</h1>")
    with pytest.raises(Trouble, match=r"index\.html, .*page3\.html and 3 others"):
        put_folder(new, theirs, OURS)


def test_what_was_published_plainly_may_be_replaced(tmp_path: Path, new: Path) -> None:
    """Names that were published here last are ours."""
    plain = tmp_path / "plain"
    plain.mkdir()
    (plain / "jobs.html").write_text("<h1>Jobs</h1>")

    assert put_folder(new, plain, Ours(published=frozenset({"jobs.html"})))
    assert fingerprints(plain) == fingerprints(new)


def test_a_link_leads_to_the_real_place(tmp_path: Path, place: Path, new: Path) -> None:
    """Where the served folder is a link, its target is swapped and the link stays."""
    link = tmp_path / "link"
    link.symlink_to(place)
    put_folder(new, link, OURS)

    assert link.is_symlink()
    assert fingerprints(place) == fingerprints(new)


def test_a_file_in_the_place_is_told(tmp_path: Path, new: Path) -> None:
    """A file is no folder."""
    (tmp_path / "file").write_text("mine")
    with pytest.raises(Trouble, match="is not a folder"):
        put_folder(new, tmp_path / "file", OURS)


def test_another_stables_site_is_not_replaced(tmp_path: Path, place: Path, new: Path) -> None:
    """The place of one stable named for another by mistake keeps its site, even under the very same names."""
    other = sealed_like(tmp_path / "other", "other", site="YW5vdGhlciBzdGFibGUuLg")
    with pytest.raises(Trouble, match="holds the sealed site of another stable"):
        put_folder(other, place, Ours("YW5vdGhlciBzdGFibGUuLg", frozenset(fingerprints(other))))

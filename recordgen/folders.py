"""Folders put in the place of others in one step, never in the place of what is not ours, and whole after any kill."""

from __future__ import annotations

import ctypes
import errno
import os
import shutil
import sys
import tempfile
from collections.abc import Collection, Iterable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from recordgen.files import NO_LINKS
from recordgen.locks import hold, hold_new
from recordgen.problems import Trouble, as_typed
from recordgen.sentences import Said, and_more, say

MOST_NAMED = 5
# What systems leave in a folder that somebody looked into; nobody means to keep it.
_LEFT_BY_SYSTEMS = {".DS_Store", "Thumbs.db", "desktop.ini"}
_PREFIX = ".recordgen-"
# Tells a workroom of ours from a folder of somebody's, and is held as long as somebody works in it.
_WORK = ".work"
# How the name of a folder ends that was moved aside for a moment.
_ASIDE = ".before"


@contextmanager
def workroom(parent: Path) -> Iterator[Path]:
    """A folder in `parent`, for this user alone, in which things are made before they take their places beside it.

    What killed runs left in theirs is cleared first, and a folder that they had moved aside is put back.
    Raises OSError.
    """
    clear_workrooms(parent)
    room, handle = _begun(parent)
    try:
        yield room
    finally:
        _clear(room)
        os.close(handle)
        _end(room)


def clear_workrooms(parent: Path) -> None:
    """Clear the workrooms that killed runs left in a folder, where they can be cleared."""
    for room in parent.glob(f"{_PREFIX}*") if parent.is_dir() else ():
        with suppress(OSError):
            if _is_ours(room):
                _clear_if_left(room)


def _begun(parent: Path) -> tuple[Path, int]:
    while True:
        room = Path(tempfile.mkdtemp(prefix=_PREFIX, dir=parent))
        with suppress(FileNotFoundError):
            handle = os.open(room / _WORK, os.O_RDWR | os.O_CREAT | os.O_EXCL, 0o600)
            if hold_new(handle):
                return room, handle
            os.close(handle)


def _is_ours(room: Path) -> bool:
    own = not hasattr(os, "getuid") or room.stat().st_uid == os.getuid()
    return own and room.is_dir() and not room.is_symlink()


def _clear_if_left(room: Path) -> None:
    """Raises OSError where somebody still works in it."""
    if (room / _WORK).is_file():
        handle = os.open(room / _WORK, os.O_RDWR)
        try:
            hold(handle)
            _clear(room)
        finally:
            os.close(handle)
        _end(room)
    else:
        # One killed before it could mark its own is empty; any other is somebody's, and stays.
        room.rmdir()


def _clear(room: Path) -> None:
    """All but the mark, which goes last, so that what a kill leaves even now is known for ours."""
    for path in room.iterdir():
        if path.name.endswith(_ASIDE) and not os.path.lexists(home := room.parent / path.name.removesuffix(_ASIDE)):
            path.rename(home)
        elif path.is_dir() and not path.is_symlink():
            shutil.rmtree(path, ignore_errors=True)
        elif path.name != _WORK:
            path.unlink(missing_ok=True)


def _end(room: Path) -> None:
    with suppress(OSError):
        if [path.name for path in room.iterdir()] == [_WORK]:
            (room / _WORK).unlink()
        room.rmdir()


def bring_along(names: Iterable[str], before: Path, fresh: Path) -> None:
    """Give files of one folder a place in another, where they are the same files by a second name if that is to be had.

    names: their paths in both. Raises OSError.
    """
    for name in names:
        target = fresh / name
        target.parent.mkdir(parents=True, exist_ok=True)
        try:
            os.link(before / name, target)
        except OSError as fault:
            if fault.errno not in NO_LINKS:
                raise
            shutil.copyfile(before / name, target)


def replace_folder(fresh: Path, place: Path) -> None:
    """Put a folder in the place of another in one step; at every moment the place holds the one or the other, whole.

    fresh: in a workroom beside the place; what stood in the place goes with the workroom. Whether that may go is to be
    asked before, by `refuse_strangers`. Raises OSError; the place then is as it was.
    """
    if not os.path.lexists(place):
        fresh.rename(place)
    elif not exchange(fresh, place):
        _one_after_the_other(fresh, place)


def _one_after_the_other(fresh: Path, place: Path) -> None:
    """For systems that cannot exchange two folders: killed between the two, the next workroom puts back the first."""
    aside = fresh.with_name(f"{place.name}{_ASIDE}")
    place.rename(aside)
    try:
        fresh.rename(place)
    except OSError:
        aside.rename(place)
        raise


def exchange(one: Path, other: Path) -> bool:
    """Tell whether two folders changed places in one step; False where the system offers no such step.

    Source: renameat2(2), RENAME_EXCHANGE, Linux manual pages; renamex_np(2), RENAME_SWAP, macOS manual pages. The
    latter from memory, not read.
    """
    if sys.platform == "win32":
        return False
    library = ctypes.CDLL(None, use_errno=True)
    here, first, second = -100, os.fsencode(one.absolute()), os.fsencode(other.absolute())
    if hasattr(library, "renameat2"):
        failed = library.renameat2(here, first, here, second, 2)
    elif hasattr(library, "renamex_np"):
        failed = library.renamex_np(first, second, 2)
    else:
        return False
    code = ctypes.get_errno()
    if failed and code not in (errno.EINVAL, errno.ENOSYS, errno.ENOTSUP):
        raise OSError(code, os.strerror(code), str(other))
    return not failed


def refuse_strangers(foreign: Collection[str], where: str, way_out: Said) -> None:
    """Raises Trouble that names the files of somebody else, where there are any."""
    named = sorted(name for name in foreign if name.rpartition("/")[2] not in _LEFT_BY_SYSTEMS)
    if named:
        some = ", ".join(as_typed(name, 100) for name in named[:MOST_NAMED])
        files = and_more(some, len(named) - MOST_NAMED)
        message = say("{where} holds files that are not of this site: {files}", where=where, files=files)
        raise Trouble(message, way_out)

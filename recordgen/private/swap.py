"""A folder put in the place of a served one: copied beside it, then swapped in one step."""

from __future__ import annotations

import ctypes
import errno
import os
import shutil
import sys
import tempfile
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from recordgen.private.folder import RING_FILE, Ours, fingerprints, names
from recordgen.problems import Trouble


def put_folder(fresh: Path, place: Path, ours: Ours) -> bool:
    """Put a copy of `fresh` in the place of a folder, in one step; False where the same was there already.

    At every moment the place holds the old site or the new one, whole. Raises Trouble where it holds anything else,
    where it cannot be swapped, and on a full disk.
    """
    place = Path(os.path.realpath(place))
    with _told(place):
        refuse_place(place, ours)
        if place.is_dir() and fingerprints(place) == fingerprints(fresh):
            return False
        place.parent.mkdir(parents=True, exist_ok=True)
        _clear_left_over(place)
        _swap(_copied(fresh, place), place)
    return True


def refuse_place(place: Path, ours: Ours) -> None:
    """Raises Trouble where a place is no folder, or holds anything but this site."""
    if place.is_dir():
        ring = place / RING_FILE
        ours.look_at(names(place), ring.read_bytes() if ring.is_file() else None, str(place))
    elif place.exists():
        raise Trouble(f"{place} is not a folder", "Name a folder of its own in stable.yaml")


def _beside(place: Path) -> str:
    return f".{place.name}-publishing-"


def _clear_left_over(place: Path) -> None:
    """Clears what an interrupted run left, but first puts back a site that was moved aside."""
    for path in place.parent.glob(f"{_beside(place)}*"):
        if (path / "before").is_dir() and not place.exists():
            (path / "before").rename(place)
        shutil.rmtree(path, ignore_errors=True)


def _copied(fresh: Path, place: Path) -> Path:
    """A copy beside the place, on the disk before it is used, as open to others as any new folder."""
    copy = Path(tempfile.mkdtemp(prefix=_beside(place), dir=place.parent)) / "site"
    copy.mkdir()
    for name in names(fresh):
        (copy / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(fresh / name, copy / name)
    if hasattr(os, "sync"):
        os.sync()
    return copy


def _swap(copy: Path, place: Path) -> None:
    if not place.exists():
        copy.rename(place)
    elif not exchange(copy, place):
        _one_after_the_other(copy, place)
    shutil.rmtree(copy.parent, ignore_errors=True)


def _one_after_the_other(copy: Path, place: Path) -> None:
    """For systems that cannot exchange two folders: for the moment between two renamings the place is empty."""
    aside = copy.with_name("before")
    place.rename(aside)
    try:
        copy.rename(place)
    except OSError:
        aside.rename(place)
        raise


def exchange(one: Path, other: Path) -> bool:
    """Whether two folders changed places in one step; False where the system offers no such step.

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


@contextmanager
def _told(place: Path) -> Iterator[None]:
    """Turns what a disk refuses into sentences, once what was begun is taken away again."""
    try:
        yield
    except OSError as fault:
        _clear_left_over(place)
        kept = "What is served stays as it was"
        if fault.errno in (errno.ENOSPC, errno.EDQUOT):
            raise Trouble(f"the disk of {place} is full", f"{kept}; make room and publish again") from fault
        if fault.errno in (errno.EBUSY, errno.EXDEV):
            message = f"{place} is where a disk begins, so it cannot be swapped in one step"
            raise Trouble(message, f"{kept}; name a folder inside it") from fault
        reason = fault.strerror or str(fault)
        raise Trouble(f"{place} cannot be written: {reason}", f"{kept}; look whether you may write there") from fault

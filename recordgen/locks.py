"""Holds a file or a folder for one process at a time; the system lets go of it even if the process is killed."""

from __future__ import annotations

import os
import sys
from collections.abc import Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from recordgen.problems import Trouble
from recordgen.sentences import Said, say

if sys.platform == "win32":
    import msvcrt

    def hold(handle: int, wait: bool = False) -> None:
        """Hold what was opened until it is closed. Raises OSError where somebody else holds it."""
        msvcrt.locking(handle, msvcrt.LK_LOCK if wait else msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def hold(handle: int, wait: bool = False) -> None:
        """Hold what was opened until it is closed. Raises OSError where somebody else holds it."""
        fcntl.flock(handle, fcntl.LOCK_EX | (0 if wait else fcntl.LOCK_NB))


def hold_new(handle: int) -> bool:
    """Hold a file that was made just now; False where somebody took it for a left one and took it away.

    Where the system can hold nothing, it is not held.
    """
    with suppress(OSError):
        hold(handle, wait=True)
    return os.fstat(handle).st_nlink > 0


@contextmanager
def hold_lock(place: Path, busy: Said) -> Iterator[None]:
    """Hold a folder that is there, or a file that is made where it is missing, for as long as the block runs.

    busy: what somebody else does while they hold it. Raises Trouble where somebody does, and OSError.
    """
    if place.is_dir() and sys.platform == "win32":
        # No folder can be held there.
        place /= ".lock"
    handle = os.open(place, os.O_RDONLY if place.is_dir() else os.O_RDWR | os.O_CREAT, 0o600)
    try:
        with _busy_told(busy):
            hold(handle)
        yield
    finally:
        os.close(handle)


@contextmanager
def _busy_told(busy: Said) -> Iterator[None]:
    try:
        yield
    except OSError:
        raise Trouble(say("{busy} in another window", busy=busy), say("Wait until that is done")) from None

"""One publishing of a stable at a time."""

from __future__ import annotations

import sys
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path
from typing import IO

from recordgen.problems import Trouble

if sys.platform == "win32":
    import msvcrt

    def _hold(file: IO[bytes]) -> None:
        msvcrt.locking(file.fileno(), msvcrt.LK_NBLCK, 1)
else:
    import fcntl

    def _hold(file: IO[bytes]) -> None:
        fcntl.flock(file, fcntl.LOCK_EX | fcntl.LOCK_NB)


@contextmanager
def alone(state_file: Path) -> Iterator[None]:
    """Holds a stable's keys for as long as the block runs; the system lets go of them even if the process is killed.

    Raises Trouble where somebody else holds them.
    """
    with state_file.with_suffix(".lock").open("ab") as file:
        try:
            _hold(file)
        except OSError:
            raise Trouble(
                "this stable is being published, or its readers changed, in another window", "Wait until that is done"
            ) from None
        yield

"""One publishing of a stable at a time."""

from __future__ import annotations

from contextlib import AbstractContextManager
from pathlib import Path

from recordgen.locks import hold_lock
from recordgen.sentences import say


def alone(state_file: Path) -> AbstractContextManager[None]:
    """Holds a stable's keys for as long as the block runs; the system lets go of them even if the process is killed.

    Raises Trouble where somebody else holds them.
    """
    return hold_lock(state_file.with_suffix(".lock"), say("this stable is being published, or its readers changed,"))

"""Work shared among the cores: the same function over many things, each in a process that ends with this one.

Commands that share nothing load nothing for it.
"""

from __future__ import annotations

import os
import sys
import threading
from collections.abc import Callable, Iterator, Sequence
from typing import TYPE_CHECKING, Any, TypeVar

if TYPE_CHECKING:
    from multiprocessing.process import BaseProcess

Item = TypeVar("Item")
Result = TypeVar("Result")

# The one function that a worker's process runs, and what it may run over: forked, not sent.
_WORK: list[tuple[Callable[[Any], Any], Sequence[Any]]] = []
# Threads that hold no lock while this process is forked, since they see to it themselves.
STILL: set[threading.Thread] = set()


def can_fork() -> bool:
    """Tell whether this process may be forked: on Linux, and while nothing runs in it but what is still then."""
    from multiprocessing import parent_process

    others = set(threading.enumerate()) - {threading.current_thread()} - STILL
    return sys.platform == "linux" and not others and parent_process() is None


def map_over_cores(
    work: Callable[[Item], Result], items: Sequence[Item], processes: int | None = None
) -> Iterator[Result]:
    """The results of a function over some items, in their order; one after the other where this process cannot fork.

    processes: how many at once; one for each core where None. Raises what the function raised.
    """
    count = min(processes or os.cpu_count() or 1, len(items))
    if count <= 1 or not can_fork():
        yield from map(work, items)
        return
    from concurrent.futures import ProcessPoolExecutor
    from multiprocessing import get_context

    _WORK.append((work, items))
    try:
        way = get_context("fork")
        with ProcessPoolExecutor(count, way, initializer=end_with_parent) as pool:
            yield from pool.map(_nth, range(len(items)))
    finally:
        _WORK.pop()


def _nth(number: int) -> Any:
    work, items = _WORK[-1]
    return work(items[number])


def end_with_parent() -> None:
    """Let this worker's process end when the one that began it does: left alone it would hold what that one held."""
    from multiprocessing import parent_process

    threading.Thread(target=_end_with, args=(parent_process(),), daemon=True).start()


def _end_with(parent: BaseProcess | None) -> None:
    if parent:
        parent.join()
        os._exit(1)

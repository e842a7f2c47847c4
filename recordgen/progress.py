"""Tell how far a long piece of work has come, told to whoever listens; to nobody, where nobody does."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from contextlib import contextmanager
from contextvars import ContextVar
from typing import TypeVar

Item = TypeVar("Item")
# Gets the stage as a person calls it, how many are done, and of how many.
Listener = Callable[[str, int, int], None]
_LISTENER: ContextVar[Listener | None] = ContextVar("listener", default=None)


@contextmanager
def listened(listener: Listener) -> Iterator[None]:
    """Tells a listener, for as long as the block runs."""
    before = _LISTENER.set(listener)
    try:
        yield
    finally:
        _LISTENER.reset(before)


def steps(stage: str, items: Sequence[Item]) -> Iterator[Item]:
    """The items one by one, each told as done when the next is asked for."""
    for done, item in enumerate(items):
        tell(stage, done, len(items))
        yield item
    tell(stage, len(items), len(items))


def tell(stage: str, done: int, of: int) -> None:
    """Tell how far a stage has come."""
    if listener := _LISTENER.get():
        listener(stage, done, of)

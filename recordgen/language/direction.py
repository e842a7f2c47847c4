"""Text that is written from right to left, or turns the direction of writing, within sentences that are not.

Set apart by the signs of Unicode for it, it keeps its own order and leaves that of the words beside it alone: in a
paragraph as in an attribute or the title of a window, where no element could stand.
"""

from __future__ import annotations

import re
from collections.abc import Callable
from functools import wraps
from typing import Any, TypeVar

R = TypeVar("R")

# Around what is set apart: by the direction of its own first letter. Source for all here: Unicode Standard Annex 9,
# sections 2.4 and 3.3.2. From memory, not read.
BEGIN, END = "\u2068", "\u2069"
# Letters of Hebrew, Arabic, Syriac, Thaana, N'Ko and the others of these blocks, and their older forms.
_LETTERS = "\u0590-\u08ff\ufb1d-\ufdff\ufe70-\ufefe\U00010800-\U00010fff\U0001e800-\U0001efff"
_TURNS = re.compile("[\u061c\u200e\u200f\u202a-\u202e\u2066-\u2069]")
_RUN = re.compile(rf"[{_LETTERS}]+(?:[\W\d_]+[{_LETTERS}]+)*")
_FIRST_LETTER = re.compile(r"[^\W\d_]")


def isolated(value: Any) -> Any:
    """A text with what is written the other way set apart; the same for any other text, and for what is no plain str.

    A text that begins the other way, or turns the direction by itself, is set apart as a whole.
    """
    if type(value) is not str or value.isascii():
        return value
    first, turns = _FIRST_LETTER.search(value), _TURNS.search(value)
    if turns or (first and _RUN.match(first[0])):
        ended, begun = _unpaired(value)
        return BEGIN * (1 + ended) + value + END * (1 + begun)
    return _RUN.sub(rf"{BEGIN}\g<0>{END}", value)


def _unpaired(text: str) -> tuple[int, int]:
    """Count the ends that nothing in the text began, so that they would end ours, and the beginnings it leaves open."""
    ended = begun = 0
    for sign in text:
        if sign in "\u2066\u2067\u2068":
            begun += 1
        elif sign == END:
            ended, begun = (ended, begun - 1) if begun else (ended + 1, begun)
    return ended, begun


def with_isolated_facts(say: Callable[..., R]) -> Callable[..., R]:
    """A sayer of sentences that sets apart what is filled into them by name."""

    @wraps(say)
    def saying(*words: Any, **facts: Any) -> R:
        return say(*words, **{name: isolated(fact) for name, fact in facts.items()})

    return saying

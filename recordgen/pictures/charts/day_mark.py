"""A mark at one day on panels that were drawn before: a line with a word above.

It is written without matplotlib, since it moves on every day while the panels stand.
"""

from __future__ import annotations

from datetime import date
from html import escape

from recordgen.pictures.charts.limits import Span, day_number
from recordgen.pictures.charts.panel_size import BOTTOM, LEFT, LOWER, RIGHT, TOP

# So far above the axes the word stands.
ABOVE = 5


def day_mark(span: Span, day: date, words: str, low: bool = False) -> str:
    """A line at a day with its word above, for `with_mark`: drawn apart, so that a picture stands when the day passes.

    span: the stretch of days of the pictures. low: whether these are less high.
    """
    first, last = map(day_number, span)
    across = _tenth(LEFT + (RIGHT - LEFT) * (day_number(day) - first) / (last - first))
    bottom, top, above = _tenth(BOTTOM - LOWER if low else BOTTOM), _tenth(TOP), _tenth(TOP - ABOVE)
    line = f'<path d="M{across} {bottom}L{across} {top}" fill="none" stroke="var(--clay)" stroke-width="1.2" '
    word = f'<text x="{across}" y="{above}" text-anchor="middle" fill="var(--clay)">{escape(words, quote=False)}</text>'
    return f'{line}stroke-linecap="square"/>{word}'


def with_mark(picture: str, mark: str) -> str:
    """A finished picture with a mark on top."""
    return f"{picture.removesuffix('</svg>')}{mark}</svg>"


def _tenth(number: float) -> str:
    return f"{number:.1f}".removesuffix(".0")

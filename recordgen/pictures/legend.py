"""Small pictures of single forms, for a legend that the page lays out in its own words."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from typing import TypeVar

from recordgen.pictures.canvas import Canvas
from recordgen.pictures.shapes import Point

SIZE = 16.0
MIDDLE: Point = (SIZE / 2, SIZE / 2)

Form = TypeVar("Form", bound=str)


def legend(forms: Mapping[Form, Callable[[Canvas, Point], None]], words: Mapping[Form, str]) -> dict[Form, str]:
    """A picture of each form that has words, named by them, in the order of the forms."""
    return {form: _drawn(draw, words[form]) for form, draw in forms.items() if form in words}


def _drawn(draw: Callable[[Canvas, Point], None], words: str) -> str:
    canvas = Canvas(SIZE, SIZE)
    draw(canvas, MIDDLE)
    return canvas.picture(words)

"""The forms of a traced sole, for a legend that the page lays out."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from recordgen.pictures.canvas import Canvas, Pen
from recordgen.pictures.legend import legend
from recordgen.pictures.shapes import Point, line
from recordgen.pictures.traced_sole import (
    AXIS,
    BARS,
    BEST_AXIS,
    BREAKOVER,
    EDGE,
    FLARE,
    FROG,
    HORN,
    WHITE_LINE,
    SoleForm,
)


def sole_key(words: Mapping[SoleForm, str]) -> dict[SoleForm, str]:
    """A small picture of each form that has words, named by them."""
    return legend(_KEY_FORMS, words)


def _box(at: Point, half: float) -> list[Point]:
    x, y = at
    return [(x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half)]


def _stroke(pen: Pen) -> Callable[[Canvas, Point], None]:
    return lambda canvas, at: canvas.draw(line([(at[0] - 7, at[1]), (at[0] + 7, at[1])]), pen)


def _key_wall(canvas: Canvas, at: Point) -> None:
    canvas.draw(line(_box(at, 5.5), closed=True), HORN)
    canvas.draw(line([(at[0] - 5.5, at[1] - 5.5), (at[0] + 5.5, at[1] - 5.5)]), EDGE)


def _key_frog(canvas: Canvas, at: Point) -> None:
    x, y = at
    canvas.draw(line([(x - 5, y + 6), (x, y - 6), (x + 5, y + 6)], closed=True), FROG)


def _key_breakover(canvas: Canvas, at: Point) -> None:
    x, y = at
    canvas.draw(line([(x - 6, y + 3), (x - 6, y), (x + 6, y), (x + 6, y + 3)]), BREAKOVER)


_KEY_FORMS: dict[SoleForm, Callable[[Canvas, Point], None]] = {
    "wall": _key_wall,
    "white line": _stroke(WHITE_LINE),
    "flare": lambda canvas, at: canvas.draw(line(_box(at, 5.0), closed=True), FLARE),
    "frog": _key_frog,
    "bars": _stroke(BARS),
    "axis": _stroke(AXIS),
    "best axis": _stroke(BEST_AXIS),
    "breakover": _key_breakover,
}

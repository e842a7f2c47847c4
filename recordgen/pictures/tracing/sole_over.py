"""A traced sole over the photograph it was traced on: its lines alone, light at their edges."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass

from recordgen.pictures.canvas import Canvas
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, Shape, line
from recordgen.pictures.tracing import sole_anatomy as anatomy
from recordgen.pictures.tracing.sole import AXIS, EDGE, WIDTH, Line

HALO, HALO_OPACITY = 2.6, 0.75
WHITE_LINE = Pen("straw", 1.6, dash=(3.0, 2.0))
FROG, BARS = Pen("ink", 1.2), Pen("ink", 1.2)
BEYOND = 12.0


@dataclass(frozen=True)
class SoleOnPhoto:
    """A sole in px of its picture, y down. frog: inner corner, apex, outer corner. Empty: not traced."""

    image: tuple[float, float]
    wall: Line = ()
    white_line: Line = ()
    frog: Line = ()
    bars: tuple[Line, ...] = ()


def sole_over_photo(sole: SoleOnPhoto, title: str) -> str:
    """The lines of a sole in the frame of its picture."""
    unit = WIDTH / sole.image[0]
    canvas = Canvas(WIDTH, sole.image[1] * unit)
    for shape, pen in _lines(sole, unit):
        canvas.draw(shape, Pen("card", pen.width + HALO, opacity=HALO_OPACITY, round_ends=True))
        canvas.draw(shape, pen)
    return canvas.picture(title)


def _lines(sole: SoleOnPhoto, unit: float) -> Iterator[tuple[Shape, Pen]]:
    def at(points: Line) -> list[Point]:
        return [(x * unit, y * unit) for x, y in points]

    if sole.white_line:
        yield anatomy.smoothly(at(sole.white_line)), WHITE_LINE
    for bar in sole.bars:
        yield anatomy.bar(at(bar)), BARS
    if sole.frog:
        yield anatomy.frog(at(sole.frog)), FROG
        yield line(anatomy.axis(at(sole.frog), at(sole.wall or sole.frog), BEYOND)), AXIS
    if sole.wall:
        yield anatomy.smoothly(at(sole.wall)), EDGE

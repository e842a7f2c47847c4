"""Checks of what a picture is drawn from: numbers that are numbers, and in order."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from itertools import pairwise


def in_order(what: str, *values: float) -> None:
    """Nothing, where the values are finite numbers none of which is less than the one before it.

    Raises ValueError, naming what they are, where they are not.
    """
    finite(what, *values)
    if any(last > now for last, now in pairwise(values)):
        raise ValueError(f"{what} out of order: {', '.join(f'{value:g}' for value in values)}")


def finite(what: str, *values: float) -> None:
    """Nothing, where all values are finite numbers.

    Raises ValueError, naming what they are, where one is not.
    """
    if not all(math.isfinite(value) for value in values):
        raise ValueError(f"{what} not a number that can be drawn: {', '.join(f'{value:g}' for value in values)}")


Point = tuple[float, float]

# The codes of matplotlib.path.Path, repeated so that building a form does not load matplotlib.
MOVE, LINE, CURVE, CLOSE = 1, 2, 4, 79

# How far the handles of a circle's quarter stand off, as a share of the radius.
QUARTER_HANDLE = 0.5523


@dataclass(frozen=True)
class Shape:
    """A form: points in picture units, y downwards, and one code for each."""

    points: tuple[Point, ...]
    codes: tuple[int, ...]


def join_shapes(shapes: Iterable[Shape]) -> Shape:
    """One form made of several, drawn in one stroke."""
    parts = tuple(shapes)
    return Shape(
        tuple(point for part in parts for point in part.points),
        tuple(code for part in parts for code in part.codes),
    )


def line(points: Sequence[Point], closed: bool = False) -> Shape:
    """The straight line through the points, closed to a polygon if asked."""
    ring = (points[0],) if closed else ()
    codes = (MOVE, *(LINE for _ in points[1:]), *(CLOSE for _ in ring))
    return Shape((*points, *ring), codes)


def segments(pairs: Iterable[tuple[Point, Point]]) -> Shape:
    """Separate straight strokes, each from its first point to its second."""
    return join_shapes(line(pair) for pair in pairs)


def dots(points: Iterable[Point]) -> Shape:
    """Strokes of no length: with round ends each is a dot as wide as the stroke."""
    return segments((point, point) for point in points)


def curve(points: Sequence[Point], closed: bool = False) -> Shape:
    """The smooth curve through all the points (a Catmull-Rom spline written as cubic pieces)."""
    last = len(points) - 1
    ends = range(last + 1) if closed else range(last)
    at = _pad_closed(points) if closed else _pad_open(points)
    return join_pieces([_piece(at[i], at[i + 1], at[i + 2], at[i + 3]) for i in ends], points[0], closed)


def join_pieces(pieces: Iterable[tuple[Point, Point, Point]], start: Point, closed: bool) -> Shape:
    """A form that starts at a point and runs along cubic pieces (two handles and an end each)."""
    inner = tuple(point for piece in pieces for point in piece)
    ring = (start,) if closed else ()
    return Shape((start, *inner, *ring), (MOVE, *(CURVE for _ in inner), *(CLOSE for _ in ring)))


def _pad_closed(points: Sequence[Point]) -> list[Point]:
    return [points[-1], *points, points[0], points[1]]


def _pad_open(points: Sequence[Point]) -> list[Point]:
    return [points[0], *points, points[-1]]


def _piece(before: Point, start: Point, end: Point, after: Point) -> tuple[Point, Point, Point]:
    leaving = (start[0] + (end[0] - before[0]) / 6, start[1] + (end[1] - before[1]) / 6)
    arriving = (end[0] - (after[0] - start[0]) / 6, end[1] - (after[1] - start[1]) / 6)
    return leaving, arriving, end


def circle(centre: Point, radius: float) -> Shape:
    """A circle of four cubic quarters."""
    x, y = centre
    r, h = radius, radius * QUARTER_HANDLE
    quarters = [
        ((x + r, y + h), (x + h, y + r), (x, y + r)),
        ((x - h, y + r), (x - r, y + h), (x - r, y)),
        ((x - r, y - h), (x - h, y - r), (x, y - r)),
        ((x + h, y - r), (x + r, y - h), (x + r, y)),
    ]
    return join_pieces(quarters, (x + r, y), closed=True)

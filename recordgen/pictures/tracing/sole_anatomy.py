"""The parts of a traced sole as smooth forms: outline and wall, frog with its branches and grooves, bars."""

from __future__ import annotations

import math
from collections.abc import Sequence

from recordgen.pictures.shapes import CLOSE, LINE, Point, Shape, curve, line

# A line of so many points is smooth as it is.
MANY = 40
# Aside from the frog's middle to a corner, and back from its apex to its base, in shares; one side, from the front.
# Common practice, no source: only apex and corners are traced.
BRANCH = ((0.16, 0.08), (0.27, 0.28), (0.5, 0.56), (0.8, 0.87), (1.0, 1.0), (0.82, 1.08), (0.5, 1.0), (0.2, 0.88))
NOTCH = (0.0, 0.78)
CENTRAL_GROOVE = ((0.0, 0.42), (0.1, 0.54), (0.13, 0.66), (0.0, 0.8))
SIDE_GROOVE = (
    (0.28, 0.27),
    (0.51, 0.55),
    (0.81, 0.86),
    (1.02, 1.0),
    (1.17, 0.97),
    (0.92, 0.72),
    (0.64, 0.44),
    (0.32, 0.2),
)
# How wide a bar is at the heel and at its tip, as shares of its length.
BAR_HEEL, BAR_TIP = 0.13, 0.04


def smoothly(points: Sequence[Point]) -> Shape:
    """The line through points, smooth where they are few."""
    return curve(points) if 2 < len(points) < MANY else line(points)


def band(outer: Sequence[Point], inner: Sequence[Point]) -> Shape:
    """The band between two lines that run the same way, closed at its ends."""
    there, back = smoothly(outer), smoothly(list(reversed(inner)))
    return Shape((*there.points, *back.points, there.points[0]), (*there.codes, LINE, *back.codes[1:], CLOSE))


def frog(corners: Sequence[Point]) -> Shape:
    """The frog with its two branches. corners: one corner of its base, its apex, the other corner."""
    one, other = (_place(corners, BRANCH, side) for side in (0, 2))
    return curve([corners[1], *one, *_place(corners, (NOTCH,), 0), *reversed(other)], closed=True)


def central_groove(corners: Sequence[Point]) -> Shape:
    """The groove between the branches of the frog."""
    one, other = (_place(corners, CENTRAL_GROOVE, side) for side in (0, 2))
    return curve([*one, *reversed(other[1:-1])], closed=True)


def side_groove(corners: Sequence[Point], side: int) -> Shape:
    """The groove beside the frog; side: 0 or 2, the place of its corner among the corners."""
    return curve(_place(corners, SIDE_GROOVE, side), closed=True)


def bar(ends: Sequence[Point]) -> Shape:
    """A bar that narrows from its first point, at the heel, to its last."""
    (x, y), (end_x, end_y) = ends[0], ends[-1]
    length = max(math.dist(ends[0], ends[-1]), 1e-6)
    across = (-(end_y - y) / length, (end_x - x) / length)
    wide, narrow = BAR_HEEL * length / 2, BAR_TIP * length / 2
    sides = [(sign * wide, sign * narrow) for sign in (1, -1)]
    (a, b), (c, d) = (
        [(x + at * across[0], y + at * across[1]), (end_x + tip * across[0], end_y + tip * across[1])]
        for at, tip in sides
    )
    return line([a, b, d, c], closed=True)


def axis(corners: Sequence[Point], held: Sequence[Point], beyond: float) -> tuple[Point, Point]:
    """The frog's axis from behind all points held to before them, by so much. corners: as of `frog`."""
    base, apex = _base(corners), corners[1]
    length = max(math.dist(base, apex), 1e-6)
    run = ((apex[0] - base[0]) / length, (apex[1] - base[1]) / length)
    along = [(x - base[0]) * run[0] + (y - base[1]) * run[1] for x, y in held]
    ends = (min(along) - beyond, max(along) + beyond)
    (a, b), (c, d) = ((base[0] + at * run[0], base[1] + at * run[1]) for at in ends)
    return (a, b), (c, d)


def _base(corners: Sequence[Point]) -> Point:
    (x, y), (end_x, end_y) = corners[0], corners[2]
    return (x + end_x) / 2, (y + end_y) / 2


def _place(corners: Sequence[Point], shares: Sequence[Point], side: int) -> list[Point]:
    base, apex, corner = _base(corners), corners[1], corners[side]
    return [
        (
            apex[0] + back * (base[0] - apex[0]) + aside * (corner[0] - base[0]),
            apex[1] + back * (base[1] - apex[1]) + aside * (corner[1] - base[1]),
        )
        for aside, back in shares
    ]

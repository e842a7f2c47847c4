"""A wall seen from the side or the front: its direction, and the straight edge laid along it."""

from __future__ import annotations

import numpy as np

from recordgen.hoof.outline_frame import Floats

# The steps in a third of a wall, and all of them as shares of its length.
THIRD = 10
SHARES = np.linspace(0, 1, 3 * THIRD + 1)


def direction(line: Floats) -> Floats:
    """The direction of the straight line nearest to some points, (..., 2), a unit vector from the first to the last.

    line: (..., n, 2), two points or more. Distances count across the line, not along one of the axes, so that turning
    the picture turns the line with it. Source: orthogonal least squares, the first principal axis of the points.
    """
    away = line - line.mean(axis=-2, keepdims=True)
    xx, yy = (away[..., axis] ** 2 for axis in (0, 1))
    turn = 0.5 * np.arctan2(2 * (away[..., 0] * away[..., 1]).sum(axis=-1), (xx - yy).sum(axis=-1))
    found = np.stack([np.cos(turn), np.sin(turn)], axis=-1)
    along = ((line[..., -1, :] - line[..., 0, :]) * found).sum(axis=-1)
    return np.asarray(found * np.where(along < 0, -1.0, 1.0)[..., None])


def upper_and_lower(wall: Floats) -> tuple[Floats, Floats]:
    """The directions of a wall's upper third and of the rest below, each (..., 2).

    wall: (..., n, 2), from the hairline down, two points or more. The plain line through them is cut at a third of its
    length, each draw at its own, and both parts are taken at even steps: how densely a part was picked does not count,
    and a pick near the cut does not jump from one part to the other.
    """
    taken = _at(wall, SHARES)
    return direction(taken[..., : THIRD + 1, :]), direction(taken[..., THIRD:, :])


def gap(wall: Floats, outward: Floats) -> Floats:
    """The greatest gap under a straight edge laid along a wall, (...), in the unit of the points.

    wall: (..., n, 2), from the hairline down. outward: (..., 2), any vector that points away from the hoof.
    Above 0: the wall is hollow (concave), the edge touches at the hairline and at the ground, and the gap lies between.
    Below 0: it bulges (convex), the edge touches at its middle alone, and the gap is the larger of those at its ends,
    with the edge laid in the direction of the wall's ends. 0: it touches everywhere.
    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, ch. II E and "Crooked hoof".
    """
    chord = wall[..., -1, :] - wall[..., 0, :]
    across = np.stack([-chord[..., 1], chord[..., 0]], axis=-1) / np.hypot(chord[..., 0], chord[..., 1])[..., None]
    side = np.sign((across * outward).sum(axis=-1))[..., None]
    out = ((wall - wall[..., :1, :]) * (across * side)[..., None, :]).sum(axis=-1)
    hollow, bulge = -out.min(axis=-1), out.max(axis=-1)
    return np.asarray(np.where(hollow >= bulge, hollow, -bulge))


def turned_from(one: Floats, other: Floats) -> Floats:
    """The angle from one direction to another, degrees, counterclockwise above 0, (...). Both: (..., 2)."""
    cross = one[..., 0] * other[..., 1] - one[..., 1] * other[..., 0]
    return np.asarray(np.degrees(np.arctan2(cross, (one * other).sum(axis=-1))))


def _at(line: Floats, shares: Floats) -> Floats:
    """The points of a plain line at shares of its length, (..., k, 2); line: (..., n, 2), shares: (k,), 0 to 1."""
    run = np.diff(line, axis=-2)
    length = np.hypot(run[..., 0], run[..., 1])
    way = np.cumsum(length, axis=-1)
    goal = shares * way[..., -1:]
    stretch = (way[..., None, :-1] <= goal[..., None]).sum(axis=-1)
    start, step = (np.take_along_axis(found, stretch[..., None], axis=-2) for found in (line, run))
    along, done = (np.take_along_axis(found, stretch, axis=-1) for found in (length, way))
    beyond = 1 - (done - goal) / np.where(along > 0, along, 1)
    return np.asarray(start + beyond[..., None] * step)

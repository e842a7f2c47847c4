"""A foot from the side or the front made upright, and its walls: direction, and the straight edge laid along."""

from __future__ import annotations

import numpy as np
from numpy.typing import NDArray

from recordgen.hoof.tracing.foot_frame import Floats, Points


def level(points: Points) -> dict[str, Floats] | None:
    """The landmarks with the ground at y = 0 and up above it, (..., n, 2); None where the ground was not traced.

    points: (..., n, 2), mm, y up, as the picture was held. Which of the ground's two points comes first does not
    matter: up is where the other landmarks lie. So the roll of the camera drops out.
    """
    ground = points.get("ground")
    if ground is None:
        return None
    along = ground[..., 1, :] - ground[..., 0, :]
    along = along / np.hypot(along[..., 0], along[..., 1])[..., None]
    up = np.stack([-along[..., 1], along[..., 0]], axis=-1)
    found = {name: _seen(spots - ground[..., :1, :], along, up) for name, spots in points.items()}
    others = [spots[..., 1] for name, spots in found.items() if name != "ground"]
    if not others:
        return found
    below = np.concatenate(others, axis=-1).mean(axis=-1) < 0
    # Half a turn, not a mirror: what faced left faces right.
    return {name: np.where(below[..., None, None], -spots, spots) for name, spots in found.items()}


def _seen(away: Floats, along: Floats, up: Floats) -> Floats:
    return np.stack([(away * axis[..., None, :]).sum(axis=-1) for axis in (along, up)], axis=-1)


def mirrored(points: Points, flip: NDArray[np.bool_]) -> dict[str, Floats]:
    """Landmarks seen from the other side where `flip`, (...), is true."""
    sign = np.stack([np.where(flip, -1.0, 1.0), np.ones(np.shape(flip))], axis=-1)[..., None, :]
    return {name: spots * sign for name, spots in points.items()}


def rise(direction: Floats) -> Floats:
    """The angle of a direction that points up, against the ground to the right, degrees from 0 to 180, (...)."""
    return np.asarray(np.degrees(np.arctan2(direction[..., 1], direction[..., 0])))


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

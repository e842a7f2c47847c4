"""A wall seen from the side or the front: its direction, and the straight edge laid along it."""

from __future__ import annotations

import numpy as np

from recordgen.hoof.outline_frame import Floats


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


def upper_and_lower(wall: Floats) -> tuple[Floats, Floats] | None:
    """The directions of a wall's upper third and of the rest below; None where two points stand in neither.

    wall: (..., n, 2), from the hairline down. Thirds go by the length of the plain line; a point at the bound, and the
    nearest one above it, belong to both parts.
    """
    first = wall.reshape(-1, *wall.shape[-2:])[0]
    way = np.concatenate([[0.0], np.cumsum(np.hypot(*np.diff(first, axis=0).T))])
    upper = int(np.searchsorted(way, way[-1] / 3, side="right"))
    upper = max(upper, 2)
    if len(first) - (upper - 1) < 2:
        return None
    return direction(wall[..., :upper, :]), direction(wall[..., upper - 1 :, :])


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

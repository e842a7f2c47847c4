"""Distances to a line: along rays from a middle, at angles from the toe; and the shortest one from spots."""

from __future__ import annotations

import numpy as np

from recordgen.hoof.outline_frame import Floats


def directions(angle_deg: Floats) -> Floats:
    """Unit vectors at angles from the toe, lateral positive, in the foot's frame; (k,) degrees gives (k, 2)."""
    turn = np.radians(angle_deg)
    return np.stack([np.sin(turn), np.cos(turn)], axis=-1)


def reach(line: Floats, middle: Floats, angle_deg: Floats, closed: bool) -> Floats:
    """How far a line stands from a middle at each angle, (..., k), mm; not a number where no part of it stands there.

    line: (..., n, 2) and middle: (..., 2), mm, in the foot's frame; angle_deg: (k,). closed: whether the straight line
    between the ends belongs to it. Where a ray meets the line more than once, the farthest counts.
    """
    away = line - middle[..., None, :]
    rays = directions(angle_deg)
    ahead = _on_rays(away, rays)
    beside = _on_rays(away, rays[:, ::-1] * [1, -1])
    if not closed:
        return _farthest(ahead[..., :-1], ahead[..., 1:], beside[..., :-1], beside[..., 1:])
    return _farthest(ahead, np.roll(ahead, -1, axis=-1), beside, np.roll(beside, -1, axis=-1))


def nearest(spots: Floats, line: Floats) -> Floats:
    """The shortest distance from each spot to a line, (..., k), mm; the line's ends are not joined.

    spots: (..., k, 2). line: (..., n, 2).
    """
    start, run = line[..., None, :-1, :], np.diff(line, axis=-2)[..., None, :, :]
    away_x, away_y = (spots[..., :, None, axis] - start[..., axis] for axis in (0, 1))
    run_x, run_y = run[..., 0], run[..., 1]
    length = run_x**2 + run_y**2
    share = np.clip((away_x * run_x + away_y * run_y) / np.where(length > 0, length, 1), 0, 1)
    squares = (away_x - share * run_x) ** 2 + (away_y - share * run_y) ** 2
    return np.asarray(np.sqrt(squares.min(axis=-1)))


def _on_rays(away: Floats, rays: Floats) -> Floats:
    """Each point along each ray, (..., k, n)."""
    return np.asarray(rays @ np.swapaxes(away, -1, -2))


def _farthest(ahead: Floats, next_ahead: Floats, beside: Floats, next_beside: Floats) -> Floats:
    """Where each ray is met: by edges whose ends stand on both sides of it, in front of the middle."""
    met = np.nonzero((beside > 0) != (next_beside > 0))
    at, then, by, next_by = (part[met] for part in (ahead, next_ahead, beside, next_beside))
    far = (at * next_by - then * by) / (next_by - by)
    found = np.full(beside.shape[:-1], -np.inf)
    np.maximum.at(found, met[:-1], far)
    return np.where(found >= 0, found, np.nan)

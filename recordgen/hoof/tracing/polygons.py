"""Outlines as polygons in the foot's frame: area, shares, centroid, widest chord, and distances along rays."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats

# The widest place is the middle of the stretch that is this near to the widest: one point alone hangs on the picks.
# Judgement.
NEARLY_WIDEST = 0.98


class Widest(NamedTuple):
    """The widest chord across the axis and the place of it along the axis, both (...), mm."""

    width: Floats
    place: Floats


def area(outline: Floats) -> Floats:
    """The area inside an outline that the line between its ends closes, mm²; outline: (..., n, 2), in either order."""
    return np.asarray(np.abs(_crosses(outline, np.roll(outline, -1, axis=-2)).sum(axis=-1)) / 2)


def lateral_area(outline: Floats) -> Floats:
    """The part of the area at x above 0, mm²; outline: (..., n, 2), in the foot's frame.

    Each edge is cut at the axis. What lies along the axis adds nothing to the sum, as it runs through 0.
    """
    start, end = outline, np.roll(outline, -1, axis=-2)
    cut = _at_axis(start, end)
    first = np.where(start[..., :1] < 0, cut, start)
    last = np.where(end[..., :1] < 0, cut, end)
    return np.asarray(np.abs(_crosses(first, last).sum(axis=-1)) / 2)


def medial_area(outline: Floats) -> Floats:
    """The part of the area at x below 0, mm²; outline: (..., n, 2), in the foot's frame."""
    return lateral_area(outline * [-1, 1])


def centroid(outline: Floats) -> Floats:
    """The centroid of the area inside an outline, (..., 2), mm; the mean of its picks where it has no area."""
    middle = outline.mean(axis=-2, keepdims=True)
    start = outline - middle
    end = np.roll(start, -1, axis=-2)
    crosses = _crosses(start, end)
    doubled = crosses.sum(axis=-1, keepdims=True)
    away = ((start + end) * crosses[..., None]).sum(axis=-2) / np.where(doubled == 0, np.inf, 3 * doubled)
    return np.asarray(middle[..., 0, :] + away)


def widest(outline: Floats) -> Widest:
    """The place where an outline is widest across the axis; outline: (..., n, 2), in the foot's frame.

    Between two picks the width changes evenly, so that the widest chord goes through a pick. The place is the middle
    of the stretch around it that is at least 98 % as wide.
    """
    levels = np.sort(outline[..., 1], axis=-1)
    widths = _widths(outline, levels)
    width = widths.max(axis=-1)
    toward_toe = _end_of_stretch(levels, widths)
    toward_heel = _end_of_stretch(levels[..., ::-1], widths[..., ::-1])
    return Widest(width, (toward_toe + toward_heel) / 2)


def _crosses(start: Floats, end: Floats) -> Floats:
    return np.asarray(start[..., 0] * end[..., 1] - start[..., 1] * end[..., 0])


def _at_axis(start: Floats, end: Floats) -> Floats:
    """The place where the line through each edge meets x = 0; of no use where it does not."""
    run = end[..., 0] - start[..., 0]
    share = -start[..., 0] / np.where(run == 0, 1, run)
    y = start[..., 1] + share * (end[..., 1] - start[..., 1])
    return np.stack([np.zeros_like(y), y], axis=-1)


def _widths(outline: Floats, levels: Floats) -> Floats:
    """From the most medial to the most lateral crossing at each level, (..., levels)."""
    start, end = outline[..., None, :, :], np.roll(outline, -1, axis=-2)[..., None, :, :]
    level, rise = levels[..., None], end[..., 1] - start[..., 1]
    share = (level - start[..., 1]) / np.where(rise == 0, 1, rise)
    x = start[..., 0] + share * (end[..., 0] - start[..., 0])
    crossed = (share >= 0) & (share <= 1) & ((rise != 0) | (share == 0))
    return np.asarray(np.where(crossed, x, -np.inf).max(axis=-1) - np.where(crossed, x, np.inf).min(axis=-1))


def _end_of_stretch(levels: Floats, widths: Floats) -> Floats:
    """The level where the width, followed from its peak in the order of the levels, is no longer nearly the widest."""
    last = widths.shape[-1] - 1
    enough = NEARLY_WIDEST * widths.max(axis=-1, keepdims=True)
    beyond = np.arange(last + 1) > widths.argmax(axis=-1)[..., None]
    fallen = beyond & (widths < enough)
    after = np.where(fallen.any(axis=-1), fallen.argmax(axis=-1), last)[..., None]
    before = np.maximum(after - 1, 0)
    wide, narrow = (np.take_along_axis(widths, at, axis=-1) for at in (before, after))
    drop = wide - narrow
    share = np.clip((wide - enough) / np.where(drop > 0, drop, 1), 0, 1)
    share = np.where(fallen.any(axis=-1, keepdims=True), share, 1)
    low, high = (np.take_along_axis(levels, at, axis=-1) for at in (before, after))
    return np.asarray((low + share * (high - low))[..., 0])


def directions(angle_deg: Floats) -> Floats:
    """Unit vectors at angles from the toe, lateral positive, in the foot's frame; (k,) degrees gives (k, 2)."""
    turn = np.radians(angle_deg)
    return np.stack([np.sin(turn), np.cos(turn)], axis=-1)


def reach(line: Floats, middle: Floats, angle_deg: Floats, closed: bool) -> Floats:
    """Tell how far a line stands from a middle at each angle, (..., k), mm; not a number where no part stands there.

    line: (..., n, 2) and middle: (..., 2), mm, in the foot's frame; angle_deg: (k,). closed: whether the straight line
    between the ends belongs to it. Where a ray meets the line more than once, the farthest counts.
    """
    away = line - middle[..., None, :]
    rays = directions(angle_deg)
    turn = _steadily_around(away, closed)
    if turn is not None:
        return _met_once(away, turn, rays, np.radians(angle_deg), closed)
    ahead = _on_rays(away, rays)
    beside = _on_rays(away, rays[:, ::-1] * [1, -1])
    if not closed:
        return _farthest(ahead[..., :-1], ahead[..., 1:], beside[..., :-1], beside[..., 1:])
    return _farthest(ahead, np.roll(ahead, -1, axis=-1), beside, np.roll(beside, -1, axis=-1))


def nearest(spots: Floats, line: Floats) -> Floats:
    """The shortest distance from each spot to a line, (..., k), mm; the line's ends are not joined.

    spots: (..., k, 2). line: (..., n, 2).
    """
    axes = np.broadcast_shapes(spots.shape[:-2], line.shape[:-2])
    each = (np.broadcast_to(one, axes + one.shape[-2:]).reshape(-1, *one.shape[-2:]) for one in (spots, line))
    return np.stack([_nearest(*pair) for pair in zip(*each, strict=True)]).reshape(*axes, -1)


def _nearest(spots: Floats, line: Floats) -> Floats:
    """The same of one line: one after another stays near at hand for the processor, twice as fast as all at once."""
    start, run = line[..., None, :-1, :], np.diff(line, axis=-2)[..., None, :, :]
    away_x, away_y = (spots[..., :, None, axis] - start[..., axis] for axis in (0, 1))
    run_x, run_y = run[..., 0], run[..., 1]
    length = run_x**2 + run_y**2
    share = np.clip((away_x * run_x + away_y * run_y) / np.where(length > 0, length, 1), 0, 1)
    squares = (away_x - share * run_x) ** 2 + (away_y - share * run_y) ** 2
    return np.asarray(np.sqrt(squares.min(axis=-1)))


def _steadily_around(away: Floats, closed: bool) -> Floats | None:
    """The angle of each point from the toe, (..., n), rad, where every line goes but one way round; else None.

    Such a line meets each ray at most once. closed: as in `reach`.
    """
    turn = np.unwrap(np.arctan2(away[..., 0], away[..., 1]), axis=-1)
    steps = np.diff(turn, axis=-1)
    around = np.abs(turn[..., -1] - turn[..., 0])
    steady = (np.all(steps > 0) or np.all(steps < 0)) and np.all(around < 2 * np.pi)
    return turn if steady and not (closed and np.any(around <= np.pi)) else None


def _met_once(away: Floats, turn: Floats, rays: Floats, angle: Floats, closed: bool) -> Floats:
    """Tell how far such lines stand at each ray, (..., k): each ray is met by the stretch in whose angles it lies."""
    if turn.flat[0] > turn.flat[1]:
        away, turn = away[..., ::-1, :], turn[..., ::-1]
    count, lines = turn.shape[-1], away.reshape(-1, *away.shape[-2:])
    from_first = (turn - turn[..., :1]).reshape(-1, count)
    places = ((angle - turn[..., :1]) % (2 * np.pi)).reshape(len(lines), -1)
    # One search for all lines: each a further turn and more away.
    apart = 7.0 * np.arange(len(lines))[:, None]
    found = np.searchsorted((from_first + apart).ravel(), (places + apart).ravel(), side="right").reshape(places.shape)
    start = found - 1 - count * np.arange(len(lines))[:, None]
    first, then = (np.take_along_axis(lines, at[..., None] % count, axis=-2) for at in (start, start + 1))
    across = _crosses(np.broadcast_to(rays, first.shape), then - first)
    far = _crosses(first, then) / np.where(across == 0, np.nan, across)
    return np.asarray(np.where(closed | (start < count - 1), far, np.nan).reshape(*turn.shape[:-1], -1))


def _on_rays(away: Floats, rays: Floats) -> Floats:
    """Each point along each ray, (..., k, n)."""
    return np.asarray(rays @ np.swapaxes(away, -1, -2))


def _farthest(ahead: Floats, next_ahead: Floats, beside: Floats, next_beside: Floats) -> Floats:
    """The place where each ray is met: by edges whose ends stand on both sides of it, in front of the middle."""
    met = np.nonzero((beside > 0) != (next_beside > 0))
    at, then, by, next_by = (part[met] for part in (ahead, next_ahead, beside, next_beside))
    far = (at * next_by - then * by) / (next_by - by)
    found = np.full(beside.shape[:-1], -np.inf)
    np.maximum.at(found, met[:-1], far)
    return np.where(found >= 0, found, np.nan)

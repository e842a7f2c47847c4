"""Closed outlines as polygons in the foot's frame: area, its share on each side, centroid, and where it is widest."""

from __future__ import annotations

from typing import NamedTuple

import numpy as np

from recordgen.hoof.outline_frame import Floats

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
    """Where an outline is widest across the axis; outline: (..., n, 2), in the foot's frame.

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
    """Where the line through each edge meets x = 0; of no use where it does not."""
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

"""The smooth line through a few points: a cubic spline whose steps follow the root of the distances between them.

The tracing screen draws the same line in `site_templates/trace/lines.js`; shared cases hold both together.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

# Fewest points of a line whose ends are told by their neighbours.
FEWEST = 4
# About so many straight stretches are drawn in place of a curve: at 3 mm a stretch a toe of 60 mm radius is cut by
# 0.02 mm. Derived from: the height of a chord's arc, length squared over 8 radii.
STRETCHES = 96
# Two taps on one spot count as this share of the usual step apart.
LEAST_STEP = 1e-3


def smooth(points: Floats) -> Floats:
    """The line through some points in order, as many close points, (..., m, 2), each of the given ones among them.

    points: (..., n, 2), 4 or more; leading axes are draws. Open at its ends, where the curve of the first two
    stretches, and of the last two, is one. Turned, enlarged or mirrored, the line does the same.
    Source: de Boor 2001, A Practical Guide to Splines, ch. IV, not-a-knot ends; Lee 1989, Computer-Aided Design
    21:363-370, centripetal steps; both from memory, not read. Raises ValueError for fewer points.
    """
    count = points.shape[-2]
    if count < FEWEST:
        raise ValueError(f"a smooth line needs {FEWEST} points")
    step = _steps(points)
    rise = np.diff(points, axis=-2) / step[..., None]
    slope: Floats = np.asarray(np.linalg.solve(_matrix(step), _right_side(step, rise)), dtype=np.float64)
    return _close_points(points, slope, step, stretches_each(count))


def stretches_each(count: int) -> int:
    """Tell how many straight stretches stand between two neighbours of so many points."""
    return max(2, math.ceil(STRETCHES / (count - 1)))


def _steps(points: Floats) -> Floats:
    """From each point to the next, (..., n - 1): the root of their distance."""
    away = np.diff(points, axis=-2)
    step = np.sqrt(np.hypot(away[..., 0], away[..., 1]))
    return np.asarray(np.maximum(step, LEAST_STEP * step.mean(axis=-1, keepdims=True)))


def _matrix(step: Floats) -> Floats:
    """Tell how much each slope counts in the equations for a curve without a jump in its bend, (..., n, n)."""
    count = step.shape[-1] + 1
    found = np.zeros((*step.shape[:-1], count, count))
    inside = np.arange(1, count - 1)
    found[..., inside, inside - 1] = step[..., 1:]
    found[..., inside, inside] = 2 * (step[..., :-1] + step[..., 1:])
    found[..., inside, inside + 1] = step[..., :-1]
    found[..., 0, 0], found[..., 0, 1] = step[..., 1], step[..., 0] + step[..., 1]
    found[..., -1, -1], found[..., -1, -2] = step[..., -2], step[..., -1] + step[..., -2]
    return found


def _right_side(step: Floats, rise: Floats) -> Floats:
    """The other side of these equations, (..., n, 2). rise: the slope of each straight stretch, (..., n - 1, 2)."""
    wide = step[..., None]
    inside = 3 * (wide[..., 1:, :] * rise[..., :-1, :] + wide[..., :-1, :] * rise[..., 1:, :])
    first = _at_end(wide[..., 0, :], wide[..., 1, :], rise[..., 0, :], rise[..., 1, :])
    last = _at_end(wide[..., -1, :], wide[..., -2, :], rise[..., -1, :], rise[..., -2, :])
    return np.concatenate([first[..., None, :], inside, last[..., None, :]], axis=-2)


def _at_end(own: Floats, inner: Floats, rise: Floats, inner_rise: Floats) -> Floats:
    both = own + inner
    return np.asarray(((own + 2 * both) * inner * rise + own**2 * inner_rise) / both)


def _close_points(points: Floats, slope: Floats, step: Floats, each: int) -> Floats:
    """Close points along the curve. Source: Hermite's form of a cubic between two points with slopes."""
    share = (np.arange(each) / each)[:, None]
    start, end = points[..., :-1, None, :], points[..., 1:, None, :]
    way = step[..., None, None]
    leaving, coming = slope[..., :-1, None, :] * way, slope[..., 1:, None, :] * way
    curve = (
        (1 + 2 * share) * (1 - share) ** 2 * start
        + share * (1 - share) ** 2 * leaving
        + share**2 * (3 - 2 * share) * end
        + share**2 * (share - 1) * coming
    )
    flat = curve.reshape(*points.shape[:-2], -1, 2)
    return np.concatenate([flat, points[..., -1:, :]], axis=-2)

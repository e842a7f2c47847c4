"""Tell how much better a step or a ramp explains a series of readings than no change at all.

The shapes a change may have are a step at any reading but the first, and a ramp that begins at any reading that two
more follow. Each is weighed by its likelihood ratio, averaged over sizes that are normal about zero, and the shapes
are averaged: the average tells more than the largest, since a change is seldom seen at one shape alone.
Source: averaged likelihood ratios are optimal on average over what they average, Andrews & Ploberger 1994,
Econometrica 62:1383-1414. From memory, not read.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]

# How large changes are expected to be: the SD of their size, in standard errors of the shape. Judgement: tried between
# 2.5 and 6 in simulated horses, the power hardly differs.
EXPECTED_SIZE = 4.0
# How far an estimate is drawn towards no change for it.
SHRINK = EXPECTED_SIZE**2 / (1 + EXPECTED_SIZE**2)
LEAST_LOG_RATIO = -0.5 * float(np.log1p(EXPECTED_SIZE**2))
# A shape of which the levels of the ways of measuring leave less than this share cannot be told from them.
_LEAST_SHARE = 1e-9


@dataclass(frozen=True, eq=False)
class Shapes:
    """The shapes that a change may have in a series of n readings, for one set of days, errors and ways.

    starts: of each shape, the index of the first reading after a step, or of the last before a ramp. ramp: whether it
    is a ramp. rises: (m, n), its course, by 1 in all for a step, by 1 a day for a ramp. contrasts: (m, n), what makes
    of n readings its size in standard errors. errors: (m,), the standard error of its size: the readings' unit for a
    step, the unit a day for a ramp. readings: how many readings could show a change; one for each further way is lost.
    """

    starts: NDArray[np.intp]
    ramp: NDArray[np.bool_]
    rises: Floats
    contrasts: Floats
    errors: Floats
    readings: int


def shapes_of(days: Sequence[float], sds: Sequence[float], ways: Sequence[str] = ()) -> Shapes:
    """The shapes for readings taken on these days, oldest first, with these standard deviations.

    ways: how each reading was taken. Each way has a level of its own, so that a step just where another way was taken
    up is no shape, and only what was read in one way is compared. Raises ValueError unless each has the same length.
    """
    if len(days) != len(sds) or (ways and len(ways) != len(days)):
        raise ValueError("each reading has one day, one error and one way")
    start = days[0] if days else 0
    return _shapes(tuple(day - start for day in days), tuple(sds), tuple(ways) or ("",) * len(days))


@lru_cache(maxsize=512)
def _shapes(days: tuple[float, ...], sds: tuple[float, ...], ways: tuple[str, ...]) -> Shapes:
    count = len(days)
    steps, ramps = list(range(1, count)), list(range(count - 2))
    time = np.array(days, dtype=float)
    rises = [(np.arange(count) >= at).astype(float) for at in steps] + [np.maximum(time - time[at], 0) for at in ramps]
    course = np.array(rises, dtype=float).reshape(-1, count)
    weight = 1 / np.array(sds, dtype=float)
    levels = np.array([[way == one for way in ways] for one in dict.fromkeys(ways)], dtype=float).reshape(-1, count)
    rest = _less_levels(course * weight, levels * weight)
    length = np.linalg.norm(rest, axis=1)
    told = length > _LEAST_SHARE * np.linalg.norm(course * weight, axis=1)
    return Shapes(
        np.array([*steps, *ramps], dtype=np.intp)[told],
        np.array([False] * len(steps) + [True] * len(ramps), dtype=bool)[told],
        course[told],
        rest[told] / length[told, None] * weight,
        1 / length[told],
        max(count - len(levels) + 1, 1),
    )


def levels_of(sds: Sequence[float]) -> Shapes:
    """The shapes of a difference from nothing that holds to the last reading: over all readings, or the last of them.

    sds: standard deviation of each reading, oldest first. Each shape is the weighed mean of the last readings.
    Raises ValueError without a reading.
    """
    if not sds:
        raise ValueError("there is no reading")
    rises = np.triu(np.ones((len(sds), len(sds))))
    weights = rises / np.array(sds, dtype=float) ** 2
    precision = weights.sum(axis=1)
    return Shapes(
        np.arange(len(sds)),
        np.zeros(len(sds), dtype=bool),
        rises,
        weights / np.sqrt(precision)[:, None],
        1 / np.sqrt(precision),
        max(len(sds), 2),
    )


def _less_levels(course: Floats, levels: Floats) -> Floats:
    """Courses, each less the part of it that the levels explain."""
    if not course.size:
        return course
    orthogonal, _ = np.linalg.qr(levels.T)
    return np.asarray(course - course @ orthogonal @ orthogonal.T)


def log_ratio(sizes: Floats) -> Floats:
    """The logarithm of the averaged likelihood ratio of change against none, (...); the more, the likelier a change.

    sizes: (..., m), of each shape its size in standard errors; with no shape nothing speaks for a change.
    """
    if not sizes.shape[-1]:
        return np.full(sizes.shape[:-1], LEAST_LOG_RATIO)
    logs = log_ratios(sizes)
    top = logs.max(axis=-1, keepdims=True)
    return np.asarray(top[..., 0] + np.log(np.exp(logs - top).mean(axis=-1)))


def log_ratios(sizes: Floats) -> Floats:
    """The same for each shape alone, (..., m)."""
    return np.asarray(0.5 * SHRINK * sizes**2 + LEAST_LOG_RATIO)

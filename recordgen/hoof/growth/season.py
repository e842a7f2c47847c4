"""A season in a horse's growth, claimed only where its own record holds one."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import lru_cache

import numpy as np
from numpy.typing import NDArray

from recordgen.hoof.growth.rate import Observation

YEAR_DAYS = 365.25
# From where the year's turning is counted; any first of January would do.
EPOCH = date(2000, 1, 1)
# Fewer cycles than about one every six weeks of a year cannot tell two coefficients and an error apart. Judgement.
LEAST_CYCLES = 8
# By how much the criterion must fall. Derived from: simulated horses without a season, of which 5 in 100 or fewer are
# then said to have one.
LEAST_GAIN = 2.0
# What a season that nobody knows may do to growth until the next visit, as an SD and a share of the rate. Derived from:
# simulated horses with 3 to 7 cycles whose growth swings by 15 %: 96 in 100 are then due within the window told; with
# 8 % it is 95, and 94 where some readings are far out (python -m tests.benchmarks).
UNKNOWN_SEASON = 0.09
# A swing of more would let growth nearly stand still in winter. Judgement.
MOST_SWING = 0.6


@dataclass(frozen=True)
class Season:
    """Growth through the year against its mean: swing (a share of it), and the day of the year it is slowest."""

    swing: float
    slowest: int

    def growing_days(self, start: date, end: date) -> float:
        """Days from start to end, each counted by how fast the wall grows then; over a whole year as many as days."""
        slow, _ = _harmonic(start, end, self.slowest)
        return (end - start).days - self.swing * slow

    def slowest_day(self, year: int) -> date:
        """The day on which growth is slowest in a year."""
        return date(year, 1, 1) + timedelta(days=self.slowest)


def growing_days(season: Season | None, start: date, end: date) -> float:
    """Days from start to end, as a season counts them; as the calendar does without one."""
    return season.growing_days(start, end) if season else (end - start).days


def season_of(spans: Sequence[tuple[date, date]], cycles: Sequence[Observation]) -> Season | None:
    """The season that cycles of growth show, or None: where they span no year, are fewer than eight, or do not hold it.

    spans: first and last day of each cycle, oldest first. One harmonic of the year against none, by the corrected
    information criterion of weighted least squares.
    Source: Burnham & Anderson, Model Selection and Multimodel Inference, 2nd ed., section 2.4. From memory, not read.
    """
    if len(cycles) < LEAST_CYCLES or (spans[-1][1] - spans[0][0]).days < YEAR_DAYS:
        return None
    weight = np.array([1 / math.sqrt(one.share_of_variance) for one in cycles])
    growth = np.array([one.growth_mm for one in cycles]) * weight
    turned = np.array([_harmonic(*span) for span in spans])
    days = np.array([one.days for one in cycles])
    columns = np.column_stack([days, turned]) * weight[:, None]
    plain, _ = _fit(columns[:, :1], growth)
    yearly, (mm_per_day, cosine, sine) = _fit(columns, growth)
    swing = math.hypot(cosine, sine) / mm_per_day if mm_per_day > 0 else math.inf
    if plain - yearly < LEAST_GAIN or swing > MOST_SWING:
        return None
    fastest = math.atan2(sine, cosine) / (2 * math.pi) * YEAR_DAYS
    return Season(swing, int((fastest + YEAR_DAYS / 2) % YEAR_DAYS))


@lru_cache(maxsize=4096)
def _harmonic(start: date, end: date, from_day: int = 0) -> tuple[float, float]:
    """The integrals of the year's cosine and sine over a cycle, in days; both begin on a day of the year, from 0."""
    turn = 2 * math.pi / YEAR_DAYS
    first, last = (turn * ((day - EPOCH).days - from_day) for day in (start, end))
    return (math.sin(last) - math.sin(first)) / turn, (math.cos(first) - math.cos(last)) / turn


def _fit(columns: NDArray[np.float64], growth: NDArray[np.float64]) -> tuple[float, NDArray[np.float64]]:
    """The corrected criterion of a fit, and its coefficients."""
    found = np.asarray(np.linalg.lstsq(columns, growth, rcond=None)[0], dtype=np.float64)
    count, parameters = len(growth), columns.shape[1] + 1
    misfit = float(np.sum((growth - columns @ found) ** 2))
    score = count * math.log(max(misfit, 1e-9) / count) + 2 * parameters
    return score + 2 * parameters * (parameters + 1) / (count - parameters - 1), found

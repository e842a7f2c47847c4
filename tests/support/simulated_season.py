"""Simulated horses whose growth swings through the year: does the due window hold the day that is truly due?"""

from __future__ import annotations

import math
from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date, timedelta

import numpy as np

from recordgen.hoof.summary import HorseSummary
from tests.support.horse_records import REFERENCE, summary, visit

FEET = ("left_fore", "right_fore", "left_hind", "right_hind")
YEAR = 365.25
FIRST = date(2024, 1, 1)
# Rates and allowance of the class of grown horses, whose weeks do not cut the window short in these horses.
GROWTH = REFERENCE.classes["adult"].growth


@dataclass(frozen=True)
class Yearly:
    """A horse's true growth. mm_per_day: the mean of the year; swing: a share of it; slowest: day of the year."""

    mm_per_day: float
    swing: float
    slowest: float

    def grown(self, start: float, end: float) -> float:
        """Growth from one day to another, mm; days since the first of January 2024."""
        turn = 2 * math.pi / YEAR
        waves = math.sin(turn * (end - self.slowest)) - math.sin(turn * (start - self.slowest))
        return self.mm_per_day * ((end - start) - self.swing / turn * waves)

    def day_grown(self, start: float, mm: float) -> float:
        """The day on which so much has grown since `start`."""
        days = np.arange(1, 400)
        return float(start + days[np.argmin([abs(self.grown(start, start + day) - mm) for day in days])])


@dataclass(frozen=True)
class Kind:
    """The way horses are seen. cycles: from and to; missing: share of readings not taken; tails: degrees of freedom."""

    swing: float = 0.15
    cycles: tuple[int, int] = (3, 7)
    missing: float = 0.2
    tails: float | None = None


@dataclass(frozen=True)
class Held:
    """Shares of horses whose window holds the true day and whose rate is held, and the window's mean days."""

    window: float
    rate: float
    days: float


def held(kind: Kind, horses: int, seed: int) -> Held:
    """Shares of such horses whose windows and rates hold."""
    rng = np.random.default_rng(seed)
    found = [one for one in (_one(kind, rng) for _ in range(horses)) if one]
    return Held(*(float(np.mean(column)) for column in zip(*found, strict=True)))


def _one(kind: Kind, rng: np.random.Generator) -> tuple[bool, bool, int] | None:
    """Window and rate held, and its days; None where the class's own weeks would cut the window off the true day."""
    true = Yearly(max(rng.normal(GROWTH.mm_per_day, 0.04), 0.15), kind.swing, rng.uniform(0, YEAR))
    days = np.cumsum([rng.integers(0, 365), *rng.integers(28, 71, rng.integers(kind.cycles[0], kind.cycles[1] + 1))])
    last = FIRST + timedelta(days=int(days[-1]))
    told = _summary(list(_visits(true, days, kind, rng)), last)
    assert told.due is not None
    allowed = 7 * 6 * GROWTH.mm_per_day
    best = true.day_grown(float(days[-1]), allowed)
    weeks = REFERENCE.classes["adult"].weeks
    if not 7 * weeks.at_least <= best - days[-1] <= 7 * weeks.at_most:
        return None
    window = [(bound - FIRST).days for bound in (told.due.earliest, told.due.latest)]
    rate = told.growth.together
    return window[0] <= best <= window[1], rate.low <= true.mm_per_day <= rate.high, window[1] - window[0]


def _summary(visits: list[dict[str, object]], today: date) -> HorseSummary:
    made = [visit(str(values.pop("date")), **values) for values in visits]
    return summary(*made, today=today)


def _visits(true: Yearly, days: np.ndarray, kind: Kind, rng: np.random.Generator) -> Iterator[dict[str, object]]:
    """Visits as they are typed: toe length before and after, to the millimetre, some not taken."""
    length = 80.0
    for count, day in enumerate(days):
        grown = true.grown(float(days[count - 1]), float(day)) if count else 12.0
        life = rng.normal(0, 1.0) if count else 0.0
        feet: dict[str, object] = {}
        for foot in FEET:
            before = round(length + grown + life + _error(kind, rng))
            after = round(length + _error(kind, rng))
            if rng.uniform() >= kind.missing or not count:
                feet[foot] = {"before": {"toe_length": before}, "after": {"toe_length": min(after, before)}}
        yield {"date": (FIRST + timedelta(days=int(day))).isoformat(), **feet}


def _error(kind: Kind, rng: np.random.Generator) -> float:
    return float(rng.standard_t(kind.tails)) if kind.tails else float(rng.normal())

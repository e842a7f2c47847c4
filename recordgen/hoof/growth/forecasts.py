"""Tell how a horse's record has fared against its own forecasts: what was said at a visit, and what came."""

from __future__ import annotations

import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date


@dataclass(frozen=True)
class Forecast:
    """One forecast and what came of it.

    made, about: the visit at which it was made, and the day it named. came: the day of the next visit. expected_mm:
    growth to be expected until that day, the mean of all feet. grown_mm: what had grown; None where not measured.
    """

    made: date
    about: date
    came: date
    expected_mm: float
    grown_mm: float | None

    @property
    def days_late(self) -> int:
        """Days from the day named to the day of the visit; below zero where it came earlier."""
        return (self.came - self.about).days

    @property
    def growth_error_mm(self) -> float | None:
        """Growth measured less growth expected, mm."""
        return None if self.grown_mm is None else self.grown_mm - self.expected_mm


@dataclass(frozen=True)
class PastForecasts:
    """Several forecasts together: mean absolute errors, in days and in mm; None where there is nothing to tell."""

    forecasts: tuple[Forecast, ...]

    @property
    def mean_days(self) -> float | None:
        """Mean days between the day named and the day of the visit."""
        return _mean([abs(one.days_late) for one in self.forecasts])

    @property
    def mean_mm(self) -> float | None:
        """Mean difference between growth expected and growth measured, mm."""
        return _mean([abs(one.growth_error_mm) for one in self.forecasts if one.growth_error_mm is not None])


def together(horses: Iterable[PastForecasts]) -> PastForecasts:
    """The forecasts of several horses as one."""
    return PastForecasts(tuple(one for past in horses for one in past.forecasts))


def _mean(values: Sequence[float]) -> float | None:
    return math.fsum(values) / len(values) if values else None

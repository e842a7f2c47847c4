"""Readings placed on short scales in per cent: how far a foot is from its aim, and how forecasts fared."""

from __future__ import annotations

import math
from collections.abc import Iterable
from dataclasses import dataclass

from recordgen.hoof.growth.forecasts import PastForecasts
from recordgen.hoof.measures.aims import AimAtFoot
from recordgen.hoof.practice.work import MonthOfWork
from recordgen.hoof.summary import HorseSummary
from recordgen.site.drawings.due_picture import Stretch

# Errors of growth are drawn up to so many mm to either side.
MOST_MM = 3.0
# Beside the larger of reading and aim a scale leaves so much room.
ROOM = 1.25


@dataclass(frozen=True)
class AimScale:
    """A scale from nothing up: where the aim is held, and where the reading stands, per cent."""

    held: Stretch
    at: float


@dataclass(frozen=True)
class ForecastRow:
    """A horse's forecasts: where growth came between 3 mm less and 3 mm more, oldest first; how many lie beyond."""

    horse: HorseSummary
    at: tuple[float, ...]
    beyond: int


@dataclass(frozen=True)
class MonthBar:
    """A month of work and its height, per cent of the fullest month's."""

    month: MonthOfWork
    height: float


def aim_scale(one: AimAtFoot) -> AimScale:
    """The scale of one aim at one foot; a difference stands by its size, to whichever side it is."""
    value, bound = abs(one.value), abs(one.value - one.away)
    most = ROOM * max(value, bound) or 1.0
    held = round(100 * bound / most, 2)
    band = Stretch(held, round(100 - held, 2)) if one.aim.over is not None else Stretch(0.0, held)
    return AimScale(band, round(100 * value / most, 2))


def forecast_rows(horses: Iterable[HorseSummary]) -> list[ForecastRow]:
    """A row for each horse of which growth was forecast and measured."""
    rows = (_forecast_row(horse, horse.past_forecasts) for horse in horses)
    return [row for row in rows if row.at or row.beyond]


def month_bars(months: Iterable[MonthOfWork]) -> list[MonthBar]:
    """The months with their heights."""
    known = list(months)
    most = max((one.visits for one in known), default=0) or 1
    return [MonthBar(one, round(100 * one.visits / most, 2)) for one in known]


def _forecast_row(horse: HorseSummary, past: PastForecasts) -> ForecastRow:
    errors = [one.growth_error_mm for one in past.forecasts if one.growth_error_mm is not None]
    near = [one for one in errors if math.fabs(one) <= MOST_MM]
    return ForecastRow(horse, tuple(round(50 + 50 * one / MOST_MM, 2) for one in near), len(errors) - len(near))

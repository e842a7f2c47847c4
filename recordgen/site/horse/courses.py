"""Toe lengths through the visits of the last year, and how long the toes are now, for the top of a horse's page."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta

from recordgen.hoof.growth.season import Season, growing_days
from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.naming import Naming
from recordgen.hoof.summary import HorseSummary
from recordgen.pictures.charts.forecast import ForecastCone
from recordgen.pictures.charts.limits import Scale, Span, shared_scale, shared_span, values_of
from recordgen.records.models.names import FEET, Foot
from recordgen.site.drawings.growth import forecasts

MEASURE = "toe_length"
# About a year shows every season once; what is older stands in the folded pictures and tables.
DAYS_SHOWN = 400
# A course of one visit would be a dot.
FEWEST_VISITS = 2


@dataclass(frozen=True)
class ToeNow:
    """The length of a toe after the latest visit that measured it, and how it has grown since.

    mm_per_day: None of a horse that has left or whose growth is not known.
    """

    last_mm: float
    last_day: date
    mm_per_day: float | None = None
    season: Season | None = None

    def by_mm(self, day: date) -> float | None:
        """The length that growth makes by a day; None where it is not known."""
        if self.mm_per_day is None:
            return None
        return self.last_mm + self.mm_per_day * growing_days(self.season, self.last_day, day)


@dataclass(frozen=True)
class Course:
    """The toe of one foot at the visits shown, how long it is, and the growth expected since; None where unknown."""

    readings: tuple[Reading, ...]
    now: ToeNow
    expected: ForecastCone | None


@dataclass(frozen=True)
class Courses:
    """The toes of a horse on one stretch of days and one scale. first: the first visit shown. present: has not left."""

    by_foot: Mapping[Foot, Course]
    span: Span
    scale: Scale
    first: date
    present: bool


def toe_courses(summary: HorseSummary, naming: Naming) -> Courses | None:
    """The courses of all feet whose toe was measured at two visits of the last year; None where there is none."""
    if summary.last_visit is None:
        return None
    since = summary.last_visit - timedelta(days=DAYS_SHOWN)
    shown = {foot: held for foot in FEET if len(held := _readings(summary, foot, since)) >= FEWEST_VISITS}
    if not shown:
        return None
    ahead = {foot: one for foot, one in forecasts(summary, naming).items() if foot in shown}
    until = max((one.end for one in ahead.values()), default=None)
    return Courses(
        {foot: _course(summary, foot, held, ahead.get(foot)) for foot, held in shown.items()},
        shared_span(shown, until=until),
        shared_scale(shown, more=[length for one in ahead.values() for length in one.reach]),
        min(one.day for held in shown.values() for one in held),
        summary.horse.left is None,
    )


def _readings(summary: HorseSummary, foot: Foot, since: date) -> tuple[Reading, ...]:
    found = summary.feet[foot].measures.get(MEASURE) if foot in summary.feet else None
    return tuple(one for one in found.readings if one.day >= since and values_of([one])) if found else ()


def _course(summary: HorseSummary, foot: Foot, readings: Sequence[Reading], expected: ForecastCone | None) -> Course:
    last, growth = readings[-1], summary.growth
    now = ToeNow(values_of([last])[-1], last.day)
    if expected:
        now = replace(now, mm_per_day=growth.feet[foot].net.mean, season=growth.season)
    return Course(tuple(readings), now, expected)

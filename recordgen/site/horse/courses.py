"""Toe lengths through the last visits and what is expected since, placed in per cent of a field.

The page stretches the field as wide as there is room; words and figures stand beside it at the size of its text.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.growth.rate import Rate
from recordgen.hoof.growth.season import growing_days
from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.names import FEET, Foot

MEASURE = "toe_length"
# About a year shows every season once; what is older stands in the folded pictures and tables.
DAYS_SHOWN = 400
# A course of one visit would be a dot.
FEWEST_VISITS = 2
# How far the expected growth is drawn past today and past the latest day of the window.
DAYS_AHEAD = 28
ROUND_MM = 10.0

# x from the left and y from the top of a field, both in per cent.
Spot = tuple[float, float]


@dataclass(frozen=True)
class Expected:
    """The expected growth of a toe since the last trim: the middle course, its band, and the length by today in mm."""

    middle: tuple[Spot, ...]
    band: tuple[Spot, ...]
    by_today_mm: float


@dataclass(frozen=True)
class Course:
    """The toe of one foot. line: its corners, before and after each trim; after: the lengths after each trim.

    last_mm: the latest of these, on last_day. expected: None of a horse that has left or whose growth is not known.
    """

    line: tuple[Spot, ...]
    after: tuple[Spot, ...]
    last_mm: float
    last_day: date
    expected: Expected | None


@dataclass(frozen=True)
class Courses:
    """The toes of a horse on one scale: from low_mm at the bottom to high_mm, from the first day to the last.

    today: where today stands in per cent from the left; None where it lies outside.
    """

    by_foot: Mapping[Foot, Course]
    first: date
    last: date
    low_mm: float
    high_mm: float
    today: float | None


@dataclass(frozen=True)
class _Growing:
    """The growth of one toe after its last trim, and on which days it is drawn."""

    start: date
    start_mm: float
    rate: Rate
    days: tuple[date, ...]
    lengths: tuple[tuple[float, float, float], ...]
    by_today_mm: float


def toe_courses(summary: HorseSummary) -> Courses | None:
    """The courses of all feet whose toe was measured at two visits of the last year; None where there is none."""
    if summary.last_visit is None:
        return None
    since = summary.last_visit - timedelta(days=DAYS_SHOWN)
    shown = {foot: held for foot in FEET if len(held := _readings(summary, foot, since)) >= FEWEST_VISITS}
    if not shown:
        return None
    growing = {foot: one for foot in shown if (one := _growing(summary, foot, shown[foot][-1]))}
    days = [one.day for held in shown.values() for one in held] + [day for one in growing.values() for day in one.days]
    values = [
        value for held in shown.values() for one in held for value in (one.before, one.after) if value is not None
    ]
    values += [value for one in growing.values() for lengths in one.lengths for value in lengths]
    field = _Field(min(days), max(days), ROUND_MM * (min(values) // ROUND_MM), ROUND_MM * -(-max(values) // ROUND_MM))
    by_foot = {foot: _course(held, growing.get(foot), field) for foot, held in shown.items()}
    inside = not summary.horse.left and field.first <= summary.as_of <= field.last
    return Courses(by_foot, field.first, field.last, field.low, field.high, field.x(summary.as_of) if inside else None)


@dataclass(frozen=True)
class _Field:
    first: date
    last: date
    low: float
    high: float

    def x(self, day: date) -> float:
        return round(100 * (day - self.first).days / max((self.last - self.first).days, 1), 2)

    def at(self, day: date, value: float) -> Spot:
        reach = max(self.high - self.low, 1)
        return self.x(day), round(100 * (self.high - value) / reach, 2)


def _readings(summary: HorseSummary, foot: Foot, since: date) -> Sequence[Reading]:
    found = summary.feet[foot].measures.get(MEASURE) if foot in summary.feet else None
    return [one for one in found.readings if one.day >= since] if found else []


def _course(readings: Sequence[Reading], growing: _Growing | None, field: _Field) -> Course:
    corners = tuple(field.at(one.day, value) for one in readings for value in _values(one))
    after = tuple(field.at(one.day, one.after) for one in readings if one.after is not None)
    last = readings[-1]
    return Course(corners, after, [*_values(last)][-1], last.day, _expected(growing, field) if growing else None)


def _values(reading: Reading) -> Iterator[float]:
    """The values of a visit in the order in which they were taken."""
    yield from (value for value in (reading.before, reading.after) if value is not None)


def _growing(summary: HorseSummary, foot: Foot, last: Reading) -> _Growing | None:
    growth = summary.growth.feet[foot]
    if summary.due is None or last.after is None or not growth.net.cycles or last.day != summary.last_visit:
        return None
    end = max(summary.as_of, summary.due.latest) + timedelta(days=DAYS_AHEAD)
    days = (last.day, summary.as_of, end)
    season = summary.growth.season

    def lengths(day: date) -> tuple[float, float, float]:
        grown = growing_days(season, last.day, day)
        start = last.after or 0.0
        return start + growth.net.low * grown, start + growth.net.mean * grown, start + growth.net.high * grown

    told = tuple(lengths(day) for day in days)
    return _Growing(last.day, last.after, growth.net, days, told, told[1][1])


def _expected(growing: _Growing, field: _Field) -> Expected:
    placed = [
        [field.at(day, lengths[which]) for day, lengths in zip(growing.days, growing.lengths, strict=True)]
        for which in range(3)
    ]
    low, middle, high = placed
    return Expected(tuple(middle), (*high, *reversed(low)), growing.by_today_mm)

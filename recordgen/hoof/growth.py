"""Growth of the wall, cycle by cycle. In an unshod foot what is seen is net growth: growth less wear."""

from __future__ import annotations

import itertools
import statistics
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.series import Reading
from recordgen.records.names import Foot
from recordgen.records.visit import Visit

# Two readings of a rule, each out by about a millimetre, make a difference that is out by about this much.
# Derived from: reading error of +/- 1 mm, growth-and-welfare figures, 1.4 mm is 11 % of 13 mm over 42 days.
DIFFERENCE_SD_MM = 2**0.5


@dataclass(frozen=True)
class Cycle:
    """From one trim to the next visit."""

    start: date
    end: date
    growth_mm: float

    @property
    def days(self) -> int:
        """Days from the trim to the next visit."""
        return (self.end - self.start).days

    @property
    def mm_per_day(self) -> float:
        """Net growth, mm a day."""
        return rate_mm_per_day(0, self.growth_mm, self.days)


@dataclass(frozen=True)
class Growth:
    """Net growth of one foot: the median of its cycles with their range, mm a day."""

    mm_per_day: float
    low: float
    high: float
    cycles: int


def rate_mm_per_day(start_mm: float, end_mm: float, days: int) -> float:
    """Growth between two readings, in mm a day. Raises ValueError unless days is above zero.

    Source: groove method, Kolstrung, Ciesielczuk & Silmanowicz 2012, Med. Weter. 68(7):426-429.
    """
    if days <= 0:
        raise ValueError("growth needs two readings on two days in order")
    return (end_mm - start_mm) / days


def wear_mm(growth_mm: float, length_then_mm: float, length_now_mm: float, trimmed_mm: float = 0) -> float:
    """Wear between two visits, mm: growth, less the change in length, less what was trimmed between.

    Derived from: definition of growth by a mark, hairline to mark on two days (growth-and-welfare figures, 1.6).
    """
    return growth_mm - (length_now_mm - length_then_mm) - trimmed_mm


def growth_readings(foot: Foot, visits: Sequence[Visit]) -> tuple[Reading, ...]:
    """Toe length of a foot at every visit that bears on its growth, mm, oldest first.

    A visit that trimmed but does not tell the length has neither reading, so that no cycle runs across it. A visit
    that did not trim leaves the foot as it found it; where it does not tell the length it is passed over.
    """
    readings = []
    for visit in visits:
        found = visit.feet.get(foot)
        before = found.before.toe_length if found and found.before else None
        after = found.after.toe_length if found and found.after else None
        if visit.trimmed:
            readings.append(Reading(visit.date, before, after))
        elif before is not None:
            readings.append(Reading(visit.date, before, before))
    return tuple(readings)


def cycles(readings: Sequence[Reading]) -> tuple[Cycle, ...]:
    """The cycles of a foot, oldest first: from the length after one trim to the length before the next.

    readings: toe length in mm, oldest first. A cycle without both ends is left out, and so is one in which the wall
    became shorter by more than two readings can be wrong (a wrong foot, swapped days, a slip of the pen).
    """
    pairs = itertools.pairwise(readings)
    found = (_cycle(then, now) for then, now in pairs if now.day > then.day)
    return tuple(cycle for cycle in found if cycle and cycle.growth_mm > -1.96 * DIFFERENCE_SD_MM)


def _cycle(then: Reading, now: Reading) -> Cycle | None:
    if then.after is None or now.before is None:
        return None
    return Cycle(then.day, now.day, now.before - then.after)


def growth(readings: Sequence[Reading]) -> Growth | None:
    """Net growth of a foot, or None without a whole cycle.

    readings: toe length in mm, oldest first.
    """
    rates = [cycle.mm_per_day for cycle in cycles(readings)]
    if not rates:
        return None
    return Growth(statistics.median(rates), min(rates), max(rates), len(rates))

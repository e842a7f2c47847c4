"""From a horse's visits to cycles of growth: by toe length, by a mark, what wore off, and what is left out.

In an unshod foot toe length shows net growth: growth less wear. A mark on the wall shows growth itself.
"""

from __future__ import annotations

import itertools
import statistics
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from recordgen.hoof.growth.rate import SPREAD_IN_READINGS, USUAL_DAYS, Observation, Prior
from recordgen.hoof.measures.readings import Reading
from recordgen.records.models.foot import FootVisit, Mark
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit

Doubt = Literal["too fast", "too slow", "too long"]

# Below this a cycle's growth is hardly more than the error of its two readings. Derived from: two readings of +/- 1 mm
# are out by 1.4 mm, 20 % of 7 mm in 28 days.
SHORT_DAYS = 28
# A cycle is named rather than used where it lies this many spreads from what the others tell. A trade's rule of thumb
# of four standard deviations; a slip of a centimetre lies beyond it. Common practice, no source.
DOUBTED_FROM = 4
# With fewer cycles than this there are no others to be told by; what is usual for the class stands in for them.
FEW = 3
# Two readings of a mark, each out by a millimetre: a mark that went up by no more stands where it stood.
MARK_ERROR_MM = 2


@dataclass(frozen=True)
class Cycle:
    """From one trim to the next visit: growth in mm. boots: whether boots or shoes were worn between."""

    start: date
    end: date
    growth_mm: float
    boots: bool = False

    @property
    def days(self) -> int:
        """Days from the trim to the next visit."""
        return (self.end - self.start).days

    @property
    def mm_per_day(self) -> float:
        """Growth, mm a day."""
        return rate_mm_per_day(0, self.growth_mm, self.days)

    @property
    def short(self) -> bool:
        """Tell whether it is so short that the error of reading is a large part of it."""
        return self.days < SHORT_DAYS


@dataclass(frozen=True)
class DoubtedCycle:
    """A cycle that is not used, and why."""

    cycle: Cycle
    why: Doubt


@dataclass(frozen=True)
class Wear:
    """Wear between two visits at which the same mark was seen, mm."""

    start: date
    end: date
    growth_mm: float
    wear_mm: float


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


def toe_lengths(foot: Foot, visits: Sequence[Visit]) -> tuple[Reading, ...]:
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


def net_cycles(foot: Foot, visits: Sequence[Visit]) -> tuple[Cycle, ...]:
    """The cycles of a foot, oldest first: from the length after one trim to the length before the next.

    visits: oldest first. A cycle without both ends is left out.
    """
    booted = _days_with_boots(visits)
    return tuple(
        Cycle(then.day, now.day, now.before - then.after, now.day in booted)
        for then, now in itertools.pairwise(toe_lengths(foot, visits))
        if then.after is not None and now.before is not None and now.day > then.day
    )


def mark_cycles(foot: Foot, visits: Sequence[Visit]) -> tuple[Cycle, ...]:
    """True growth of a foot by its growth marks: how far each came down from one sighting to the next, mm.

    A mark that stands higher than before is a new one, and begins anew.
    """
    booted = _days_with_boots(visits)
    seen = [(visit.date, mark) for visit in visits for mark in _growth_marks(visit.feet.get(foot))]
    found = []
    for zone in dict.fromkeys(mark.zone for _, mark in seen):
        places = [(day, mark.below_hairline) for day, mark in seen if mark.zone == zone]
        for (start, above), (end, below) in itertools.pairwise(places):
            if end > start and below - above >= -MARK_ERROR_MM:
                found.append(Cycle(start, end, below - above, end in booted))
    return tuple(sorted(found, key=lambda cycle: (cycle.end, cycle.start, cycle.growth_mm)))


def wear(foot: Foot, visits: Sequence[Visit]) -> tuple[Wear, ...]:
    """Wear between visits at which both a mark and the toe's length were read, mm; not where boots were worn.

    A difference of four readings, so that a single one may lie below zero by chance.
    """
    net = {(cycle.start, cycle.end): cycle for cycle in net_cycles(foot, visits)}
    pairs = ((grown, net.get((grown.start, grown.end))) for grown in mark_cycles(foot, visits))
    return tuple(
        Wear(grown.start, grown.end, grown.growth_mm, wear_mm(grown.growth_mm, 0, length.growth_mm))
        for grown, length in pairs
        if length and not grown.boots
    )


def split_doubted(
    cycles: Sequence[Cycle], prior: Prior, longest_days: int
) -> tuple[tuple[Cycle, ...], tuple[DoubtedCycle, ...]]:
    """The cycles that an estimate may rest on, and those that are named instead, both oldest first.

    A wrong foot, swapped days or a slip of the pen show as growth far from that of the other cycles; over more days
    than `longest_days` somebody else may have trimmed.
    """
    doubted = [DoubtedCycle(cycle, "too long") for cycle in cycles if cycle.days > longest_days]
    left = [cycle for cycle in cycles if cycle.days <= longest_days]
    middle, spread_mm, between = _usual(left, prior)
    for cycle in left:
        off = cycle.growth_mm - middle * cycle.days
        spread = (spread_mm**2 * as_observation(cycle).share_of_variance + (between * cycle.days) ** 2) ** 0.5
        if abs(off) > DOUBTED_FROM * spread:
            doubted.append(DoubtedCycle(cycle, "too fast" if off > 0 else "too slow"))
    refused = {id(one.cycle) for one in doubted}
    used = tuple(cycle for cycle in left if id(cycle) not in refused)
    return used, tuple(sorted(doubted, key=lambda one: one.cycle.end))


def as_observation(cycle: Cycle, days: float | None = None, readings: int = 1) -> Observation:
    """A cycle as an observation. days: growing days where a season counts them otherwise than the calendar."""
    return Observation(cycle.days if days is None else days, cycle.growth_mm, readings)


def _usual(cycles: Sequence[Cycle], prior: Prior) -> tuple[float, float, float]:
    """Rate in mm a day, spread of a six weeks' cycle in mm, and what a rate itself may be out by, mm a day."""
    if len(cycles) < FEW:
        return prior.mm_per_day, SPREAD_IN_READINGS, prior.sd
    middle = statistics.median(cycle.mm_per_day for cycle in cycles)
    off = [abs(cycle.mm_per_day - middle) * USUAL_DAYS for cycle in cycles]
    # 1.4826: from the median absolute deviation to the standard deviation of a normal distribution.
    return middle, max(SPREAD_IN_READINGS, 1.4826 * statistics.median(off)), 0


def _growth_marks(found: FootVisit | None) -> Iterator[Mark]:
    yield from (mark for mark in (found.marks if found else ()) if mark.kind == "growth mark")


def _days_with_boots(visits: Sequence[Visit]) -> set[date]:
    """The days of visits that tell of boots or shoes since the visit before."""
    return {visit.date for visit in visits if visit.keeping and visit.keeping.boots}

"""Growth of one horse: each foot's rate, all feet together with a season where there is one, and feet growing apart."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from recordgen.hoof.growth.cycles import (
    Cycle,
    DoubtedCycle,
    Wear,
    as_observation,
    mark_cycles,
    net_cycles,
    split_doubted,
    wear,
)
from recordgen.hoof.growth.rate import Observation, Prior, Rate, rate, usual_spread
from recordgen.hoof.growth.season import UNKNOWN_SEASON, Season, growing_days, season_of
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.reference import ClassWords
from recordgen.records.models.visit import Visit

# How much one foot of a horse differs from its others before anything is known, mm a day. Assumed.
BETWEEN_FEET = Prior(0, 0.03)
# Wear before anything is known of it: hardly more than that it is there. Assumed, wide enough to leave it to the data.
WEAR_PRIOR = Prior(0.1, 0.3)
# Told only where so many cycles agree, at this probability: four feet are looked at, so one in a hundred each.
APART_CYCLES, APART_TAIL = 3, 0.005


@dataclass(frozen=True)
class FootGrowth:
    """Growth of one foot.

    net: from toe length, growth less wear. cycles: those it rests on; left_out: those it does not. true: by a growth
    mark; wear: what wore off meanwhile. Both None without a mark.
    """

    net: Rate
    cycles: tuple[Cycle, ...]
    left_out: tuple[DoubtedCycle, ...]
    true: Rate | None
    wear: Rate | None


@dataclass(frozen=True)
class Apart:
    """A foot that grows otherwise than the horse's other feet: by how much, mm a day, with its 99 % interval."""

    foot: Foot
    mm_per_day: float
    low: float
    high: float
    cycles: int


@dataclass(frozen=True)
class FootCycles:
    """The growth of a foot from its visits: by toe length, by a mark, and what wore off; oldest first."""

    net: tuple[Cycle, ...]
    marked: tuple[Cycle, ...]
    worn: tuple[Wear, ...]

    def until(self, day: date) -> FootCycles:
        """Knowledge of it on a day."""
        net = tuple(cycle for cycle in self.net if cycle.end <= day)
        marked = tuple(cycle for cycle in self.marked if cycle.end <= day)
        return FootCycles(net, marked, tuple(worn for worn in self.worn if worn.end <= day))


Cycles = Mapping[Foot, FootCycles]
# The first and the last day of a cycle.
Span = tuple[date, date]


def cycles_of(visits: Sequence[Visit]) -> Cycles:
    """The growth from a horse's visits of each foot that was ever looked at. visits: oldest first."""
    seen = [foot for foot in FEET if any(foot in visit.feet for visit in visits)]
    return {foot: FootCycles(net_cycles(foot, visits), mark_cycles(foot, visits), wear(foot, visits)) for foot in seen}


def grown_mm(cycles: Cycles, start: date, end: date) -> float | None:
    """Net growth from one visit to the next, the mean of the feet, mm; None where no foot was measured at both."""
    found = [cycle for foot in cycles.values() for cycle in foot.net if (cycle.start, cycle.end) == (start, end)]
    return _mean(found) if found else None


@dataclass(frozen=True)
class HorseGrowth:
    """Growth of a horse, each figure computed when it is first asked for.

    cycles: of each foot that was ever looked at. usual: what is usual for its class. longest_days: a longer cycle is
    not used. reading_sd_mm: standard deviation of one reading of toe length.
    """

    cycles: Cycles
    usual: Prior
    longest_days: int
    reading_sd_mm: float = 1.0

    @classmethod
    def of(cls, cycles: Cycles, group: ClassWords, reading_sd_mm: float = 1.0) -> HorseGrowth:
        """The growth of a horse of a class, whose growth is expected before there are cycles."""
        usual = Prior(group.growth.mm_per_day, group.growth.sd)
        return cls(cycles, usual, round(2 * 7 * group.weeks.at_most), reading_sd_mm)

    @cached_property
    def together(self) -> Rate:
        """Net growth of all feet: what they share in a cycle is one observation, not four."""
        return self._rate(_means(self._used, self.season))

    @cached_property
    def to_come(self) -> Rate:
        """Net growth of all feet until the next visit: where no season is known, one may make it faster or slower."""
        return self.together if self.season else self.together.less_sure(UNKNOWN_SEASON)

    @cached_property
    def season(self) -> Season | None:
        """The season in its growth, where its record holds one."""
        return season_of(list(_by_span(self._used)), _means(self._used, None))

    @cached_property
    def feet(self) -> dict[Foot, FootGrowth]:
        """The growth of each foot that was ever looked at."""
        return {foot: self._foot(foot, one) for foot, one in self.cycles.items()}

    @cached_property
    def apart(self) -> tuple[Apart, ...]:
        """The feet that grow otherwise than the others did in the same cycles."""
        spans = _by_span(self._used)
        found = [self._difference(foot, spans) for foot in self.cycles]
        return tuple(one for one in found if one)

    @property
    def short(self) -> Cycle | None:
        """The last cycle, where it was so short that the error of reading is a large part of it."""
        last = max((cycle for cycles in self._used.values() for cycle in cycles), key=_end, default=None)
        return last if last and last.short else None

    def expected_mm(self, start: date, end: date) -> float:
        """Net growth to be expected from one day to another, mm."""
        return self.together.mean * growing_days(self.season, start, end)

    def by_mark(self, foot: Foot) -> Rate:
        """Tell how fast marks come down the wall of a foot: true growth where it is known, else net growth."""
        return self.feet[foot].true or self.feet[foot].net

    @cached_property
    def _sound(self) -> dict[Foot, tuple[tuple[Cycle, ...], tuple[DoubtedCycle, ...]]]:
        return {foot: split_doubted(one.net, self.usual, self.longest_days) for foot, one in self.cycles.items()}

    @cached_property
    def _used(self) -> dict[Foot, tuple[Cycle, ...]]:
        return {foot: used for foot, (used, _) in self._sound.items()}

    def _rate(self, found: Sequence[Observation]) -> Rate:
        return rate(found, self.usual, usual_spread(self.reading_sd_mm))

    def _foot(self, foot: Foot, cycles: FootCycles) -> FootGrowth:
        net, left_out = self._sound[foot]
        marked, doubted = split_doubted(cycles.marked, self.usual, self.longest_days)
        lost = [Observation((one.end - one.start).days, one.wear_mm) for one in cycles.worn]
        return FootGrowth(
            self._rate([_observation(cycle, self.season) for cycle in net]),
            net,
            (*left_out, *doubted),
            self._rate([_observation(cycle, self.season) for cycle in marked]) if marked else None,
            rate(lost, WEAR_PRIOR, usual_spread(self.reading_sd_mm * math.sqrt(2))) if lost else None,
        )

    def _difference(self, foot: Foot, spans: Mapping[Span, Mapping[Foot, Cycle]]) -> Apart | None:
        pairs = [
            (cycles[foot], [cycle for other, cycle in cycles.items() if other != foot])
            for cycles in spans.values()
            if foot in cycles and len(cycles) > 1
        ]
        if len(pairs) < APART_CYCLES:
            return None
        more = [
            Observation(growing_days(self.season, own.start, own.end), own.growth_mm - _mean(others))
            for own, others in pairs
        ]
        known = rate(more, BETWEEN_FEET, usual_spread(self.reading_sd_mm))
        if APART_TAIL < known.below(0) < 1 - APART_TAIL:
            return None
        return Apart(foot, known.mean, known.quantile(APART_TAIL), known.quantile(1 - APART_TAIL), len(pairs))


def _observation(cycle: Cycle, season: Season | None, readings: int = 1) -> Observation:
    return as_observation(cycle, growing_days(season, cycle.start, cycle.end), readings)


def _by_span(feet: Mapping[Foot, tuple[Cycle, ...]]) -> dict[Span, dict[Foot, Cycle]]:
    """The cycles of all feet by their first and last day, oldest first."""
    spans: dict[Span, dict[Foot, Cycle]] = {}
    for foot, cycles in feet.items():
        for cycle in cycles:
            spans.setdefault((cycle.start, cycle.end), {})[foot] = cycle
    return dict(sorted(spans.items()))


def _means(feet: Mapping[Foot, tuple[Cycle, ...]], season: Season | None) -> list[Observation]:
    """The mean growth of the feet in each cycle: what they share is one observation, not four."""
    return [
        _observation(Cycle(start, end, _mean(list(cycles.values()))), season, len(cycles))
        for (start, end), cycles in _by_span(feet).items()
    ]


def _mean(cycles: Sequence[Cycle]) -> float:
    return math.fsum(cycle.growth_mm for cycle in cycles) / len(cycles)


def _end(cycle: Cycle) -> date:
    return cycle.end

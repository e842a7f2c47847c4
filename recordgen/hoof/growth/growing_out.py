"""Marks on the wall on their way down: when each reaches the ground, and whether it stands where it was expected."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from functools import partial

from recordgen.hoof.growth.cycles import MARK_ERROR_MM
from recordgen.hoof.growth.rate import Rate
from recordgen.records.models.foot import FootVisit, MarkKind, Measures
from recordgen.records.models.names import Foot, Zone
from recordgen.records.models.visit import Visit

# Height of the wall by zone against the toe's, from the months in which each is renewed at one rate all round: toe 11
# to 13, sides 6 to 8, quarters 3 to 5; the toe quarter is taken midway. Source: Lungwitz & Adams, A Text-Book of
# Horseshoeing, section F. His quarters are the back of the wall, here the heels.
OF_THE_TOE: dict[Zone, float] = {
    "medial heel": 4 / 12,
    "medial quarter": 7 / 12,
    "medial toe quarter": 9.5 / 12,
    "toe": 1,
    "lateral toe quarter": 9.5 / 12,
    "lateral quarter": 7 / 12,
    "lateral heel": 4 / 12,
}
# The zones of each side from the toe back.
SIDES: dict[tuple[Zone, Zone, Zone], str] = {
    ("medial toe quarter", "medial quarter", "medial heel"): "medial",
    ("lateral toe quarter", "lateral quarter", "lateral heel"): "lateral",
}
# A height by proportion is out by about a quarter: 3 to 5 months, 6 to 8. Derived from: the same ranges, as 95 %.
PROPORTION_SD = 0.125
# Two readings of a millimetre's error each.
READINGS_SD_MM = math.sqrt(2)
Z = 1.96
LATEST = timedelta(days=3 * 365)


@dataclass(frozen=True)
class Sighting:
    """A mark at one visit, mm below the hairline along the wall."""

    day: date
    below_hairline_mm: float


@dataclass(frozen=True)
class GrowingOut:
    """One mark on its way to the ground.

    sightings: oldest first. height_mm: of the wall at its zone; measured, or by proportion to the toe. earliest, about,
    latest: when it reaches the ground, 95 % interval; latest None where that is years away. expected_mm: where it was
    expected at the last sighting by what was known at the one before (low, middle, high); None without one.
    """

    foot: Foot
    zone: Zone
    kind: MarkKind
    sightings: tuple[Sighting, ...]
    height_mm: float
    height_measured: bool
    earliest: date
    about: date
    latest: date | None
    expected_mm: tuple[float, float, float] | None

    @property
    def last(self) -> Sighting:
        """The place where it was last seen."""
        return self.sightings[-1]

    @property
    def as_expected(self) -> bool | None:
        """Tell whether it stands where it was expected; None where nothing was."""
        if self.expected_mm is None:
            return None
        low, _, high = self.expected_mm
        return low <= self.last.below_hairline_mm <= high


def growing_out(
    foot: Foot, visits: Sequence[Visit], by_mark: Rate, known: Callable[[date], Rate], today: date
) -> tuple[GrowingOut, ...]:
    """The marks of a foot that have not reached the ground by `today`, in the order of the zones.

    visits: oldest first. by_mark: how fast marks come down. known: what was known of that on the day of a visit.
    Growth marks, which are made to be measured, are left out. A crack of known length that reaches the ground counts by
    its upper end.
    """
    seen = [(visit.date, visit.feet[foot]) for visit in visits if foot in visit.feet]
    heights = _heights([found for _, found in seen])
    found = []
    for kind, zone, sightings in _chains(seen, heights, by_mark):
        if zone not in heights:
            continue
        one = _forecast(foot, kind, zone, sightings, *heights[zone], by_mark)
        if one and (one.latest is None or one.latest >= today):
            found.append(_with_expected(one, known))
    return tuple(sorted(found, key=lambda one: (list(OF_THE_TOE).index(one.zone), -one.last.below_hairline_mm)))


def _forecast(
    foot: Foot,
    kind: MarkKind,
    zone: Zone,
    sightings: tuple[Sighting, ...],
    height_mm: float,
    measured: bool,
    by_mark: Rate,
) -> GrowingOut | None:
    last = sightings[-1]
    way = height_mm - last.below_hairline_mm
    spread = READINGS_SD_MM if measured else math.hypot(READINGS_SD_MM, PROPORTION_SD * height_mm)
    if by_mark.mean <= 0:
        return None
    first, late = days_to_cover(way, spread, by_mark)
    about = last.day + timedelta(days=round(max(way, 0) / by_mark.mean))
    earliest = min(about, last.day + timedelta(days=math.floor(first)))
    end = last.day + min(timedelta(days=math.ceil(late)), LATEST) if late < math.inf else None
    latest = None if end is None or end - last.day == LATEST else max(about, end)
    return GrowingOut(foot, zone, kind, sightings, height_mm, measured, earliest, about, latest, None)


def days_to_cover(way_mm: float, spread_mm: float, by_mark: Rate) -> tuple[float, float]:
    """The 95 % interval of the days in which growth covers a way, mm, that is known to within a standard deviation.

    Solves |rate x days - way| = 1.96 sd of that difference for the days; infinite where growth may be nought.
    Source: Fieller's theorem, Fieller 1954, J R Stat Soc B 16:175-185. From memory, not read.
    """
    way = max(way_mm, 0)
    square = by_mark.mean**2 - (Z * by_mark.sd) ** 2
    if square <= 0:
        return max(0, way - Z * spread_mm) / (by_mark.mean + Z * by_mark.sd), math.inf
    half = by_mark.mean * way
    root = math.sqrt(max(half**2 - square * (way**2 - (Z * spread_mm) ** 2), 0))
    return max(0, (half - root) / square), (half + root) / square


def _with_expected(one: GrowingOut, known: Callable[[date], Rate]) -> GrowingOut:
    """The same with where it was expected at the last sighting."""
    if len(one.sightings) < 2:
        return one
    then, now = one.sightings[-2:]
    rate = known(then.day)
    days = (now.day - then.day).days
    middle = then.below_hairline_mm + rate.mean * days
    reach = Z * math.hypot(READINGS_SD_MM, rate.sd * days)
    return replace(one, expected_mm=(middle - reach, middle, middle + reach))


def _chains(
    seen: Sequence[tuple[date, FootVisit]], heights: Mapping[Zone, tuple[float, bool]], by_mark: Rate
) -> Iterator[tuple[MarkKind, Zone, tuple[Sighting, ...]]]:
    """The marks with all sightings of each: a mark goes on where one of its kind stood nearest to what grew since."""
    open_ones: dict[tuple[MarkKind, Zone], list[list[Sighting]]] = {}
    for day, found in seen:
        for kind, zone, below in _marks(found, heights):
            chains = open_ones.setdefault((kind, zone), [])
            fitting = [chain for chain in chains if _may_be(chain[-1], day, below)]
            nearest = min(fitting, key=lambda chain: abs(_expected_at(chain[-1], day, by_mark) - below), default=None)
            if nearest is None:
                nearest = []
                chains.append(nearest)
            nearest.append(Sighting(day, below))
    for (kind, zone), chains in open_ones.items():
        # A crack that climbed again is still the same crack: where it is now is what counts.
        last = [max(chains, key=lambda chain: chain[-1].day)] if kind == "crack end" else chains
        yield from ((kind, zone, tuple(chain)) for chain in last)


def _may_be(last: Sighting, day: date, below: float) -> bool:
    return last.day < day and below >= last.below_hairline_mm - MARK_ERROR_MM


def _expected_at(last: Sighting, day: date, by_mark: Rate) -> float:
    return last.below_hairline_mm + by_mark.mean * (day - last.day).days


def _marks(found: FootVisit, heights: Mapping[Zone, tuple[float, bool]]) -> Iterator[tuple[MarkKind, Zone, float]]:
    for mark in found.marks:
        if mark.kind != "growth mark":
            yield mark.kind, mark.zone, mark.below_hairline
    told = {mark.zone for mark in found.marks if mark.kind == "crack end"}
    for zone, wall in (found.wall or {}).items():
        crack = wall.crack
        if crack and crack.length and crack.reaches == "ground" and zone not in told and zone in heights:
            yield "crack end", zone, max(heights[zone][0] - crack.length, 0)


def _heights(found: Sequence[FootVisit]) -> dict[Zone, tuple[float, bool]]:
    """Height of the wall by zone, mm along it, and whether it was measured: the last reading, after the trim first."""
    toe = _last(found, lambda measures: measures.toe_length)
    if toe is None:
        return {}
    heights: dict[Zone, tuple[float, bool]] = {zone: (share * toe, False) for zone, share in OF_THE_TOE.items()}
    heights["toe"] = (toe, True)
    for (toe_quarter, quarter, heel), side in SIDES.items():
        wall_mm = _last(found, partial(_wall, side=side))
        heel_mm = _last(found, partial(_heel, side=side))
        if wall_mm:
            heights[quarter] = (wall_mm, True)
            heights[toe_quarter] = ((wall_mm + toe) / 2, True)
        if heel_mm:
            heights[heel] = (heel_mm, True)
    return heights


def _wall(measures: Measures, side: str) -> float | None:
    return getattr(measures.wall_height, side, None)


def _heel(measures: Measures, side: str) -> float | None:
    """The heel along the wall: its height straight down, over the sine of its angle where that was read."""
    height: float | None = getattr(measures.heel_height, side, None)
    if height is None or measures.heel_angle is None:
        return height
    return height / math.sin(math.radians(measures.heel_angle))


def _last(found: Sequence[FootVisit], read: Callable[[Measures], float | None]) -> float | None:
    for one in reversed(found):
        for measures in (one.after, one.before):
            value = read(measures) if measures else None
            if value is not None:
                return value
    return None

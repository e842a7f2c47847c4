"""The wall of a foot rolled flat: from the inner heel round the toe to the outer heel, hairline above, ground below."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from itertools import pairwise

from recordgen.pictures.feet.sole_form import FORE, HIND, half_wall, zone_shares
from recordgen.pictures.shapes import Point, finite
from recordgen.records.models.names import ZONES, Foot, Zone, is_fore

# The height of the wall as shares of the toe's.
# Source: Lungwitz & Adams, A Text-Book of Horseshoeing, ch. I F and II E: toe to side wall about 3:2 in front hoofs,
# 4:3 in hind hoofs; Stachurska et al. 2008, Arch. Tierz. 51:531: toe to heel about 2:1 in both, after trimming.
# Derived from: the toe quarter by a hairline that falls evenly from toe to heel as seen from the side.
FORE_SHARES = {"toe": 1.0, "toe quarter": 0.91, "quarter": 2 / 3, "heel": 0.5}
HIND_SHARES = {"toe": 1.0, "toe quarter": 0.93, "quarter": 3 / 4, "heel": 0.5}

# Derived from: Josseck et al. 1995, Equine Vet J 27(3):175-182: 7 mm in 28 days, renewed in 11 months.
USUAL_TOE_MM = 84.0

# How much of the heel's height is left where the wall turns in to the bars.
HEEL_END = 0.9


class RolledWall:
    """A wall laid on a sheet: turns a share of the way round it and millimetres below the hairline into a point."""

    def __init__(
        self, foot: Foot, heights: Mapping[Zone, float], across: tuple[float, float], ground: float, unit: float
    ) -> None:
        """The wall between two places across the sheet, standing on the ground.

        heights: mm along the wall by zone (see `wall_heights`). unit: picture units for a millimetre of height.
        """
        self.foot = foot
        self.ground = ground
        self._across = across
        self._unit = unit
        ends = [(side, heights[zone] * HEEL_END) for side, zone in ((-1.0, ZONES[0]), (1.0, ZONES[-1]))]
        self._points = sorted([*((middle_of(zone), heights[zone]) for zone in ZONES), *ends])
        self._slopes = slopes_of(self._points)

    @property
    def unit_round(self) -> float:
        """Picture units for a millimetre of the way round the wall."""
        form = FORE if is_fore(self.foot) else HIND
        half = [half_wall(form, step / 20)[:2] for step in range(21)]
        return (self._across[1] - self._across[0]) / 2 / sum(math.dist(a, b) for a, b in pairwise(half))

    def x(self, share: float) -> float:
        """The place where a share of the way round stands, -1 (inner heel, at the left) to 1 (outer heel)."""
        left, right = self._across
        return left + (right - left) * (share + 1) / 2

    def share(self, x: float) -> float:
        """The share of the way round that stands at a place across the sheet."""
        left, right = self._across
        return 2 * (x - left) / (right - left) - 1

    def height(self, share: float) -> float:
        """Tell how high the wall is there, mm: smooth from zone to zone."""
        return smooth(self._points, self._slopes, min(max(share, self._points[0][0]), self._points[-1][0]))

    def at(self, share: float, below: float) -> Point:
        """The point so many mm below the hairline, on the ground at the lowest."""
        return self.x(share), min(self.ground - (self.height(share) - below) * self._unit, self.ground)

    def along(self, start: float, end: float, below: float, steps: int) -> list[Point]:
        """Points between two shares, both included, so many mm below the hairline."""
        return [self.at(start + (end - start) * step / steps, below) for step in range(steps + 1)]


def middle_of(zone: Zone) -> float:
    """The share of the way round at the middle of a zone."""
    return sum(zone_shares(zone)) / 2


def smooth(points: Sequence[Point], slopes: Sequence[float], x: float) -> float:
    """The value at x of the smooth curve through points in order of x that has these slopes at them."""
    index = next(i for i in range(len(points) - 1) if x <= points[i + 1][0])
    (start, low), (end, high) = points[index], points[index + 1]
    reach = end - start
    t = (x - start) / reach
    leaving, arriving = slopes[index] * reach, slopes[index + 1] * reach
    return (
        low
        + leaving * t
        + (3 * (high - low) - 2 * leaving - arriving) * t**2
        + (2 * (low - high) + leaving + arriving) * t**3
    )


def slopes_of(points: Sequence[Point]) -> list[float]:
    """Slopes at points in order of x with which no curve shoots over them: level at peaks and at both ends."""
    steps = [(d - b) / (c - a) for (a, b), (c, d) in pairwise(points)]
    inner = [0.0 if before * after <= 0 else 2 * before * after / (before + after) for before, after in pairwise(steps)]
    return [0.0, *inner, 0.0]


def wall_heights(foot: Foot, known: Mapping[Zone, float], deepest: Mapping[Zone, float]) -> dict[Zone, float]:
    """The height of every zone, mm: as measured, else in published proportion to what was measured of this foot.

    deepest: how far below the hairline something was seen in a zone; the wall reaches at least as far.
    Raises ValueError for a height that is no number or not above zero.
    """
    finite("wall height", *known.values())
    if any(height <= 0 for height in known.values()):
        raise ValueError("wall height not above zero")
    shares = _shares(foot)
    toe = known.get("toe") or _toe_from(known, shares)
    return {zone: max(known.get(zone, toe * shares[zone]), deepest.get(zone, 0.0)) for zone in ZONES}


def _shares(foot: Foot) -> dict[Zone, float]:
    by_name = FORE_SHARES if is_fore(foot) else HIND_SHARES
    return {zone: by_name[zone.removeprefix("medial ").removeprefix("lateral ")] for zone in ZONES}


def _toe_from(known: Mapping[Zone, float], shares: Mapping[Zone, float]) -> float:
    toes = [known[zone] / shares[zone] for zone in ZONES if zone in known]
    return sum(toes) / len(toes) if toes else USUAL_TOE_MM

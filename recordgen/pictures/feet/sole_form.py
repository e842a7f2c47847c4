"""The form of a foot seen from below, toe up: where each part and each place of it stands, in millimetres on paper."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from functools import lru_cache
from itertools import pairwise

from recordgen.pictures.shapes import Point
from recordgen.records.models.names import Foot, Zone, is_fore, is_left

HALF_STEPS = 60

# The share of the half wall, from the middle of the toe (0) to the heel (1), that each zone takes on its own side.
ZONE_SHARES: dict[str, tuple[float, float]] = {
    "toe quarter": (0.16, 0.42),
    "quarter": (0.42, 0.76),
    "heel": (0.76, 1.0),
}
TOE_SHARE = 0.16


@dataclass(frozen=True)
class Form:
    """The measures a foot is drawn from, mm: from its widest point the wall rounds to the toe and closes to the heels.

    widest: where the widest point lies, as a share of the length from the toe. roundness: 2 is an ellipse, less is
    more pointed. closing: how much of the width is lost at the heels.
    """

    half_width: float
    length: float
    widest: float
    roundness: float
    closing: float
    toe_wall: float
    heel_wall: float

    @property
    def half_heel(self) -> float:
        """Half the width at the heels, mm."""
        return self.half_width * (1 - self.closing)


# Source: Lungwitz & Adams, A Text-Book of Horseshoeing: a fore foot is round and its wall thins from the toe back; a
# hind foot is pointed, widest between the middle and the last third of the sole, its wall nearly even.
FORE = Form(62, 112, 0.55, 2.05, 0.2, toe_wall=10, heel_wall=6.5)
HIND = Form(57, 114, 0.62, 1.78, 0.15, toe_wall=8.5, heel_wall=7.5)

# Across (share of the half heel width) and back (share of the length), for one side.
# Source: barefoot schools as common practice: the frog is two thirds of the sole's length, half to six tenths of its
# own length wide; Lungwitz & Adams: the bars run straight back from the frog's front third.
FROG = (
    (0.0, 0.345),
    (0.06, 0.365),
    (0.12, 0.45),
    (0.2, 0.61),
    (0.31, 0.78),
    (0.45, 0.93),
    (0.48, 1.015),
    (0.36, 1.065),
)
FROG_HEEL = ((0.2, 1.045), (0.1, 0.965))
FROG_NOTCH = (0.0, 0.9)
CENTRAL_GROOVE = ((0.0, 0.65), (0.05, 0.75), (0.055, 0.83), (0.0, 0.905))
SIDE_GROOVE = ((0.18, 0.5), (0.24, 0.6), (0.37, 0.77), (0.52, 0.94))
SIDE_GROOVE_FLOOR = ((0.1, 0.44), (0.19, 0.495), (0.3, 0.6), (0.44, 0.77), (0.63, 0.955))
SIDE_GROOVE_END = (0.42, 0.985)
BAR_TIP = (0.24, 0.52)
BAR_AT_FROG = ((0.3, 0.6), (0.44, 0.77), (0.63, 0.955), (0.77, 1.03))
BUTTRESS = (0.93, 1.045)
BAR_AT_SOLE = ((0.8, 0.9), (0.66, 0.82), (0.5, 0.7), (0.33, 0.555))
BAR_LINE = ((0.27, 0.555), (0.46, 0.735), (0.68, 0.9))
BULB = ((0.94, 0.97), (0.99, 1.06), (0.86, 1.15), (0.55, 1.195), (0.24, 1.17), (0.08, 1.13), (0.0, 1.095))
# The cleft between the bulbs, in which the central groove runs out.
CLEFT = ((0.0, 0.88), (0.09, 0.96), (0.07, 1.04), (0.0, 1.1))


class SoleForm:
    """One foot laid on a sheet: turns places of the foot into points of the drawing."""

    def __init__(self, foot: Foot, middle: float, toe: float) -> None:
        """The foot with its midline at x = middle and the middle of its toe at y = toe."""
        self.form = FORE if is_fore(foot) else HIND
        # Seen from below with the toe up, a left foot's outer edge is on the right.
        self._outer = 1 if is_left(foot) else -1
        self._middle, self._toe = middle, toe

    def at(self, across: float, back: float) -> Point:
        """The point so many mm towards the outer side from the midline and so many mm back from the toe."""
        return self._middle + self._outer * across, self._toe + back

    def part(self, shares: Sequence[Point], side: int = 1) -> list[Point]:
        """The points of a part given in shares; side is 1 for the outer half, -1 for the inner one."""
        wide, long = self.form.half_heel, self.form.length
        return [self.at(side * across * wide, back * long) for across, back in shares]

    def wall(self, share: float, outward: float = 0) -> Point:
        """A point of the wall's outer edge, or mm outward of it; share runs from -1 (inner heel) to 1 (outer heel)."""
        across, back, normal_across, normal_back = half_wall(self.form, abs(share))
        side = -1 if share < 0 else 1
        return self.at(side * (across + outward * normal_across), back + outward * normal_back)

    def along(self, start: float, end: float, outward: float = 0, steps: int = 8) -> list[Point]:
        """Points along the wall between two shares, both included, mm outward of its outer edge."""
        return [self.wall(start + (end - start) * step / steps, outward) for step in range(steps + 1)]

    def thickness(self, share: float) -> float:
        """Tell how thick the wall is there, mm."""
        return self.form.toe_wall + (self.form.heel_wall - self.form.toe_wall) * abs(share)


def zone_shares(zone: Zone) -> tuple[float, float]:
    """The place where a zone starts and ends along the wall, -1 (inner heel) to 1 (outer heel)."""
    if zone == "toe":
        return -TOE_SHARE, TOE_SHARE
    side, _, name = zone.partition(" ")
    start, end = ZONE_SHARES[name]
    return (start, end) if side == "lateral" else (-end, -start)


@lru_cache(maxsize=4096)
def half_wall(form: Form, share: float) -> tuple[float, float, float, float]:
    """Across, back and the outward direction at a share of the half wall from toe (0) to heel (1)."""
    points = _half_points(form)
    place = min(max(share, 0.0), 1.0) * (len(points) - 1)
    index = min(int(place), len(points) - 2)
    (a, b), (c, d) = points[index], points[index + 1]
    rest = place - index
    ahead, behind = points[min(index + 2, len(points) - 1)], points[max(index - 1, 0)]
    along = (ahead[0] - behind[0], ahead[1] - behind[1]) if share > 0 else (1.0, 0.0)
    size = math.hypot(*along)
    return a + (c - a) * rest, b + (d - b) * rest, along[1] / size, -along[0] / size


@lru_cache(maxsize=8)
def _half_points(form: Form) -> list[Point]:
    """Points of one half of the wall, evenly spaced along it."""
    dense = [_half_point(form, step / 400) for step in range(401)]
    lengths = [0.0]
    for (a, b), (c, d) in pairwise(dense):
        lengths.append(lengths[-1] + math.hypot(c - a, d - b))
    wanted = [lengths[-1] * step / HALF_STEPS for step in range(HALF_STEPS + 1)]
    return [dense[min(range(401), key=lambda i: abs(lengths[i] - length))] for length in wanted]


def _half_point(form: Form, part: float) -> Point:
    front = form.widest * form.length
    if part < 0.6:
        turn = part / 0.6 * math.pi / 2
        power = 2 / form.roundness
        return form.half_width * math.sin(turn) ** power, front * (1 - math.cos(turn) ** power)
    rest = (part - 0.6) / 0.4
    return form.half_width * (1 - form.closing * rest**2), front + (form.length - front) * rest

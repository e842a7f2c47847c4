"""Feet from the side and from the front, told by what a trimmer measures: in mm and degrees, y up, the ground at 0."""

from __future__ import annotations

import math
from dataclasses import dataclass

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats

# Where a flaring wall bends: at the lower end of its upper third, which is what the figures compare.
BEND = 1 / 3
SIDES = ("medial", "lateral")


@dataclass(frozen=True)
class SideFoot:
    """A foot from the side, its toe to the right, its heel on the ground at x = 0.

    toe_length, toe_angle: of the straight line from the hairline to the tip of the toe. heel_height: from the hairline
    straight down. hairline: from that at the heel to that at the toe, along the ground. flare: degrees by which the
    front wall runs out flatter below its upper third. breakover: how far behind the tip of the toe the foot rolls over.
    """

    toe_length: float = 82.0
    toe_angle: float = 50.0
    heel_height: float = 36.0
    heel_angle: float = 43.0
    pastern_angle: float = 52.0
    hairline: float = 105.0
    flare: float = 0.0
    breakover: float = 9.0
    picks: int = 7

    @property
    def support(self) -> float:
        """From the tip of the toe to the heel on the ground, mm."""
        return self.hairline + self.toe_length * _cos(self.toe_angle) - self.heel_height / _tan(self.heel_angle)

    def points(self) -> dict[str, Floats]:
        """The landmarks of a side view, each (n, 2)."""
        tip, heel = np.array([self.support, 0.0]), np.zeros(2)
        top = tip + self.toe_length * upward(self.toe_angle)
        heel_top = self.heel_height / _sin(self.heel_angle) * upward(self.heel_angle)
        up = upward(self.pastern_angle)
        return {
            "ground": np.array([[-10.0, 0.0], [self.support + 12.0, 0.0]]),
            "dorsal_wall": flaring(top, tip, self.flare, self.picks),
            "heel_wall": np.linspace(heel_top, heel, 3),
            "pastern": np.array([top + up * 40, top + up * 8]),
            "coronet_toe": top[None],
            "coronet_heel": heel_top[None],
            "toe_tip": tip[None],
            "breakover": tip[None] - [self.breakover, 0],
            "heel_contact": heel[None],
        }


@dataclass(frozen=True)
class FrontFoot:
    """A foot from the front, its lateral side to the right, the middle of its hairline above x = 0.

    Each pair is medial, lateral. heights: from the hairline straight down. angles: of the straight line from the
    hairline to the ground, inside the hoof. flares: degrees by which a wall runs out flatter below its upper third.
    hairline: from side to side.
    """

    heights: tuple[float, float] = (60.0, 60.0)
    angles: tuple[float, float] = (78.0, 77.0)
    flares: tuple[float, float] = (0.0, 0.0)
    hairline: float = 98.0
    picks: int = 7

    def points(self) -> dict[str, Floats]:
        """The landmarks of a front view, each (n, 2)."""
        found: dict[str, Floats] = {}
        for name, sign, height, angle, flare in zip(
            SIDES, (-1, 1), self.heights, self.angles, self.flares, strict=True
        ):
            top = np.array([self.hairline / 2, height])
            edge = top + np.array([height / _tan(angle), -height])
            found[f"{name}_wall"] = flaring(top, edge, flare, self.picks) * [sign, 1]
            found[f"coronet_{name}"] = top[None] * [sign, 1]
        medial, lateral = (found[f"{name}_wall"][-1, 0] for name in SIDES)
        return {"ground": np.array([[medial - 8, 0.0], [lateral + 8, 0.0]])} | found


def flaring(top: Floats, edge: Floats, degrees: float, count: int) -> Floats:
    """A wall from the hairline to its lower edge, which lies to the right, (count, 2).

    degrees: by how much it runs out flatter below the upper third; below 0 it stands steeper there.
    """
    run = edge - top
    length = float(np.hypot(*run))
    inward = np.array([run[1], -run[0]]) / length
    along = np.linspace(0, 1, count)
    depth = length * BEND * (1 - BEND) * math.radians(degrees)
    share = np.where(along <= BEND, along / BEND, (1 - along) / (1 - BEND))
    return np.asarray(top + along[:, None] * run + (depth * share)[:, None] * inward)


def upward(angle: float) -> Floats:
    """The unit vector up a wall that stands at an angle to the ground behind, degrees, the toe to the right."""
    return np.array([-_cos(angle), _sin(angle)])


def _cos(angle: float) -> float:
    return math.cos(math.radians(angle))


def _sin(angle: float) -> float:
    return math.sin(math.radians(angle))


def _tan(angle: float) -> float:
    return math.tan(math.radians(angle))

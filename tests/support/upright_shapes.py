"""Feet seen from the side and from the front with known angles and lengths, in mm, y up, the ground at 0."""

from __future__ import annotations

import math

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats, Points


def side(toe: float = 50, heel: float = 42, pastern: float = 53, length: float = 85, bend_mm: float = 0) -> Points:
    """A foot whose toe points right, its tip at x = 0. Angles in degrees to the ground behind.

    bend_mm: how far the middle of the front wall lies inside of the straight line between its ends.
    """
    up = _upward(toe)
    top = up * length
    wall = np.linspace(top, (0, 0), 7) - _bow(7)[:, None] * bend_mm * np.array([-up[1], up[0]]) * -1
    ground_heel, heel_top = np.array([-95.0, 0.0]), np.array([-95.0, 0.0]) + _upward(heel) * 45
    return {
        "ground": np.array([[20.0, 0.0], [-140.0, 0.0]]),
        "dorsal_wall": wall,
        "heel_wall": np.linspace(heel_top, ground_heel, 3),
        "pastern": np.array([top + _upward(pastern) * 60, top + _upward(pastern) * 10]),
        "coronet_toe": top[None],
        "coronet_heel": heel_top[None],
        "toe_tip": np.zeros((1, 2)),
        "breakover": np.array([[-9.0, 0.0]]),
        "heel_contact": ground_heel[None],
    }


def front(medial: float = 78, lateral: float = 74, low_mm: float = 0) -> Points:
    """A foot seen from the front, its lateral side to the right; wall angles inside the hoof, degrees.

    low_mm: how much lower the hairline is on the medial side.
    """
    found: dict[str, Floats] = {"ground": np.array([[-90.0, 0.0], [90.0, 0.0]])}
    for name, sign, angle, height in (("medial", -1, medial, 60 - low_mm), ("lateral", 1, lateral, 60.0)):
        foot = np.array([sign * 65.0, 0.0])
        top = foot + np.array([-sign * height / math.tan(math.radians(angle)), height])
        found[f"{name}_wall"] = np.linspace(top, foot, 5)
        found[f"coronet_{name}"] = top[None]
    return found


def arc(sagitta: float, chord: float = 80, count: int = 41) -> Floats:
    """A front wall as part of a circle: ends on a line of 50 degrees, hollow where the sagitta is above 0."""
    up = _upward(50)
    inward = np.array([-up[1], up[0]])
    radius = (chord**2 / 4 + sagitta**2) / (2 * abs(sagitta))
    along = np.linspace(chord / 2, -chord / 2, count)
    off = np.sqrt(radius**2 - along**2) - (radius - abs(sagitta))
    return np.asarray(along[:, None] * up + np.sign(sagitta) * off[:, None] * inward)


def _upward(angle: float) -> Floats:
    return np.array([-math.cos(math.radians(angle)), math.sin(math.radians(angle))])


def _bow(count: int) -> Floats:
    return np.asarray(1 - np.linspace(-1, 1, count) ** 2)

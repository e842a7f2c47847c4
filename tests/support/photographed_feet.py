"""Feet from the side and the front as a camera sees them, of many kinds, with their true figures, marked by hands."""

from __future__ import annotations

from typing import Any

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.front import front_figures
from recordgen.hoof.tracing.side import side_figures
from recordgen.records.models.tracing import LANDMARKS, ONE, Tracing
from tests.support.photographed_soles import SIZE, Photographed, seen_by_camera
from tests.support.upright_shapes import front, side

SCALE = np.array([[-60.0, 5.0], [40.0, 5.0]])
MARKS: dict[str, dict[str, Any]] = {view: dict(marks) for view, marks in LANDMARKS.items()}


def photographed_foot(lot: np.random.Generator, view: str, tilt_deg: float, mm_below: float) -> Photographed:
    """A foot of some kind. tilt_deg: how far the camera is from square to it, in any direction.

    Angles of the walls and their spread: Judgement.
    """
    mm, figures = _any(lot, view)
    way, roll = lot.uniform(0, 2 * np.pi), lot.normal(0, np.radians(5))
    middle = np.concatenate(list(mm.values())).mean(axis=0)
    px = seen_by_camera({**mm, "scale": SCALE}, tilt_deg, way, roll, 450, mm_below, middle)
    return Photographed(px, {name: float(value) for name, value in figures.items()})


def _any(lot: np.random.Generator, view: str) -> tuple[Points, dict[str, Floats]]:
    if view == "side":
        mm = side(toe=float(lot.normal(51, 3)), heel=float(lot.normal(45, 4)), bend_mm=float(lot.normal(0, 2)))
        return mm, side_figures(mm)
    mm = front(low_mm=float(lot.normal(2, 2)))
    return mm, front_figures(mm)


def traced_by(seen: Photographed, lot: np.random.Generator, view: str, hand_px: float) -> Tracing:
    """The tracing that a hand makes of it. hand_px: SD of a tap, px."""
    px = {name: spots + lot.normal(0, hand_px, spots.shape) for name, spots in seen.px.items()}
    marks = {
        name: px[name][0].tolist() if takes == ONE else px[name].tolist()
        for name, takes in MARKS[view].items()
        if name in px
    }
    scale = {"from": px["scale"][0].tolist(), "to": px["scale"][1].tolist(), "length": 100}
    told = {
        "view": view,
        "moment": "after",
        "image": list(SIZE),
        "scale": scale,
        "hand_error": 1000 * hand_px / SIZE[0],
    }
    return Tracing.model_validate(told | marks)

"""Feet that were drawn and traced: shapes as the plain values of a tracing, picked as a hand would pick them."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from dataclasses import dataclass, replace
from datetime import date
from random import Random
from typing import Any

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.records.models.tracing import HAND_ERROR, LANDMARKS, ONE, TAKES, TracedMoment, TracedView
from tests.support.side_shapes import SIDES, FrontFoot, SideFoot
from tests.support.sole_shapes import Sole, other_foot

SCALE_MM = 100
# From the left and the lower edge of the picture to the scale, px.
SCALE_AT = (60, 56)


@dataclass(frozen=True)
class SoleFoot(Sole):
    """A sole that rolls over so many mm behind the toe."""

    breakover: float = 7.0

    def points(self) -> dict[str, Floats]:
        """The landmarks of a sole view, each (n, 2)."""
        return super().points() | {"breakover": np.array([[0, self.length - self.breakover]])}


Shape = SoleFoot | SideFoot | FrontFoot


@dataclass(frozen=True)
class Sheet:
    """The paper of a drawing: its width and height in px, and px in one mm."""

    width: int
    height: int
    px_per_mm: float


SHEETS: dict[TracedView, Sheet] = {
    "sole": Sheet(920, 960, 6),
    "side": Sheet(960, 720, 5),
    "front": Sheet(960, 640, 5),
}


@dataclass(frozen=True)
class Drawn:
    """A foot that was drawn at a visit, and traced on the drawing.

    kept: whether the drawing lies among the horse's photographs. times: how often the same drawing was traced.
    """

    day: date
    foot: str
    shape: Shape
    moment: TracedMoment = "before"
    kept: bool = False
    times: int = 1

    @property
    def view(self) -> TracedView:
        """From where the foot is seen."""
        return "sole" if isinstance(self.shape, Sole) else "side" if isinstance(self.shape, SideFoot) else "front"

    @property
    def file(self) -> str:
        """The name of the drawing."""
        return f"{self.day}-{self.foot.replace('_', '-')}-{self.view}-{self.moment}.jpg"


def drawn(day: str, foot: str, *, kept: bool = False, times: int = 1, **shapes: Shape) -> tuple[Drawn, ...]:
    """A foot drawn from one side at one visit, by moment: before, after, or both; day written as 2026-10-14."""
    moments: tuple[TracedMoment, ...] = ("before", "after")
    return tuple(
        Drawn(date.fromisoformat(day), foot, shapes[moment], moment, kept, times)
        for moment in moments
        if moment in shapes
    )


def as_typed(one: Drawn, found: Mapping[str, Any]) -> Drawn:
    """The same foot with the sizes that were typed of it at that moment. found: what the visit tells of the foot."""
    typed = found.get(one.moment, {})
    shape = one.shape
    if isinstance(shape, SideFoot):
        known = {name: typed[name] for name in ("toe_length", "toe_angle", "pastern_angle") if name in typed}
        heels = typed.get("heel_height")
        shape = replace(shape, **known, **({"heel_height": heels["lateral"]} if heels else {}))
    if isinstance(shape, FrontFoot) and "wall_height" in typed:
        medial, lateral = (typed["wall_height"][side] for side in SIDES)
        shape = replace(shape, heights=(medial, lateral))
    return replace(one, shape=shape)


def with_tracings(visit: Mapping[str, Any], feet: Iterable[Drawn], seed: str) -> dict[str, Any]:
    """A visit with the tracings of the feet that were drawn at it.

    Raises ValueError where a foot was drawn that the visit does not tell of.
    """
    told = {foot: dict(found) for foot, found in visit["feet"].items() if found is not None}
    for one in feet:
        if one.day != visit["date"]:
            continue
        if one.foot not in told or one.moment not in told[one.foot]:
            raise ValueError(f"{seed}: the {one.foot} was not measured {one.moment} the trim on {one.day}")
        values = [tracing(as_typed(one, told[one.foot]), f"{seed} {number}") for number in range(one.times)]
        told[one.foot]["tracings"] = [*told[one.foot].get("tracings", []), *values]
    return {**visit, "feet": {**visit["feet"], **told}}


def tracing(one: Drawn, seed: str) -> dict[str, Any]:
    """A tracing as the plain values of a record. The same seed gives the same picks, and another another hand's."""
    sheet, hand = SHEETS[one.view], Random(f"{seed} {one.file}")
    marks = on_sheet(one, one.shape.points())
    picked = {name: _picked(marks[name], sheet, hand) for name in LANDMARKS[one.view]}
    start, end = _picked(scale_ends(sheet), sheet, hand)
    return {
        "view": one.view,
        "moment": one.moment,
        "of": "drawing",
        **({"file": one.file} if one.kept else {}),
        "image": [sheet.width, sheet.height],
        "scale": {"from": start, "to": end, "length": SCALE_MM},
        **{name: spots[0] if TAKES[name] == ONE else spots for name, spots in picked.items()},
    }


def on_sheet(one: Drawn, points: Points) -> dict[str, Floats]:
    """Points of a foot as they lie on its drawing, in px, y down; the foot lies in the middle, above the scale.

    A left foot is seen from its outer side, so its toe points left; from below and from the front its inner side lies
    to the left.
    """
    sheet = SHEETS[one.view]
    mirrored = one.foot.startswith("right") != (one.view == "side")
    marks, placed = ((other_foot(found) if mirrored else found) for found in (one.shape.points(), points))
    every = np.concatenate(list(marks.values()))
    middle = (every.min(axis=0) + every.max(axis=0)) / 2
    centre = np.array([sheet.width / 2, (sheet.height - SCALE_AT[1]) / 2])
    px = sheet.px_per_mm * np.array([1, -1])
    return {name: (found - middle) * px + centre for name, found in placed.items()}


def scale_ends(sheet: Sheet) -> Floats:
    """Both ends of the scale on a drawing, (2, 2), px."""
    x, y = SCALE_AT[0], sheet.height - SCALE_AT[1]
    return np.array([[x, y], [x + SCALE_MM * sheet.px_per_mm, y]])


def _picked(spots: Floats, sheet: Sheet, hand: Random) -> list[list[float]]:
    sd = HAND_ERROR * sheet.width / 1000
    return [[round(float(value) + hand.gauss(0, sd), 1) for value in spot] for spot in spots]

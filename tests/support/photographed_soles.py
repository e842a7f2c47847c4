"""Soles as a camera sees them, tapped by hands: outlines of many kinds with known figures, tilted, at any turn."""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np

from recordgen.hoof.tracing.figures import plain_values
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.records.models.tracing import Tracing
from tests.support.sole_shapes import Bulge, Sole, turned
from tests.support.typed_tracings import SINGLE

SIZE = (1600, 1200)
PX_PER_MM = 6.0
CLOSE = 361


@dataclass(frozen=True)
class Photographed:
    """A sole on a picture: its landmarks with close lines in px, y down, and its true figures."""

    px: Points
    true: dict[str, float]


def any_sole(lot: np.random.Generator, odd: bool) -> Sole:
    """A sole of usual size and form. odd: it bulges somewhere and is lopsided. Sizes: Judgement."""
    bulges = (
        (Bulge(float(lot.uniform(-100, 100)), float(lot.uniform(2, 6)), float(lot.uniform(50, 80))),) if odd else ()
    )
    return Sole(
        length=float(lot.normal(128, 8)),
        width=float(lot.normal(126, 8)),
        widest=float(lot.normal(58, 3)),
        roundness=float(lot.normal(2.05, 0.1)),
        heels=float(lot.normal(80, 4)),
        wall=(float(lot.normal(11, 1)), float(lot.normal(8.8, 0.6)), float(lot.normal(7.8, 0.5))),
        bulges=bulges,
        lopsided=float(lot.uniform(0, 0.04)) if odd else 0.0,
        turn=float(lot.normal(0, 2)),
        picks=CLOSE,
    )


def made_uneven(points: Points, lot: np.random.Generator) -> dict[str, Floats]:
    """The same sole as no table knows it: its outline runs in waves, a piece of the wall is chipped, a side is rasped.

    points: mm, y up, close lines. Both lines wave, the wall by itself; no landmark of a single point moves.
    Sizes: Judgement.
    """
    found = dict(points)
    middle = np.array([0.0, 66.0])
    for name, size in (("white_line", 0.5), ("wall", 0.5)):
        away = found[name] - middle
        turn, far = np.arctan2(away[:, 0], away[:, 1]), np.hypot(away[:, 0], away[:, 1])
        waves = sum(
            lot.normal(0, size / 2) * np.cos(count * turn + lot.uniform(0, 2 * np.pi)) for count in range(6, 13)
        )
        chip = lot.uniform(0.5, 2.0) * np.exp(-0.5 * ((turn - lot.uniform(-1.6, 1.6)) / np.radians(6)) ** 2)
        found[name] = middle + away * ((far + waves - (chip if name == "wall" else 0)) / far)[:, None]
    across = turned(np.array([[0.0, 1.0]]), float(lot.uniform(-60, 60)))[0]
    reach = (found["wall"] - middle) @ across
    over = np.maximum(reach - (reach.max() - lot.uniform(0.5, 2.0)), 0)
    found["wall"] = found["wall"] - over[:, None] * across
    return found


def photographed(
    lot: np.random.Generator,
    odd: bool = False,
    tilt_deg: float = 0.0,
    mm_away: float = 450,
    uneven: bool = False,
    mm_below: float = 0.0,
) -> Photographed:
    """A sole of some kind, photographed from so far away by a camera so far from square to it, at any roll.

    uneven: in a way that no table knows. mm_below: how far the scale lies below the sole. Source: the pinhole camera.
    """
    sole = any_sole(lot, odd)
    mm = made_uneven(sole.points(), lot) if uneven else dict(sole.points())
    mm["scale"] = np.array([[-50.0, 8.0], [50.0, 8.0]])
    roll, way = lot.uniform(0, 2 * np.pi), lot.uniform(0, 2 * np.pi)
    px = seen_by_camera(mm, tilt_deg, way, roll, mm_away, mm_below, np.array([0.0, 64.0]))
    return Photographed(
        px, plain_values(Tracing.model_validate(_typed({name: _flat(found) for name, found in mm.items()})))
    )


def tapped_by(
    seen: Photographed,
    lot: np.random.Generator,
    wall: int,
    line: int,
    hand_px: float,
    model: int | None = None,
    outside_mm: float = 0.0,
) -> Tracing:
    """The tracing that a hand makes of it. hand_px: SD of a tap, px; taps lie unevenly along the lines.

    outside_mm: how far outside the true wall it always taps, and inside the true white line.
    """
    few = {name: _some(seen.px[name], count, lot) for name, count in (("wall", wall), ("white_line", line))}
    for name, way in (("wall", 1), ("white_line", -1)):
        away = few[name] - few["wall"].mean(axis=0)
        few[name] = few[name] + way * outside_mm * PX_PER_MM * away / np.hypot(away[:, 0], away[:, 1])[:, None]
    shaken = {name: found + lot.normal(0, hand_px, found.shape) for name, found in (dict(seen.px) | few).items()}
    told = {"drawn": "smooth", "model": model, "hand_error": 1000 * hand_px / SIZE[0]}
    return Tracing.model_validate(_typed(shaken) | told)


def _some(close: Floats, count: int, lot: np.random.Generator) -> Floats:
    """So many places along a close line, its ends among them, each up to a fifth of a step from even."""
    at = np.linspace(0, 1, count)
    at[1:-1] += lot.uniform(-0.2, 0.2, count - 2) / (count - 1)
    way = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(close, axis=0).T))])
    return np.stack([np.interp(at * way[-1], way, close[:, axis]) for axis in (0, 1)], axis=-1)


def _flat(mm: Floats) -> Floats:
    """Points in px of a picture taken square from above."""
    return np.asarray(mm * [PX_PER_MM, -PX_PER_MM] + [800, 1000])


def seen_by_camera(
    mm: Points, tilt_deg: float, way: float, roll: float, away: float, below: float, middle: Floats
) -> dict[str, Floats]:
    """Points of a plane in px of a picture through a pinhole so many mm away, the scale so many mm below the plane.

    way: towards where the plane falls away; roll: of the picture; both rad. middle: where the camera looks, mm.
    """
    found = {name: _seen(spots - middle, np.radians(tilt_deg), way, roll, away) for name, spots in mm.items()}
    centre = found["scale"].mean(axis=0)
    return found | {"scale": centre + (found["scale"] - centre) * away / (away + below)}


def _seen(spot: Floats, tilt: float, way: float, roll: float, away: float) -> Floats:
    along = np.array([np.cos(way), np.sin(way)])
    across = np.array([-along[1], along[0]])
    near, side = spot @ along, spot @ across
    depth = away + near * np.sin(tilt)
    plane = np.stack([near * np.cos(tilt), side], axis=-1) * (away / depth)[..., None]
    back = plane[..., :1] * along + plane[..., 1:] * across
    turn = np.array([[np.cos(roll), np.sin(roll)], [-np.sin(roll), np.cos(roll)]])
    return np.asarray((back @ turn) * [PX_PER_MM, -PX_PER_MM] + [800, 600])


def _typed(px: Points) -> dict[str, Any]:
    marks = {
        name: found[0].tolist() if name in SINGLE else found.tolist() for name, found in px.items() if name != "scale"
    }
    ends = px["scale"]
    scale = {"from": ends[0].tolist(), "to": ends[1].tolist(), "length": 100}
    return {"view": "sole", "moment": "after", "image": list(SIZE), "scale": scale} | marks

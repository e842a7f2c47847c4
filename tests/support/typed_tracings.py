"""A tracing as plain values, as it would be typed."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

import numpy as np

from tests.support.sole_shapes import FORE, Sole

PX_PER_MM = 6.0


SINGLE = {"frog_apex", "frog_medial", "frog_lateral", "buttress_medial", "buttress_lateral", "breakover"}


def typed(
    sole: Sole = FORE, shift: tuple[float, float] = (600, 900), without: str = "", **values: Any
) -> dict[str, Any]:
    """A tracing of a sole as somebody would write it, 6 px to a mm."""
    spots = {
        name: [[round(float(x) * PX_PER_MM + shift[0], 2), round(shift[1] - float(y) * PX_PER_MM, 2)] for x, y in found]
        for name, found in sole.points().items()
        if name != without
    }
    landmarks = {name: found[0] if name in SINGLE else found for name, found in spots.items()}
    scale = {"from": [100, 950], "to": [700, 950], "length": 100}
    usual = {"view": "sole", "moment": "after", "of": "drawing", "image": [1200, 1000], "scale": scale}
    return usual | landmarks | values


def tapped(
    sole: Sole = FORE, wall: int = 11, line: int = 9, hand_px: float = 0, seed: int = 0, **values: Any
) -> dict[str, Any]:
    """The same sole tapped at a few places, its lines drawn smooth; hand_px: SD of each tap, px along x and y."""
    careful = typed(sole)
    few = {"wall": typed(replace(sole, picks=wall))["wall"], "white_line": _spread(sole, line)}
    hand = np.random.default_rng(seed)
    shaken = {
        name: (np.array(spots) + hand.normal(0, hand_px, np.shape(spots))).tolist()
        for name, spots in (careful | few).items()
        if name in (*few, *SINGLE, "bar_medial", "bar_lateral")
    }
    ends = {end: [float(side + hand.normal(0, hand_px)) for side in careful["scale"][end]] for end in ("from", "to")}
    return careful | shaken | {"drawn": "smooth", "scale": careful["scale"] | ends} | values


def _spread(sole: Sole, count: int) -> list[list[float]]:
    """So many taps along the white line, at even distances."""
    close = np.array(typed(replace(sole, picks=361))["white_line"])
    way = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(close, axis=0).T))])
    at = np.linspace(0, way[-1], count)
    return np.stack([np.interp(at, way, close[:, axis]) for axis in (0, 1)], axis=-1).tolist()  # type: ignore[no-any-return]

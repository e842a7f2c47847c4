"""A tracing as plain values, as it would be typed."""

from __future__ import annotations

from typing import Any

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

"""Twenty tracings with their figures, which Python and the scripts of the tracing screen must both tell."""

from __future__ import annotations

import json
import math
from dataclasses import replace
from pathlib import Path
from typing import Any

from recordgen.hoof.tracing.figures import plain_values
from recordgen.records.models.tracing import RIDGE_PLACES, Tracing
from tests.support.sole_shapes import FORE, HIND, Bulge, Sole
from tests.support.tracing_pages import front, side
from tests.support.typed_tracings import tapped, typed

TABLE = Path(__file__).parent / "cases.json"
# Reckoned in Python alone, since the screen tells figures without their error.
PYTHON_ALONE = ("best_mirror_match_percent", "turn_deg", "flare_")
Values = dict[str, Any]


def made() -> dict[str, Values]:
    """The tracings by name, as they are typed."""
    odd = Sole(bulges=(Bulge(at=-75, height=5),), lopsided=0.05, turn=4)
    wide = replace(HIND, width=141.0, roundness=2.4)
    ridge = [round(6 * math.sin(place / 2), 1) for place in range(RIDGE_PLACES)]
    ground = {"scale": {"from": [100, 950], "to": [700, 950], "length": 100, "lay": "on ground"}}
    return {
        "hind": tapped(HIND, hand_px=3, seed=2),
        "nine to the ridge": tapped(wide, 9, 7, hand_px=3, seed=4, ridge=ridge),
        "thirteen": tapped(odd, 13, 11, hand_px=3, seed=5),
        "odd": tapped(odd, hand_px=3, seed=6),
        "poor hand": tapped(FORE, hand_px=12, seed=8),
        "mirrored": _moved(tapped(odd, hand_px=3, seed=9), mirrored=True),
        "turned": _moved(tapped(odd, hand_px=3, seed=10), degrees=140),
        "no scale": tapped(FORE, hand_px=3, seed=11, scale=None),
        "scale on the ground": tapped(HIND, hand_px=3, seed=12) | ground,
        "usual to the ridge": tapped(FORE, hand_px=3, seed=13, model=1, hand_error=2.5, ridge=ridge),
        "usual of few": tapped(HIND, 7, 5, hand_px=3, seed=14, model=1, hand_error=2.5),
        "usual and odd": _moved(tapped(odd, 13, 11, hand_px=3, seed=15, model=1, hand_error=2.5), degrees=75),
        "off the usual": tapped(Sole(bulges=(Bulge(at=-30, height=16, width=30),)), 13, 9, model=1, hand_error=1.0),
        "straight": typed(odd),
        "no frog": typed(HIND, without="frog_apex"),
        "side": side(),
        "hollow side": side(bend_mm=4, toe=47, heel=38),
        "turned side": _moved(side(bend_mm=-2), degrees=17),
        "front": front(),
        "front from the other side": _moved(front(), mirrored=True),
    }


def in_python_alone(figure: str) -> bool:
    """Whether the screen does not tell a figure."""
    return figure.startswith(PYTHON_ALONE)


def table() -> dict[str, Values]:
    """The cases as the table holds them: what is told of each, its landmarks and its figures."""
    return {name: _case(Tracing.model_validate(values)) for name, values in made().items()}


def _case(tracing: Tracing) -> Values:
    scale = tracing.scale.model_dump(by_alias=True) if tracing.scale else None
    landmarks = {name: [[round(side, 3) for side in spot] for spot in found] for name, found in tracing.named().items()}
    told: Values = {"view": tracing.view, "scale": scale, "drawn": tracing.drawn, "landmarks": landmarks}
    told |= {
        "ridge": tracing.ridge,
        "model": tracing.model,
        "hand_error": tracing.hand_error,
        "image": list(tracing.image),
    }
    return told | {"figures": {name: round(value, 4) for name, value in plain_values(typed_again(told)).items()}}


def _moved(values: Values, degrees: float = 0, mirrored: bool = False) -> Values:
    """The same picture turned about its middle, or seen in a mirror."""
    cos, sin = math.cos(math.radians(degrees)), math.sin(math.radians(degrees))

    def spot(x: float, y: float) -> list[float]:
        x, y = (-1 if mirrored else 1) * (x - 600), y - 500
        return [1000 + cos * x - sin * y, 1000 + sin * x + cos * y]

    def moved(value: Any) -> Any:
        if isinstance(value, dict):
            return {name: moved(inner) for name, inner in value.items()}
        if isinstance(value, list) and value and isinstance(value[0], int | float):
            return spot(*value)
        return [moved(inner) for inner in value] if isinstance(value, list) else value

    return {name: [2000, 2000] if name == "image" else moved(value) for name, value in values.items()}


def written() -> dict[str, Values]:
    """The cases of the table."""
    return json.loads(TABLE.read_text("utf-8"))  # type: ignore[no-any-return]


def typed_again(case: Values) -> Tracing:
    """The tracing of a case."""
    single = {name: points[0] if len(points) == 1 else points for name, points in case["landmarks"].items()}
    told = {name: case[name] for name in ("view", "scale", "drawn", "ridge", "model", "hand_error", "image")}
    return Tracing.model_validate(told | {"moment": "after"} | single)

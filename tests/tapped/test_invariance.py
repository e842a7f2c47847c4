"""Figures and errors do not hang on how the picture was held, which foot it is, and the way of the taps."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.hoof.tracing.figures import plain_values, reckoned, tapped_points
from recordgen.hoof.tracing.foot_frame import Floats
from recordgen.records.models.tracing import Tracing
from tests.support.sole_shapes import FORE, Bulge, Sole, turned
from tests.support.typed_tracings import SINGLE, tapped

ODD = Sole(bulges=(Bulge(at=-60, height=4),), lopsided=0.03, turn=3)
HAND_PX = 3.0
LINES = ("wall", "white_line")
TAPPED = {
    "usual outlines": tapped(FORE, 9, 7, hand_px=HAND_PX, seed=3, model=1, of="photograph"),
    "off the usual": tapped(ODD, 13, 11, hand_px=HAND_PX, seed=4, model=1, of="photograph"),
    "plain line": tapped(ODD, 11, 9, hand_px=HAND_PX, seed=5, of="photograph"),
}


@dataclass(frozen=True)
class Moved:
    """A picture otherwise: how each point moves, px, and by how much it is larger."""

    spot: Callable[[Floats], Floats]
    times: float = 1.0


WAYS = {
    "turned": Moved(lambda spots: turned(spots - 600, 130) + 1500),
    "mirrored": Moved(lambda spots: spots * [-1, 1] + [1500, 0]),
    "enlarged": Moved(lambda spots: spots * 2.5, 2.5),
}


def moved(told: dict[str, Any], way: Moved) -> dict[str, Any]:
    """The same tracing of the picture otherwise; the image is large enough for all of them."""
    px = tapped_points(Tracing.model_validate(told))
    marks = {name: way.spot(spots).tolist() for name, spots in px.items() if not name.startswith("scale")}
    single = {name: spots[0] if name in SINGLE else spots for name, spots in marks.items()}
    ends = {end: way.spot(px[f"scale {end}"])[0].tolist() for end in ("from", "to")}
    image = {"image": [4000, 4000], "hand_error": way.times * HAND_PX / 4}
    return told | single | {"scale": told["scale"] | ends} | image


def figures(told: dict[str, Any]) -> dict[str, Figure]:
    """Each with its error."""
    tracing = Tracing.model_validate(told)
    return reckoned(tracing, tracing.error_px())


@pytest.fixture(scope="module", params=TAPPED)
def plain(request: pytest.FixtureRequest) -> tuple[dict[str, Any], dict[str, Figure]]:
    """A tracing and its figures as it lay."""
    told = moved(TAPPED[request.param], Moved(lambda spots: spots))
    return told, figures(told)


@pytest.mark.parametrize("way", WAYS)
def test_figures_and_errors_are_those_of_the_foot(plain: tuple[dict[str, Any], dict[str, Figure]], way: str) -> None:
    """Turned, seen in a mirror as the other foot is, and taken with more pixels: the same to a ten-thousandth."""
    told, here = plain
    there = figures(moved(told, WAYS[way]))

    assert {name: one.value for name, one in there.items()} == pytest.approx(
        {name: one.value for name, one in here.items()}, rel=1e-4, abs=1e-6
    )
    assert {name: one.sd for name, one in there.items()} == pytest.approx(
        {name: one.sd for name, one in here.items()}, rel=1e-4, abs=1e-6
    )


@pytest.mark.parametrize("line", LINES)
def test_a_line_may_be_tapped_from_either_heel(plain: tuple[dict[str, Any], dict[str, Figure]], line: str) -> None:
    """Which tap came first, and the way round, change no figure. An open line has no other start."""
    told, _ = plain
    other = told | {line: np.flip(told[line], axis=0).tolist()}

    assert plain_values(Tracing.model_validate(other)) == pytest.approx(
        plain_values(Tracing.model_validate(told)), rel=1e-4, abs=1e-6
    )

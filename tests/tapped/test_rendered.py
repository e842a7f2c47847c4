"""A handful of what `python -m tests.tapped.rendered` looks at: taps where an eye sees the lines of a picture."""

from __future__ import annotations

import numpy as np
import pytest

from tests.support.photographed_soles import PX_PER_MM, photographed
from tests.support.rendered_feet import FOLLOWED, as_eyes_see
from tests.tapped.judged import judged, judged_upright

FEET = 3


def test_an_eye_finds_the_lines_in_dirt_and_shadow() -> None:
    """On the mean within a quarter of a mm outside and half a mm at the white line, and never quite where they are."""
    lot = np.random.default_rng(3)
    soles = [photographed(lot, tilt_deg=4) for _ in range(2)]
    off = {
        name: np.mean([np.hypot(*(as_eyes_see(one, "sole", lot).px[name] - one.px[name]).T).mean() for one in soles])
        for name in FOLLOWED["sole"]
    }

    assert 0.02 < off["wall"] / PX_PER_MM < 0.25
    assert 0.02 < off["white_line"] / PX_PER_MM < 0.5


def test_taps_on_a_picture_tell_a_sole_within_their_error() -> None:
    """Of all figures together nine tenths less what three soles leave to chance. Bounds: Judgement, from 40 soles."""
    told = judged(FEET, 9, "odd", look=as_eyes_see).values()

    assert sum(one.held for one in told) / len(told) >= 0.8


@pytest.mark.parametrize("view", ["side", "front"])
def test_taps_on_a_picture_tell_a_foot_on_the_ground(view: str) -> None:
    """The same of walls against their ground."""
    told = judged_upright(FEET, view, look=as_eyes_see).values()

    assert sum(one.held for one in told) / len(told) >= 0.8

"""Soles whose lines are drawn through a few taps: how near their figures come to the truth, and how sure they are."""

from __future__ import annotations

from functools import cache

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.twice import hand_error_px
from recordgen.hoof.tracing.figures import plain_values, reckoned, traced
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.lines.smooth import smooth
from recordgen.records.models.tracing import Tracing
from tests.support.sole_shapes import FORE, HIND, Bulge, Sole
from tests.support.typed_tracings import PX_PER_MM, tapped, typed

ODD = Sole(bulges=(Bulge(at=-75, height=5),), lopsided=0.02)
# SD of a tap under the loupe, px of a picture 1200 px wide.
HAND_PX = 1.8


def careful(sole: Sole) -> dict[str, float]:
    """The figures of a sole picked at every 1.5 mm, which is as good as the truth."""
    return plain_values(Tracing.model_validate(typed(sole=Sole(**(vars(sole) | {"picks": 241})))))


def few(sole: Sole, wall: int = 11, line: int = 9, hand_px: float = 0, seed: int = 0) -> Tracing:
    """A sole tapped at a few places."""
    return Tracing.model_validate(tapped(sole, wall, line, hand_px, seed))


@pytest.mark.parametrize(("sole", "wall"), [(FORE, 9), (HIND, 9), (FORE, 11), (HIND, 11), (ODD, 11), (ODD, 13)])
def test_a_few_taps_tell_what_careful_tracing_tells(sole: Sole, wall: int) -> None:
    """Area within 1 %, width and length within 1.2 mm, the mirror match within 1.5 %, the ring within 0.6 mm.

    Of a sole that bulges, 9 taps are too few. Bounds: Judgement.
    """
    true, found = careful(sole), plain_values(few(sole, wall))
    bounds = {"sole_width_mm": 1.2, "sole_length_mm": 1.2, "mirror_match_percent": 1.5, "ring_toe_mm": 0.6}

    assert found["sole_area_mm2"] == pytest.approx(true["sole_area_mm2"], rel=0.01)
    assert {name: found[name] for name in bounds if abs(found[name] - true[name]) > bounds[name]} == {}


@cache
def hands() -> list[dict[str, float]]:
    """The figures of one sole tapped by 120 hands."""
    return [plain_values(few(FORE, hand_px=HAND_PX, seed=seed)) for seed in range(120)]


@pytest.mark.parametrize("name", ["sole_width_mm", "sole_area_mm2", "ring_difference_mm", "ring_toe_mm"])
def test_the_error_is_that_of_the_hand_that_tapped(name: str) -> None:
    """The told standard deviation is how far 120 hands spread, and more by what lies between the taps, up to double."""
    told = reckoned(few(FORE), HAND_PX)[name].sd
    spread = float(np.std([one[name] for one in hands()], ddof=1))

    assert 0.75 * spread < told < 2 * spread


def test_errors_of_close_points_would_tell_too_little() -> None:
    """Kept as many straight points, each with an error of its own, the same line seems twice as sure."""
    tapped_few = tapped(FORE, 11, 9)
    close = {name: smooth(np.array(tapped_few[name]))[::2].tolist() for name in ("wall", "white_line")}
    straight = Tracing.model_validate(tapped_few | close | {"drawn": "straight"})

    assert reckoned(straight, HAND_PX)["ring_toe_mm"].sd < 0.65 * reckoned(few(FORE), HAND_PX)["ring_toe_mm"].sd


def test_a_picture_tapped_twice_tells_the_hands_error() -> None:
    """At other places of the same wall, with another number of taps: each tap against the other's line."""
    pairs = [(few(FORE, 11, 9, HAND_PX, seed), few(FORE, 13, 11, HAND_PX, seed + 500)) for seed in range(40)]
    found = [hand_error_px(one, again) for one, again in pairs]

    assert float(np.mean([one for one in found if one])) == pytest.approx(HAND_PX, rel=0.25)


def test_the_smooth_line_is_drawn_and_kept_as_handles() -> None:
    """The record keeps the taps; the landmarks that pictures show are the line."""
    tracing = few(FORE)
    (one,) = traced(FootVisit.model_validate({"tracings": [tracing]}), 1.5)

    assert len(tracing.wall) == 11
    assert len(one.points["wall"]) > 90


@pytest.mark.parametrize("scale", [{"scale": None}, {"lay": "on ground"}, {"lay": "unknown"}])
def test_without_a_scale_on_the_foot_no_length_is_told(scale: dict[str, object]) -> None:
    """Shares and angles stay as they are, and what lacks is the scale."""
    plain = tapped(FORE, 11, 9)
    without = scale if "scale" in scale else {"scale": plain["scale"] | scale}
    (one,) = traced(FootVisit.model_validate({"tracings": [plain | without]}), 1.5)
    (whole,) = traced(FootVisit.model_validate({"tracings": [plain]}), 1.5)

    assert {name.rpartition("_")[2] for name in one.figures} & {"mm", "mm2"} == set()
    assert one.lacking["sole_width_mm"] == ("scale",)
    shares = ("widest_from_toe_percent", "medial_area_percent", "mirror_match_percent", "bar_medial_deg")
    assert [one.figures[name].value for name in shares] == pytest.approx(
        [whole.figures[name].value for name in shares], rel=1e-4
    )


def test_the_scale_of_a_picture_is_what_typed_tracings_take() -> None:
    """Six px to a millimetre, so that the bounds above are in mm."""
    tracing = few(FORE)

    assert tracing.scale
    assert tracing.scale.mm_per_px == pytest.approx(1 / PX_PER_MM)

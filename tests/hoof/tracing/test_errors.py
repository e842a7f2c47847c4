"""The error of the marking hand carried through the figures of side and front views."""

from __future__ import annotations

import math
from collections.abc import Callable
from statistics import NormalDist
from typing import Any

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.draws import redrawn
from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.hoof.tracing.errors.standard import SCALE_FROM, SCALE_TO
from recordgen.hoof.tracing.errors.twice import hand_error_px
from recordgen.hoof.tracing.figures import in_mm, reckoned
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.front import front_figures
from recordgen.hoof.tracing.side import side_figures
from recordgen.hoof.tracing.sole import sole_figures
from recordgen.records.models.tracing import Tracing
from tests.support.horse_records import summary, visit
from tests.support.sole_shapes import FORE, other_foot, turned
from tests.support.typed_tracings import typed
from tests.support.upright_shapes import front, side

PX_PER_MM, LENGTH = 6.0, 100.0
HAND_PX = 1.5

Compute = Callable[[Points], dict[str, Floats]]
VIEWS: dict[str, tuple[Compute, Points]] = {
    "side": (side_figures, side(bend_mm=4)),
    "front": (front_figures, front(low_mm=3)),
}
# Those without a corner: a gap jumps where a wall is as hollow as it bulges.
SMOOTH = [
    (view, name)
    for view, (compute, points) in VIEWS.items()
    for name in compute(points)
    if view == "side" or not name.endswith("gap_mm")
]


def picture(points: Points, scale_px: float = LENGTH * PX_PER_MM) -> dict[str, Floats]:
    """Landmarks as they lie in a picture, px, with both ends of its scale."""
    px = {name: found * PX_PER_MM * [1, -1] + [900, 700] for name, found in points.items()}
    return px | {SCALE_FROM: np.array([[100.0, 950.0]]), SCALE_TO: np.array([[100.0 + scale_px, 950.0]])}


def spread(view: str, hand_px: float, draws: int = 3000) -> dict[str, float]:
    """The standard deviation of each figure over draws."""
    compute, points = VIEWS[view]
    found = compute(in_mm(redrawn(picture(points), hand_px, draws), LENGTH))
    return {name: float(values.std()) for name, values in found.items()}


SPREAD = {view: spread(view, HAND_PX) for view in VIEWS}


def delta(view: str, name: str) -> float:
    """The same by the slopes along every coordinate of every pick."""
    compute, points = VIEWS[view]
    px, step, squares = picture(points), 0.05, 0.0
    for mark, spots in px.items():
        for index in np.ndindex(*spots.shape):
            ends = [{**px, mark: spots + _only(spots, index, way * step)} for way in (1, -1)]
            up, down = (float(compute(in_mm(end, LENGTH))[name]) for end in ends)
            squares += ((up - down) / (2 * step)) ** 2
    return HAND_PX * math.sqrt(squares)


def _only(spots: Floats, index: tuple[int, ...], value: float) -> Floats:
    found = np.zeros_like(spots)
    found[index] = value
    return found


@pytest.mark.parametrize(("view", "name"), SMOOTH)
def test_the_draws_agree_with_the_delta_method(view: str, name: str) -> None:
    """On smooth figures, within a tenth: the root of the sum of squared slopes times the error of one coordinate.

    Source: propagation of independent errors, JCGM 100:2008 (GUM), section 5.1; draws, JCGM 101:2008.
    """
    assert SPREAD[view][name] == pytest.approx(delta(view, name), rel=0.1)


def test_the_error_of_a_toe_angle_in_closed_form() -> None:
    """Of two points of the ground, 2 s²/L², and of the wall's seven, s² over the sum of squared distances.

    Derived from: variance of the slope of a fitted line, which errors across it alone turn.
    """
    ground, wall = (VIEWS["side"][1][name] * PX_PER_MM for name in ("ground", "dorsal_wall"))
    along = (wall - wall.mean(axis=0)) @ (wall[0] - wall[-1]) / math.dist(wall[0], wall[-1])
    variance = 2 / math.dist(*ground) ** 2 + 1 / float((along**2).sum())

    expected = math.degrees(HAND_PX * math.sqrt(variance))
    assert SPREAD["side"]["toe_angle_deg"] == pytest.approx(expected, rel=0.05)


@pytest.mark.parametrize("view", VIEWS)
def test_errors_grow_with_the_error_of_the_hand(view: str) -> None:
    """Half the error of the hand, half of every figure's; of a gap only about that, as it picks the largest of many."""
    half = spread(view, HAND_PX / 2)

    assert {name: 2 * sd for name, sd in half.items()} == pytest.approx(SPREAD[view], rel=0.1)


@pytest.mark.parametrize("degrees", [37, 90, 180, -120])
@pytest.mark.parametrize("view", [*VIEWS, "sole"])
def test_errors_do_not_depend_on_how_the_picture_is_turned(view: str, degrees: float) -> None:
    """The same picks, the picture turned as a whole or the foot in it alone: the same errors to a millionth."""
    compute, points = VIEWS.get(view, (sole_figures, FORE.points()))
    px = picture(points)
    foot_alone = {
        name: spots if name in (SCALE_FROM, SCALE_TO) else turned(spots, degrees) for name, spots in px.items()
    }
    whole = {name: turned(spots, degrees) for name, spots in px.items()}
    plain, *others = (compute(in_mm(redrawn(one, HAND_PX), LENGTH)) for one in (px, foot_alone, whole))

    for other in others:
        assert {name: float(np.nanstd(found)) for name, found in other.items()} == pytest.approx(
            {name: float(np.nanstd(found)) for name, found in plain.items()}, rel=1e-6
        )


def test_errors_are_those_of_the_other_foot() -> None:
    """A mirrored picture of the same picks has the same errors."""
    plain, mirrored = (
        sole_figures(in_mm(redrawn(picture(points), HAND_PX), LENGTH))
        for points in (FORE.points(), other_foot(FORE.points()))
    )

    assert {name: float(np.nanstd(found)) for name, found in mirrored.items()} == pytest.approx(
        {name: float(np.nanstd(found)) for name, found in plain.items()}, rel=1e-6
    )


def test_what_both_walls_share_counts_once_in_their_difference() -> None:
    """The difference of two walls of one tracing is told as it spreads when the picture is traced again and again.

    As the error of two pictures it would be told half as wide again: the ground and the scale would count twice.
    """
    hand, px = np.random.default_rng(4), picture(front(low_mm=3))
    again = in_mm({name: spots + hand.normal(0, HAND_PX, (4000, *spots.shape)) for name, spots in px.items()}, LENGTH)
    walls = front_figures(again)
    spread_mm = np.std(walls["lateral_wall_height_mm"] - walls["medial_wall_height_mm"])
    found = summary(visit("2026-10-14", left_fore={"tracings": [_front(px)]})).feet["left_fore"].measures
    apart = math.hypot(*(found[f"wall_height_{side}"].smallest_real_size for side in ("medial", "lateral")))

    assert found["wall_difference"].smallest_real_size == pytest.approx(1.96 * spread_mm, rel=0.15)
    assert found["wall_difference"].smallest_real_size < 0.8 * apart


def _front(px: Points) -> dict[str, Any]:
    """A tracing of a drawing as it is written."""
    marks = {name: spots.tolist() for name, spots in px.items() if name not in (SCALE_FROM, SCALE_TO)}
    marks |= {name: marks[name][0] for name in ("coronet_medial", "coronet_lateral")}
    scale = {"from": px[SCALE_FROM][0].tolist(), "to": px[SCALE_TO][0].tolist(), "length": LENGTH}
    return {"view": "front", "moment": "after", "of": "drawing", "image": [1800, 1000], "scale": scale, **marks} | {
        "hand_error": HAND_PX / 1.8
    }


@pytest.mark.parametrize("scale_px", [100.0, 600.0])
def test_a_short_scale_makes_lengths_uncertain_and_angles_not(scale_px: float) -> None:
    """By its share alone: two ends, each with the hand's error, over the length of the scale.

    Derived from: propagation of independent errors.
    """
    px = picture(side(), scale_px)
    only = redrawn({name: px[name] for name in (SCALE_FROM, SCALE_TO)}, HAND_PX, 3000)
    found = side_figures(in_mm({**px, **only}, LENGTH))
    length = found["toe_length_mm"]

    assert float(length.std() / length.mean()) == pytest.approx(HAND_PX * math.sqrt(2) / scale_px, rel=0.05)
    assert float(np.std(found["toe_angle_deg"])) == pytest.approx(0, abs=1e-9)


@pytest.mark.parametrize(("picks", "again"), [(7, 7), (7, 9), (12, 8)])
def test_a_wall_traced_twice_tells_the_error_of_the_hand(picks: int, again: int) -> None:
    """With as many points or others, within a seventh over sixty pairs, as a point off a corner is nearer than it was.

    Source: Bland & Altman 1996, BMJ 312:1654, within-subject standard deviation from pairs.
    """
    hand = np.random.default_rng(5)
    found = [hand_error_px(*(_walls(count, hand) for count in (picks, again))) for _ in range(60)]

    assert math.sqrt(np.mean(np.square(found))) == pytest.approx(HAND_PX, rel=1 / 7)  # type: ignore[arg-type]


def test_a_landmark_that_a_finger_only_touched_has_an_error_of_its_own() -> None:
    """The frog's point ten times as unsure makes its length unsure, and the width of its base not."""
    sure, touched = (
        reckoned(Tracing.model_validate(typed(hand_errors=errors)), HAND_PX) for errors in (None, {"frog_apex": 15})
    )

    assert touched["frog_length_mm"].sd > 4 * sure["frog_length_mm"].sd
    assert touched["frog_width_mm"].sd == pytest.approx(sure["frog_width_mm"].sd)


def _walls(count: int, hand: np.random.Generator) -> Tracing:
    """The same straight front wall, picked at so many places with the error of the hand."""
    wall = np.linspace([400.0, 300.0], [700.0, 650.0], count) + hand.normal(0, HAND_PX, (count, 2))
    scale = {"from": [100, 950], "to": [700, 950], "length": 100}
    told = {"view": "side", "moment": "after", "image": [1000, 1000], "scale": scale, "dorsal_wall": wall.tolist()}
    return Tracing.model_validate(told)


@pytest.mark.parametrize("sign", [1, -1])
def test_a_figure_is_beyond_its_error_where_five_in_a_hundred_chances_reach_it(sign: int) -> None:
    """Either way. Source: the normal distribution, by the statistics module, to the two digits of 1.96."""
    edge = sign * 2.5 * NormalDist().inv_cdf(0.975)

    assert Figure(edge * 1.001, 2.5).beyond_error
    assert not Figure(edge * 0.999, 2.5).beyond_error

"""How far an outline covers its own mirror image."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
import shapely
from hypothesis import given, settings
from hypothesis import strategies as st
from shapely import affinity

from recordgen.hoof.tracing.foot_frame import Points
from recordgen.hoof.tracing.mirror import MATCHES, NEEDS, match_about, mirror_figures, mirrored
from tests.support.sole_shapes import (
    FORE,
    HIND,
    Bulge,
    Sole,
    ellipse,
    jittered,
    moved,
    other_foot,
    reversed_order,
    sides_swapped,
    turned,
    with_frog,
)
from tests.support.stars import PLACES, REACHES, star

CROOKED = replace(HIND, turn=6, lopsided=0.03).points()


def figures(points: Points) -> dict[str, float]:
    """The figures of one sole as plain numbers, matches from 0 to 1."""
    found = {name: float(value) for name, value in mirror_figures(points).items()}
    shares = {name.removesuffix("_percent"): found.pop(name) / 100 for name in MATCHES}
    return {**shares, **found}


@pytest.mark.parametrize("sole", [FORE, HIND], ids=["fore", "hind"])
def test_a_sole_alike_on_both_sides(sole: Sole) -> None:
    """It covers its mirror image wholly, and its axis is the frog's."""
    expected = {"mirror_match": 1, "best_mirror_match": 1, "turn_deg": 0}

    assert figures(sole.points()) == pytest.approx(expected, abs=1e-6)


@pytest.mark.parametrize("turn", [-19, -7.3, -2, 0.4, 3.5, 12, 19])
def test_a_turned_axis(turn: float) -> None:
    """A sole that is alike on both sides, and a frog askew: only folded about its own axis it matches."""
    found = figures(replace(HIND, turn=turn).points())

    assert found["turn_deg"] == pytest.approx(turn, abs=0.15)
    assert found["best_mirror_match"] > 0.997
    assert found["mirror_match"] < 1 - 0.005 * abs(turn)


@pytest.mark.parametrize("sole", [FORE, HIND], ids=["fore", "hind"])
def test_a_lopsided_sole(sole: Sole) -> None:
    """It matches about no axis."""
    found = figures(replace(sole, lopsided=0.08).points())

    assert found["mirror_match"] < 0.95
    assert found["mirror_match"] <= found["best_mirror_match"] < 0.97


@pytest.mark.parametrize("turn", [2, 10, 25])
def test_an_ellipse_turned_against_the_axis(turn: float) -> None:
    """Its match about the frog's axis is that of the ellipse and a copy turned by twice the angle.

    Derived from: a mirror image of a mirror image is a turn; Shapely's turned copy of the polygon.
    """
    outline = ellipse(50, 65, 720)
    one = affinity.rotate(shapely.Polygon(outline), -turn, origin=(0, 0))
    other = affinity.rotate(shapely.Polygon(outline), turn, origin=(0, 0))
    found = figures(with_frog(turned(outline, -turn)))

    assert found["mirror_match"] == pytest.approx(one.intersection(other).area / one.union(other).area, abs=1e-6)
    assert found["best_mirror_match"] > (0.999 if turn < 20 else 0)


def test_the_match_of_crossed_ellipses_has_a_closed_form() -> None:
    """An ellipse folded at 45 degrees meets its copy at a right angle.

    Derived from: the area that both share is 4 a b atan(b / a), with a the longer half axis.
    """
    shared = 4 * 65 * 50 * np.arctan(50 / 65)
    expected = shared / (2 * np.pi * 65 * 50 - shared)

    assert float(match_about(ellipse(50, 65, 1440), np.zeros(2), np.array(45.0))) == pytest.approx(expected, abs=1e-5)


def test_a_frog_beside_the_middle() -> None:
    """It does not match about the frog's axis; about the best one it does, which is not turned."""
    points = with_frog(ellipse(60, 65) + np.array([8, 0]))

    assert figures(points)["mirror_match"] < 0.9
    assert figures(points)["best_mirror_match"] == pytest.approx(1, abs=1e-6)
    assert figures(points)["turn_deg"] == pytest.approx(0, abs=1e-6)


def test_the_frogs_axis_is_one_of_the_axes_tried() -> None:
    """A notch in one side pulls the centroid off the middle: the frog's axis matches better than any through it.

    Derived from: a rectangle of 12000 mm² with a notch of 200 mm² shares 11600 of 12000 with its mirror image.
    """
    notched = np.array([[-50.0, -60], [-50, 60], [50, 60], [50, 10], [30, 0], [50, -10], [50, -60]])
    found = figures(with_frog(notched))

    assert found["mirror_match"] == pytest.approx(11600 / 12000)
    assert found["best_mirror_match"] == pytest.approx(11600 / 12000)


@pytest.mark.parametrize(
    "change",
    [
        lambda points: moved(points, degrees=140, shift=(30, 400)),
        lambda points: moved(points, scale=0.5),
        other_foot,
        reversed_order,
    ],
    ids=["turned and shifted", "smaller", "other foot", "reversed"],
)
def test_the_same_sole_however_it_lies(change: Callable[[Points], Points]) -> None:
    """The same match, and the same turn."""
    assert figures(change(CROOKED)) == pytest.approx(figures(CROOKED), abs=1e-6)


def test_sides_called_by_the_other_name() -> None:
    """The axis leans to the other side."""
    assert figures(sides_swapped(CROOKED))["turn_deg"] == pytest.approx(-figures(CROOKED)["turn_deg"], abs=1e-6)


def test_no_axis_nearby_matches_better() -> None:
    """The axis found is the best of many tried one by one."""
    foot = replace(FORE, bulges=(Bulge(60, 6),)).points()
    wall, middle = foot["wall"], shapely.get_coordinates(shapely.Polygon(foot["wall"]).centroid)[0]
    angles = np.arange(-20, 20.1, 0.5)

    assert figures(foot)["best_mirror_match"] >= match_about(wall, middle, angles).max() - 0.001


@given(REACHES, PLACES, PLACES)
@settings(max_examples=40, deadline=None)
def test_a_match_lies_between_nothing_and_whole(reaches: list[float], x: float, y: float) -> None:
    """Whatever the outline: from 0 to 1, the best one never below the frog's, within the turn looked at."""
    found = figures(with_frog(star(reaches, x, y)))

    assert -1e-9 <= found["mirror_match"] <= found["best_mirror_match"] <= 1 + 1e-9
    assert abs(found["turn_deg"]) <= 20


@given(REACHES, PLACES, st.floats(-180, 180))
@settings(max_examples=40, deadline=None)
def test_the_mirror_image_of_a_mirror_image(reaches: list[float], x: float, angle: float) -> None:
    """Is the outline itself."""
    outline, through = star(reaches), np.array([x, 3.0])
    again = mirrored(mirrored(outline, through, np.array(angle)), through, np.array(angle))

    assert again == pytest.approx(outline, abs=1e-9)


def test_an_outline_that_crosses_itself() -> None:
    """Two picks in the wrong order: a little less of a match, and no failure."""
    points = FORE.points()
    points["wall"][[9, 10]] = points["wall"][[10, 9]]

    assert not shapely.Polygon(points["wall"]).is_valid
    assert 0.9 < figures(points)["mirror_match"] < 1


def test_a_flat_wall_gives_no_number() -> None:
    """No area to match."""
    flat = np.stack([np.linspace(-50, 50, 12), np.zeros(12)], axis=-1)

    assert np.isnan(figures(with_frog(flat))["mirror_match"])


@pytest.mark.parametrize("missing", sorted({name for names in NEEDS.values() for name in names}))
def test_nothing_without_wall_or_frog(missing: str) -> None:
    """Each of them is needed."""
    assert mirror_figures({name: spots for name, spots in FORE.points().items() if name != missing}) == {}


def test_all_draws_at_once() -> None:
    """One call for all draws gives what one call for each gives."""
    draws = jittered(CROOKED, draws=5)
    together = mirror_figures(draws)

    for draw in range(5):
        alone = figures({name: spots[draw] for name, spots in draws.items()})
        assert float(together["mirror_match_percent"][draw]) == pytest.approx(100 * alone["mirror_match"])
        assert float(together["best_mirror_match_percent"][draw]) == pytest.approx(100 * alone["best_mirror_match"])
        assert float(together["turn_deg"][draw]) == pytest.approx(alone["turn_deg"])


def test_what_the_hand_takes_from_a_perfect_match() -> None:
    """With 0.3 mm a pick about one hundredth, and the turn holds to half a degree."""
    draws = mirror_figures(jittered(FORE.points()))

    assert draws["mirror_match_percent"].mean() == pytest.approx(99, abs=0.5)
    assert draws["best_mirror_match_percent"].mean() == pytest.approx(99.3, abs=0.3)
    assert draws["turn_deg"].mean() == pytest.approx(0, abs=0.1)
    assert draws["turn_deg"].std() < 0.5

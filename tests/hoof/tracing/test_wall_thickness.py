"""The smooth curve of a ring, and what stands above it."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from scipy.optimize import least_squares

from recordgen.hoof.tracing.foot_frame import Floats
from recordgen.hoof.tracing.wall_thickness import above_baseline, baseline, in_zone
from tests.support.sole_shapes import FORE, HIND, Bulge, Sole

ANGLES = np.arange(-144.0, 145, 3)
TURN = np.radians(ANGLES)
FACTORS = st.floats(-2, 2)


def standing(sole: Sole, zone: str) -> Floats:
    """The mean of what stands above the baseline in a zone."""
    return np.asarray(above_baseline(ANGLES, sole.thickness(ANGLES))[in_zone(ANGLES, zone)].mean())  # type: ignore[arg-type]


@given(st.floats(5, 16), FACTORS, FACTORS)
@settings(max_examples=30, deadline=None)
def test_a_ring_of_its_own_shape_stands_nowhere_above(a: float, b: float, c: float) -> None:
    """The curve follows all that it can."""
    ring = a + b * np.cos(TURN) + c * np.cos(2 * TURN)

    assert above_baseline(ANGLES, ring) == pytest.approx(np.zeros(len(ANGLES)), abs=1e-9)


@given(st.floats(4, 10))
@settings(max_examples=10, deadline=None)
def test_the_curve_is_the_same_on_both_sides(height: float) -> None:
    """Whatever stands on one of them."""
    found = baseline(ANGLES, replace(FORE, bulges=(Bulge(80, height),)).thickness(ANGLES))

    assert found == pytest.approx(found[::-1])


def test_within_its_limits_the_curve_is_that_of_least_squares() -> None:
    """Where nothing stands far off, SciPy solves it the same."""
    errors = np.random.default_rng(3).uniform(-0.2, 0.2, len(ANGLES))
    ring = 9 + 2 * np.cos(TURN) + errors
    curves = np.stack([np.ones_like(TURN), np.cos(TURN), np.cos(2 * TURN)], axis=-1)
    solved = least_squares(lambda factors: curves @ factors - ring, [9, 0, 0]).x

    assert baseline(ANGLES, ring) == pytest.approx(curves @ solved, abs=1e-5)


@pytest.mark.parametrize("sole", [FORE, HIND], ids=["fore", "hind"])
@pytest.mark.parametrize(
    ("at", "zone"), [(90, "lateral quarter"), (-48, "medial toe quarter"), (-130, "medial heel"), (0, "toe")]
)
@pytest.mark.parametrize(("height", "width"), [(2, 40), (4, 60), (8, 80)])
def test_a_bulge_does_not_lift_the_curve(sole: Sole, at: float, zone: str, height: float, width: float) -> None:
    """Its zone's mean comes out, at worst a fifth too small where the bulge is wide."""
    bulge = Bulge(at, height, width)
    true = bulge.mm(ANGLES)[in_zone(ANGLES, zone)].mean()  # type: ignore[arg-type]

    assert standing(replace(sole, bulges=(bulge,)), zone) == pytest.approx(true, rel=0.2, abs=0.1)


def test_a_whole_side_pushed_out_is_seen_in_part() -> None:
    """A limit: of a side that stands out over 140 degrees about half, and the other side reads too thin."""
    bulge = Bulge(70, 4, 140)
    sole = replace(FORE, bulges=(bulge,))
    true = bulge.mm(ANGLES)[in_zone(ANGLES, "lateral quarter")].mean()

    assert 0.4 < float(standing(sole, "lateral quarter")) / true < 0.6
    assert -1.5 < float(standing(sole, "medial quarter")) < -0.5


@pytest.mark.parametrize(("width", "low", "high"), [(50, 0.8, 1), (80, 0.1, 0.5)])
def test_both_sides_pushed_out_alike(width: float, low: float, high: float) -> None:
    """A limit: narrow bulges are seen, broad ones pass for the shape of the foot."""
    bulges = (Bulge(90, 4, width), Bulge(-90, 4, width))
    true = bulges[0].mm(ANGLES)[in_zone(ANGLES, "lateral quarter")].mean()

    assert low < float(standing(replace(FORE, bulges=bulges), "lateral quarter")) / true < high


def test_a_chip_does_not_pull_the_curve_down() -> None:
    """Wall broken away at one quarter makes no flare at the other."""
    chipped = replace(FORE, bulges=(Bulge(90, -4, 40),))

    assert standing(chipped, "lateral quarter") < -1
    assert standing(chipped, "medial quarter") == pytest.approx(0, abs=0.3)


def test_one_curve_for_each_draw() -> None:
    """All at once as one by one."""
    rings = np.stack([sole.thickness(ANGLES) for sole in (FORE, HIND, replace(FORE, bulges=(Bulge(90, 5),)))])

    assert baseline(ANGLES, rings) == pytest.approx(np.stack([baseline(ANGLES, ring) for ring in rings]))


def test_half_a_ring_has_no_curve() -> None:
    """One side alone cannot tell what both have in common."""
    lateral = ANGLES[ANGLES >= 0]

    with pytest.raises(ValueError, match="not traced far enough"):
        baseline(lateral, FORE.thickness(lateral))

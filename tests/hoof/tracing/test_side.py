"""A foot from the side: the figures of a known shape, however the picture was held."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some

from recordgen.hoof.tracing.side import NEEDS, side_figures
from tests.support.sole_shapes import moved, other_foot
from tests.support.upright_shapes import arc, side


def plain(points: object) -> dict[str, float]:
    """The figures as plain numbers."""
    return {name: float(value) for name, value in side_figures(points).items()}  # type: ignore[arg-type]


def test_angles_and_lengths_are_those_of_the_shape() -> None:
    """Each to the ground, in degrees and mm."""
    found = plain(side())
    expected = {
        "toe_angle_deg": 50,
        "heel_angle_deg": 42,
        "pastern_angle_deg": 53,
        "toe_heel_difference_deg": 8,
        "hoof_pastern_axis_deg": -3,
        "dorsal_flare_deg": 0,
        "dorsal_gap_mm": 0,
        "toe_length_mm": 85,
        "heel_length_mm": 45,
        "support_length_mm": 95,
        "side_breakover_mm": 9,
    }

    assert {name: found[name] for name in expected} == pytest.approx(expected, abs=1e-9)
    assert list(found) == list(NEEDS)


@given(
    degrees=some.floats(-40, 40),
    shift=some.tuples(some.floats(-500, 500), some.floats(-500, 500)),
    mirror=some.booleans(),
    turned_ground=some.booleans(),
)
def test_figures_do_not_change_with_how_the_picture_was_held(
    degrees: float, shift: tuple[float, float], mirror: bool, turned_ground: bool
) -> None:
    """Rolled, shifted, the foot seen from its other side, the ground's points the other way round."""
    seen = other_foot(side()) if mirror else dict(side())
    if turned_ground:
        seen = {**seen, "ground": seen["ground"][::-1]}

    assert plain(moved(seen, degrees, shift)) == pytest.approx(plain(side()), abs=1e-6)


@pytest.mark.parametrize("factor", [0.5, 2.0])
def test_lengths_grow_with_the_foot_and_angles_stay(factor: float) -> None:
    """Twice as large, twice as long."""
    found, larger = plain(side(bend_mm=3)), plain(moved(side(bend_mm=3), scale=factor))
    expected = {name: value * factor if name.endswith("_mm") else value for name, value in found.items()}

    assert larger == pytest.approx(expected, abs=1e-9)


@pytest.mark.parametrize("bend", [4.0, -4.0])
def test_a_wall_that_runs_out_below_is_hollow_and_one_that_bulges_is_not(bend: float) -> None:
    """Gap and flare have one sign."""
    found = plain(side(bend_mm=bend))

    assert found["dorsal_gap_mm"] == pytest.approx(bend, abs=0.01)
    assert np.sign(found["dorsal_flare_deg"]) == np.sign(bend)


def test_figures_that_lack_a_landmark_are_left_out() -> None:
    """And no others."""
    seen = {name: found for name, found in side().items() if name not in ("pastern", "heel_contact")}
    lost = {name for name, needed in NEEDS.items() if {"pastern", "heel_contact"} & set(needed)}

    assert set(plain(seen)) == set(NEEDS) - lost
    assert plain({name: found for name, found in side().items() if name != "ground"}) == {}


def test_many_draws_come_out_at_once() -> None:
    """Each as if it stood alone."""
    seen = [side(toe=angle, bend_mm=2) for angle in (45.0, 50.0, 55.0)]
    together = side_figures({name: np.stack([one[name] for one in seen]) for name in seen[0]})

    for index, one in enumerate(seen):
        assert {name: values[index] for name, values in together.items()} == pytest.approx(plain(one), abs=1e-9)


def test_the_direction_is_that_of_a_general_library() -> None:
    """Orthogonal least squares of scipy on points that do not lie on a line. Source: scipy.odr, ODRPACK."""
    odr = pytest.importorskip("scipy.odr")
    wall = arc(3.0, count=9) + np.random.default_rng(3).normal(0, 0.8, (9, 2))
    fitted = odr.ODR(odr.Data(wall[:, 0], wall[:, 1]), odr.unilinear, beta0=[-1.2, 0.0]).run()
    found = plain({"ground": side()["ground"] - [0, 80], "dorsal_wall": wall})

    assert found["toe_angle_deg"] == pytest.approx(-np.degrees(np.arctan(fitted.beta[0])), abs=1e-3)

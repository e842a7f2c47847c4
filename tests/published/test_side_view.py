"""Figures of a foot seen from the side, against published rules, tables and geometry."""

from __future__ import annotations

import math

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.camera import pitched_deg, yawed_deg
from recordgen.hoof.tracing.side import side_figures
from tests.support.upright_shapes import arc, side

GROUND = np.array([[60.0, -80.0], [-140.0, -80.0]])


@pytest.mark.parametrize("sagitta", [2.0, 5.0, -2.0, -5.0])
def test_the_straight_edge_test(sagitta: float) -> None:
    """On a hollow wall the gap at its middle, on one that bulges the gaps at its ends: a circle's sagitta.

    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, ch. II E and "Crooked hoof".
    """
    found = side_figures({"ground": GROUND, "dorsal_wall": arc(sagitta)})

    assert float(found["dorsal_gap_mm"]) == pytest.approx(sagitta, abs=0.01)


@pytest.mark.parametrize(("height", "length", "angle"), [(30, 40, 48.59), (25, 45, 33.75)])
def test_the_heel_angle_follows_from_height_and_length(height: float, length: float, angle: float) -> None:
    """The sine of the angle is height over length. Derived from: AFJ article 6066, heel length and vertical height."""
    run = math.sqrt(length**2 - height**2)
    heel = np.array([[-95 - run, float(height)], [-95.0, 0.0]])
    found = side_figures({**side(), "heel_wall": heel, "coronet_heel": heel[:1]})

    assert float(found["heel_angle_deg"]) == pytest.approx(angle, abs=0.005)
    assert (float(found["heel_height_mm"]), float(found["heel_length_mm"])) == pytest.approx((height, length))


@pytest.mark.parametrize(("toe", "pastern", "broken"), [(45, 52, "back"), (55, 50, "forward")])
def test_the_sign_of_a_broken_axis(toe: float, pastern: float, broken: str) -> None:
    """A pastern steeper than the toe is broken back (below 0), a toe steeper than the pastern broken forward.

    Source: USDA, Special Report on Diseases of the Horse, shoeing chapter, Fig. 6.
    """
    axis = float(side_figures(side(toe=toe, pastern=pastern))["hoof_pastern_axis_deg"])

    assert (axis < 0) == (broken == "back")
    assert abs(axis) == pytest.approx(abs(toe - pastern))


@pytest.mark.parametrize(("hoof", "second", "apart"), [(50.05, 45.65, 4.40), (51.40, 47.90, 3.50)])
def test_the_difference_of_two_axes(hoof: float, second: float, apart: float) -> None:
    """Mean hoof axis and mean axis of the second phalanx, before and after one trim.

    Derived from: Iran. J. Vet. Surg., article 79374, ten Dareh-Shori horses, printed means of S and U.
    """
    found = side_figures(side(toe=hoof, pastern=second))

    assert float(found["hoof_pastern_axis_deg"]) == pytest.approx(apart, abs=0.005)


@pytest.mark.parametrize(("yaw", "shown"), [(5, 50.11), (10, 50.43), (15, 50.97), (20, 51.74), (30, 53.99)])
def test_what_yaw_does_to_a_toe_of_fifty_degrees(yaw: float, shown: float) -> None:
    """Derived from: geometry, atan(tan a / cos yaw)."""
    assert yawed_deg(50, yaw) == pytest.approx(shown, abs=0.006)


@pytest.mark.parametrize(("pitch", "shown"), [(5, 49.89), (10, 49.57), (15, 49.02), (20, 48.24), (30, 45.90)])
def test_what_a_camera_from_above_does_to_a_toe_of_fifty_degrees(pitch: float, shown: float) -> None:
    """Derived from: geometry, atan(tan a * cos pitch)."""
    assert pitched_deg(50, pitch) == pytest.approx(shown, abs=0.006)


def test_toe_and_heel_lines_parallel_in_profile_give_no_difference() -> None:
    """Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, ch. II E."""
    assert float(side_figures(side(toe=48, heel=48))["toe_heel_difference_deg"]) == pytest.approx(0, abs=1e-9)

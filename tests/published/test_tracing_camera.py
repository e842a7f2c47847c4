"""The work of a camera on a measured foot: points in space, projected as it sees them, and measured in the picture."""

from __future__ import annotations

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.camera import pitched_deg, yawed_deg
from recordgen.hoof.tracing.errors.standard import SCALE_FROM, SCALE_TO
from recordgen.hoof.tracing.figures import in_mm
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.side import side_figures
from tests.support.sole_shapes import moved
from tests.support.upright_shapes import side

FOOT = side(toe=50)


def seen(points: Points, yaw: float = 0, pitch: float = 0) -> dict[str, Floats]:
    """The mid-plane of a foot as a camera far away sees it: yawed about the plumb line, looking down, degrees."""
    turn, down = np.radians([yaw, pitch])
    across, back = np.array([np.cos(turn), 0]), np.array([np.sin(turn), 0])
    up = np.array([0, 1.0])
    return {
        name: np.stack([spots @ across, np.cos(down) * (spots @ up) + np.sin(down) * (spots @ back)], axis=-1)
        for name, spots in points.items()
    }


def toe_angle(points: Points) -> float:
    """The toe angle in a picture."""
    return float(side_figures(points)["toe_angle_deg"])


@pytest.mark.parametrize(("yaw", "shown"), [(5, 50.11), (10, 50.43), (15, 50.97), (20, 51.74), (30, 53.99)])
def test_yaw_makes_a_measured_toe_steeper(yaw: float, shown: float) -> None:
    """Whichever way the camera is off. Derived from: orthographic projection of points in space."""
    assert toe_angle(seen(FOOT, yaw=yaw)) == pytest.approx(shown, abs=0.006)
    assert toe_angle(seen(FOOT, yaw=-yaw)) == pytest.approx(yawed_deg(50, yaw))


@pytest.mark.parametrize(("pitch", "shown"), [(5, 49.89), (10, 49.57), (15, 49.02), (20, 48.24), (30, 45.90)])
def test_a_camera_from_above_makes_a_measured_toe_flatter(pitch: float, shown: float) -> None:
    """Derived from: orthographic projection of points in space."""
    assert toe_angle(seen(FOOT, pitch=pitch)) == pytest.approx(shown, abs=0.006)
    assert toe_angle(seen(FOOT, pitch=pitch)) == pytest.approx(pitched_deg(50, pitch))


@pytest.mark.parametrize("roll", [-20.0, 3.0, 10.0])
def test_roll_drops_out_against_the_ground_line_of_the_picture(roll: float) -> None:
    """Against the frame it would add one for one. Derived from: angles to the ground line, not to the frame."""
    assert toe_angle(moved(FOOT, roll)) == pytest.approx(50)


@pytest.mark.parametrize(("away", "percent"), [(300, 20), (500, 12), (1000, 6), (1500, 4), (3000, 2)])
def test_a_scale_nearer_the_lens_than_the_foot_makes_the_foot_small(away: float, percent: float) -> None:
    """A scale 6 cm before the middle of the foot, which is so far from the lens, mm.

    Derived from: central projection.
    """
    focal = 1000.0
    px = {name: spots * focal / away * [1, -1] for name, spots in FOOT.items()}
    scale = np.array([[0.0, 0.0], [100.0, 0.0]]) * focal / (away - 60)
    found = side_figures(in_mm({**px, SCALE_FROM: scale[:1], SCALE_TO: scale[1:]}, 100))

    true = float(side_figures(FOOT)["toe_length_mm"])
    assert float(found["toe_length_mm"]) == pytest.approx(true * (1 - percent / 100))
    assert float(found["toe_angle_deg"]) == pytest.approx(50)

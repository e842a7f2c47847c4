"""A foot from the front: both walls and the hairline, in medial and lateral terms."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some

from recordgen.hoof.tracing.foot_frame import Points
from recordgen.hoof.tracing.front import NEEDS, front_figures
from tests.support.sole_shapes import moved, other_foot
from tests.support.upright_shapes import front


def plain(points: Points) -> dict[str, float]:
    """The figures as plain numbers."""
    return {name: float(value) for name, value in front_figures(points).items()}


def test_angles_and_heights_are_those_of_the_shape() -> None:
    """90 degrees is upright; the hairline rises to the lateral side."""
    found = plain(front(low_mm=4))
    width = front(low_mm=4)["coronet_lateral"][0, 0] - front(low_mm=4)["coronet_medial"][0, 0]

    assert (found["medial_wall_angle_deg"], found["lateral_wall_angle_deg"]) == pytest.approx((78, 74))
    assert (found["medial_wall_height_mm"], found["lateral_wall_height_mm"]) == pytest.approx((56, 60))
    assert found["coronet_tilt_deg"] == pytest.approx(np.degrees(np.arctan(4 / width)))
    assert found["lateral_gap_mm"] == pytest.approx(0, abs=1e-9)
    assert list(found) == list(NEEDS)


@given(degrees=some.floats(-40, 40), mirror=some.booleans(), turned_ground=some.booleans())
def test_left_and_right_feet_come_out_alike(degrees: float, mirror: bool, turned_ground: bool) -> None:
    """Only the names tell the sides; the roll of the camera drops out."""
    seen = other_foot(front(low_mm=3)) if mirror else dict(front(low_mm=3))
    if turned_ground:
        seen = {**seen, "ground": seen["ground"][::-1]}

    assert plain(moved(seen, degrees, (30, -70))) == pytest.approx(plain(front(low_mm=3)), abs=1e-6)


@pytest.mark.parametrize("side", ["medial", "lateral"])
def test_a_wall_that_runs_out_below_is_told_on_its_side(side: str) -> None:
    """Flare above 0 and hollow there; the other wall is straight."""
    seen = dict(front())
    outward = 1 if side == "lateral" else -1
    wall = seen[f"{side}_wall"].copy()
    wall[-1, 0] += outward * 6
    found, other = plain({**seen, f"{side}_wall": wall}), "medial" if side == "lateral" else "lateral"

    assert found[f"{side}_flare_deg"] > 5
    assert found[f"{side}_gap_mm"] > 3
    assert (found[f"{other}_flare_deg"], found[f"{other}_gap_mm"]) == pytest.approx((0, 0), abs=1e-9)

"""Figures of a foot seen from the front, against published rules and geometry."""

from __future__ import annotations

import numpy as np
import pytest

from recordgen.hoof.tracing.foot_frame import Points
from recordgen.hoof.tracing.front import front_figures
from tests.support.upright_shapes import front


def figures(points: Points) -> dict[str, float]:
    """The figures as plain numbers."""
    return {name: float(value) for name, value in front_figures(points).items()}


@pytest.mark.parametrize(("span", "tilt"), [(60, 4.76), (120, 2.39)])
def test_five_millimetres_between_the_sides_as_a_tilt(span: float, tilt: float) -> None:
    """The lateral hairline 5 mm higher over this many millimetres. Derived from: the tangent of the tilt."""
    ends = {"coronet_medial": np.array([[-span / 2, 55.0]]), "coronet_lateral": np.array([[span / 2, 60.0]])}

    assert figures({**front(), **ends})["coronet_tilt_deg"] == pytest.approx(tilt, abs=0.005)


@pytest.mark.parametrize("side", ["medial", "lateral"])
@pytest.mark.parametrize("sagitta", [2.0, 5.0, -2.0, -5.0])
def test_the_straight_edge_on_either_side(side: str, sagitta: float) -> None:
    """Hollow walls touch at their ends with the gap between, walls that bulge at their middle: a circle's sagitta.

    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, ch. II E and "Crooked hoof".
    """
    radius, half = (40**2 + sagitta**2) / (2 * abs(sagitta)), np.linspace(40, -40, 81)
    bow = np.sign(sagitta) * (np.sqrt(radius**2 - half**2) - (radius - abs(sagitta)))
    outward = 1 if side == "lateral" else -1
    wall = np.stack([outward * (60 - bow), half + 40], axis=-1)
    found = figures({**front(), f"{side}_wall": wall})

    assert found[f"{side}_gap_mm"] == pytest.approx(sagitta)
    assert np.sign(found[f"{side}_flare_deg"]) == np.sign(sagitta)
    assert found[f"{side}_wall_angle_deg"] == pytest.approx(90)


def test_a_regular_foot_has_walls_of_equal_height_and_a_level_hairline() -> None:
    """Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, ch. III, regular stance."""
    found = figures(front(medial=76, lateral=76))

    assert found["medial_wall_height_mm"] == pytest.approx(found["lateral_wall_height_mm"])
    assert found["coronet_tilt_deg"] == pytest.approx(0, abs=1e-9)


def test_a_base_wide_foot_has_its_outer_wall_higher_and_more_slanting() -> None:
    """Above 0 the tilt is to the lateral side. Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, ch. III."""
    found = figures(front(medial=80, lateral=72, low_mm=5))

    assert found["lateral_wall_height_mm"] > found["medial_wall_height_mm"]
    assert found["lateral_wall_angle_deg"] < found["medial_wall_angle_deg"]
    assert found["coronet_tilt_deg"] > 0

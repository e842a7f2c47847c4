"""Data for the pictures of tracings, against the points that were traced."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest

from recordgen.hoof.tracing.figures import Traced, traced
from recordgen.hoof.tracing.wall_thickness import ring
from recordgen.site.tracing.soles import ring_shape, sole_shape
from recordgen.site.tracing.together import off_shape, register_soles, zones_outside
from recordgen.site.tracing.upright import GOES_ON, upright_shape
from tests.support import upright_shapes
from tests.support.horse_records import NAMING, foot
from tests.support.sole_shapes import FORE, Bulge, Sole
from tests.support.tracing_pages import FLARED, front, side, upright
from tests.support.typed_tracings import typed


def told(tracing: dict[str, Any]) -> Traced:
    """Figures of one tracing."""
    return traced(foot(tracings=[tracing]), 1.5)[0]


def sole(shape: Sole, **values: Any) -> Any:
    """A sole as it is drawn."""
    one = told(typed(shape, **values))
    return sole_shape(one, ring_shape(one))


def test_a_sole_stands_in_the_frame_of_the_foot() -> None:
    """As it was made, whatever the picture's scale and direction of y."""
    expected = FORE.points()
    base = (expected["frog_medial"][0] + expected["frog_lateral"][0]) / 2

    assert np.array(sole(FORE).wall) == pytest.approx(expected["wall"] - base, abs=0.02)
    assert sole(FORE).frog[1] == pytest.approx(tuple(expected["frog_apex"][0] - base), abs=0.02)


def test_a_flare_is_a_form_at_the_outer_edge_of_its_side() -> None:
    """At most as deep as it stands above the baseline, and within the wall."""
    (flare,) = sole(FLARED).flares
    found = np.array(flare)
    edge = np.array(sole(FLARED).wall)

    assert found[:, 0].min() > 30
    assert found[:, 0].max() == pytest.approx(edge[:, 0].max(), abs=0.02)


def test_both_flares_are_found_at_their_sides() -> None:
    """Inner and outer, and none on an even ring."""
    both = sole(Sole(bulges=(Bulge(-60, 4), Bulge(100, 4))))

    assert [np.array(flare)[:, 0].mean() > 0 for flare in both.flares] == [False, True]
    assert sole(FORE).flares == ()


def test_the_ring_is_that_of_the_figures() -> None:
    """Angles and thickness as measured, and a hill stands on its baseline."""
    one = told(typed(FLARED))
    found, shape = ring(one.points), ring_shape(one)
    assert found is not None
    assert shape is not None
    (stretch,), (hill,) = shape.stretches, shape.above

    assert np.array(stretch)[:, 0] == pytest.approx(found.angle_deg)
    assert np.array(stretch)[:, 1] == pytest.approx(found.thickness_mm, abs=0.01)
    assert set(hill) <= {*stretch, *shape.baseline[0]}


def test_a_turned_outline_has_its_best_axis_and_a_straight_one_none() -> None:
    """The lean is that of the figure."""
    turned = told(typed(Sole(turn=8)))
    shape = sole_shape(turned, None)

    assert shape is not None
    assert shape.best_axis is not None
    assert shape.best_axis[1] == pytest.approx(turned.figures["turn_deg"].value, abs=0.01)
    assert sole(FORE).best_axis is None


@pytest.mark.parametrize("without", ["frog_apex", "white_line", "bar_medial", "breakover"])
def test_what_was_not_traced_is_left_out(without: str) -> None:
    """The rest is drawn."""
    shape = sole(FLARED, without=without)
    held = {"frog_apex": shape.frog, "white_line": shape.white_line, "breakover": shape.breakover}

    assert shape.wall
    assert not held.get(without)
    assert len(shape.bars) == (1 if without == "bar_medial" else 2)


def test_without_frog_and_wall_there_is_no_frame() -> None:
    """Nothing to draw, and no ring."""
    tracing = typed(FORE, without="wall")
    del tracing["frog_apex"]

    assert sole_shape(told(tracing), None) is None


@pytest.mark.parametrize("roll", [0, 7, -12])
@pytest.mark.parametrize("sign", [1, -1])
def test_a_foot_on_blank_stands_level_with_its_toe_at_the_left(roll: float, sign: int) -> None:
    """However the camera was held and whichever way the foot looked."""
    turn = math.radians(roll)
    matrix = np.array([[math.cos(turn), math.sin(turn)], [-math.sin(turn), math.cos(turn)]])
    points = {name: (spots * [sign, 1]) @ matrix for name, spots in upright_shapes.side(toe=50).items()}
    shape = upright_shape(told(upright("side", points, shift=(1200, 1400), image=[2400, 2000])), {})
    assert shape is not None
    dorsal, heel = shape.walls

    assert [y for _, y in shape.ground] == pytest.approx([0, 0], abs=0.05)
    assert dorsal.line[-1][0] < dorsal.line[0][0] < heel.line[-1][0]
    assert dorsal.along == pytest.approx((1, 0), abs=0.01)


def test_the_straight_line_of_the_front_wall_has_the_angle_told() -> None:
    """From above the hairline to the ground."""
    one = told(side(toe=50))
    shape = upright_shape(one, {})
    assert shape is not None
    (x, y), (end_x, end_y) = shape.walls[0].straight

    assert math.degrees(math.atan2(end_y - y, x - end_x)) == pytest.approx(one.figures["toe_angle_deg"].value, abs=0.1)
    assert math.hypot(x - end_x, y - end_y) == pytest.approx(85 * (1 + GOES_ON), rel=0.01)


def test_a_straight_edge_lies_along_a_hollow_wall_alone() -> None:
    """Between the wall's ends, with the depth told; none along a straight or bulging wall."""
    words = {"dorsal_gap_mm": "3 mm"}
    edges = [upright_shape(told(side(bend_mm=bend)), words) for bend in (4, 0, -4)]

    assert [bool(one and one.walls[0].edge) for one in edges] == [True, False, False]
    assert [one and one.walls[0].edge_words for one in edges] == ["3 mm", "", ""]


def test_from_the_front_angles_open_towards_the_middle() -> None:
    """The inner wall at the left, both arcs inside the hoof."""
    shape = upright_shape(told(front()), {})
    assert shape is not None

    assert [wall.along[0] for wall in shape.walls] == pytest.approx([1, -1])
    assert shape.walls[0].line[0][0] < shape.walls[1].line[0][0]


def test_over_a_photograph_points_are_those_that_were_marked() -> None:
    """In px of the picture, y down, and a millimetre as long as its scale says."""
    tracing = side()
    shape = upright_shape(told(tracing), {}, over=True)
    assert shape is not None

    assert np.array(shape.walls[0].line) == pytest.approx(np.array(tracing["dorsal_wall"]), abs=0.01)
    assert (shape.image, shape.mm) == ((1200, 1000), 6.0)


def test_without_ground_walls_are_drawn_and_no_angle() -> None:
    """Neither a straight line nor a word."""
    tracing = side()
    del tracing["ground"]
    shape = upright_shape(told(tracing), {"toe_angle_deg": "toe"})
    assert shape is not None

    assert [wall.straight for wall in shape.walls] == [(), ()]
    assert shape.pastern_words == ""


def test_outside_the_line_of_equal_distance_zones_are_told() -> None:
    """A bulge's zone first, with a shaded stretch at its side and its figure beside it."""
    one = told(typed(FLARED))
    shape = off_shape(one, sole_shape(one, None), NAMING)
    assert shape is not None
    zone, mm = zones_outside(one)[0]

    assert mm == one.figures[f"concentric_{zone.replace(' ', '_')}_mm"].value
    assert len(shape.told) == len(zones_outside(one))
    shaded = max(x for form in shape.outside for x, _ in form)
    assert shaded == pytest.approx(max(x for x, _ in shape.sole.wall), abs=0.5)
    assert off_shape(told(typed(FORE, without="white_line")), shape.sole, NAMING) is None


def test_the_same_sole_photographed_anew_is_laid_on_itself() -> None:
    """Wherever it lay in the picture; without a frog nothing is laid."""
    first, last = register_soles(told(typed(FORE)), told(typed(FORE, shift=(500, 850)))) or (None, None)
    assert first is not None
    assert last is not None

    assert np.array(last.wall) == pytest.approx(np.array(first.wall), abs=0.02)
    assert register_soles(told(typed(FORE, without="frog_apex")), told(typed(FORE))) is None

"""Distances to a line, along rays and the shortest."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given, settings

from recordgen.hoof.tracing.polygons import directions, nearest, reach
from tests.support.stars import PLACES, REACHES, star

SQUARE = np.array([[-30.0, -40], [-30, 40], [30, 40], [30, -40]])
MIDDLE = np.zeros(2)


def test_angles_count_from_the_toe_to_the_lateral_side() -> None:
    """0 is the toe, 90 lateral, -90 medial."""
    assert directions(np.array([0.0, 90, -90])) == pytest.approx(np.array([[0.0, 1], [1, 0], [-1, 0]]), abs=1e-12)


def test_reach_of_a_square() -> None:
    """Its sides and its corner; behind, only where the line is closed."""
    angles = np.array([0.0, 90, -90, np.degrees(np.arctan2(15, 40)), 180])
    expected = [40, 30, 30, np.hypot(15, 40), 40]

    assert reach(SQUARE, MIDDLE, angles, closed=True) == pytest.approx(expected)
    assert reach(SQUARE, MIDDLE, angles, closed=False) == pytest.approx([*expected[:4], np.nan], nan_ok=True)


def test_the_farthest_of_several() -> None:
    """A line that a ray meets three times counts where it is farthest."""
    folded = np.array([[-10.0, 20], [10, 20], [-10, 30], [10, 40]])

    assert reach(folded, MIDDLE, np.array([0.0]), closed=False) == pytest.approx([35])


@pytest.mark.parametrize("closed", [True, False])
def test_reach_of_a_folded_line_as_another_library_has_it(closed: bool) -> None:
    """The farthest place where Shapely's ray meets it; not a number where it meets none."""
    line = np.array([[-30.0, -40], [-30, 40], [10, 40], [10, 20], [-5, 15], [20, 10], [20, 60], [30, 40], [30, -40]])
    edges = shapely.LineString([*line, line[0]] if closed else line)
    angles = np.arange(-179.7, 180, 7)
    rays = [shapely.LineString([(0, 0), 200 * one]) for one in directions(angles)]
    met = [np.hypot(*shapely.get_coordinates(edges.intersection(ray)).T) for ray in rays]

    expected = [found.max() if len(found) else np.nan for found in met]
    assert reach(line, MIDDLE, angles, closed) == pytest.approx(expected, nan_ok=True)
    assert bool(np.isnan(expected).any()) is not closed


def test_nothing_stands_behind_the_middle() -> None:
    """A line on the other side is not met."""
    assert np.isnan(reach(np.array([[-10.0, -20], [10, -20]]), MIDDLE, np.array([0.0]), closed=False)).all()


@given(REACHES, PLACES, PLACES)
@settings(max_examples=60, deadline=None)
def test_the_shortest_distance_as_another_library_has_it(reaches: list[float], x: float, y: float) -> None:
    """The same as Shapely's, to the line without its closing edge."""
    line = star(reaches)
    spots = np.array([[x, y], [y, x]])
    expected = [shapely.LineString(line).distance(shapely.Point(spot)) for spot in spots]

    assert nearest(spots, line) == pytest.approx(expected, abs=1e-9)


def test_a_line_of_one_place_is_a_point() -> None:
    """Picked twice in the same place."""
    assert nearest(np.array([[3.0, 4]]), np.zeros((2, 2))) == pytest.approx([5])

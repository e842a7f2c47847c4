"""Areas, centroids and widths of closed outlines, against another library and closed forms."""

from __future__ import annotations

import numpy as np
import pytest
import shapely
from hypothesis import given, settings

from recordgen.hoof.tracing.polygons import area, centroid, lateral_area, medial_area, widest
from tests.support.stars import PLACES, REACHES, star


@given(REACHES, PLACES, PLACES)
@settings(max_examples=60, deadline=None)
def test_areas_and_centroid_as_another_library_has_them(reaches: list[float], x: float, y: float) -> None:
    """The same as Shapely's, whole and cut along the axis."""
    outline = star(reaches, x, y)
    polygon = shapely.Polygon(outline)
    lateral = shapely.intersection(polygon, shapely.box(0, -500, 500, 500))

    assert float(area(outline)) == pytest.approx(polygon.area)
    assert float(lateral_area(outline)) == pytest.approx(lateral.area, abs=1e-6)
    assert float(medial_area(outline)) == pytest.approx(polygon.area - lateral.area, abs=1e-6)
    assert centroid(outline) == pytest.approx(shapely.get_coordinates(polygon.centroid)[0], abs=1e-6)


@given(REACHES)
@settings(max_examples=60, deadline=None)
def test_the_widest_chord_is_no_longer_than_the_outline_is_wide(reaches: list[float]) -> None:
    """And no chord that Shapely cuts is longer."""
    outline = star(reaches)
    found = float(widest(outline).width)
    low, high = outline[:, 1].min(), outline[:, 1].max()
    cuts = [shapely.LineString([(-200, y), (200, y)]) for y in np.linspace(low, high, 23)[1:-1]]
    chords = [shapely.intersection(shapely.Polygon(outline), cut).bounds for cut in cuts]

    assert found <= np.ptp(outline[:, 0]) + 1e-9
    assert found >= max(bounds[2] - bounds[0] for bounds in chords if bounds) - 1e-6


def test_where_a_kite_is_widest() -> None:
    """The middle of the stretch that is at least 98 % as wide.

    Derived from: 100 mm wide at y = 40, narrowing over 60 mm to the toe and over 100 mm to the heel; 2 % of the width
    is lost after 1.2 mm forward and 2 mm back, so that the middle stands 0.4 mm behind.
    """
    kite = np.array([[0.0, -60], [-50, 40], [0, 100], [50, 40]])

    assert float(widest(kite).width) == pytest.approx(100)
    assert float(widest(kite).place) == pytest.approx(39.6)


def test_a_trapezoid_is_widest_at_its_long_side() -> None:
    """From 60 mm in front to 100 mm behind over 80 mm: 2 mm are lost after 4 mm, and nothing stands behind."""
    found = widest(np.array([[-50.0, 0], [-30, 80], [30, 80], [50, 0]]))

    assert (float(found.width), float(found.place)) == pytest.approx((100, 2))


def test_a_rectangle_is_widest_in_its_middle() -> None:
    """As wide everywhere."""
    assert float(widest(np.array([[-50.0, 0], [-50, 80], [50, 80], [50, 0]])).place) == pytest.approx(40)


def test_a_line_has_the_middle_of_its_picks_for_a_centroid() -> None:
    """It has no area to take it from."""
    assert centroid(np.array([[0.0, 0], [1, 1], [5, 5]])) == pytest.approx([2, 2])


def test_a_point_picked_twice_changes_nothing() -> None:
    """The same area, centroid and width."""
    once = star([60, 62, 64, 66, 64, 62])
    twice = np.repeat(once, 2, axis=0)

    assert float(area(twice)) == pytest.approx(float(area(once)))
    assert centroid(twice) == pytest.approx(centroid(once))
    assert list(map(float, widest(twice))) == pytest.approx(list(map(float, widest(once))))

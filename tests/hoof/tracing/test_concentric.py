"""How nearly the wall is concentric with the white line, against shapes whose answer is known."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest
import shapely

from recordgen.hoof.tracing.concentric import equal_distance, even_thickness, off_even
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.polygons import centroid
from recordgen.hoof.tracing.wall_thickness import in_zone, ring, ring_figures
from tests.support.sole_shapes import (
    FORE,
    HIND,
    Bulge,
    Sole,
    jittered,
    moved,
    other_foot,
    reversed_order,
    sides_swapped,
    with_frog,
)

FLARED = replace(FORE, picks=120, bulges=(Bulge(92, 5, 40),))
# Open at the heels, as lines of a sole are.
TURNS = np.radians(np.linspace(-150, 150, 721))


def circle(radius: float, aside: float = 0.0, forward: float = 0.0) -> Floats:
    """A circle open at its heel, from the medial side round the toe, (721, 2)."""
    return np.stack([aside + radius * np.sin(TURNS), forward + radius * np.cos(TURNS)], axis=-1)


def figures(points: Points) -> dict[str, float]:
    """Those of concentricity as plain numbers."""
    return {name: float(value) for name, value in ring_figures(points).items() if name.startswith("concentric")}


def circles(**away: float) -> dict[str, float]:
    """The figures of a wall 60 mm about a white line 50 mm about the origin."""
    return figures(with_frog(circle(60, **away)) | {"white_line": circle(50)})


def test_circles_about_one_centre_are_concentric() -> None:
    """Nothing is off, in any zone."""
    assert circles() == pytest.approx(dict.fromkeys(circles(), 0), abs=0.02)
    assert len(circles()) == 8


@pytest.mark.parametrize(("aside", "forward"), [(2, 0), (0, 3), (-1.5, 2)])
def test_circles_beside_each_other_are_off_by_the_way_between_their_centres(aside: float, forward: float) -> None:
    """Each angle by what lies between both circles there, less the mean over all angles traced.

    Derived from: where a ray from a point inside meets a circle, by the root of a square.
    """
    found = circles(aside=aside, forward=forward)
    middle, white = centroid(circle(50)), shapely.LineString(circle(50))

    def thick(turn: float) -> float:
        ray = np.array([np.sin(turn), np.cos(turn)])
        start = middle - (aside, forward)
        along = -start @ ray + np.sqrt((start @ ray) ** 2 - start @ start + 3600)
        return float(white.distance(shapely.Point(middle + along * ray)))

    angles = ring_angles(aside=aside, forward=forward)
    expected, both = np.array([thick(turn) for turn in np.radians(angles)]), np.isin(angles, -angles)
    off = expected[in_zone(angles, "lateral quarter")].mean() - expected[both].mean()

    assert found["concentric_lateral_quarter_mm"] == pytest.approx(off, abs=0.02)


def ring_angles(**away: float) -> Floats:
    """The angles at which both circles are traced."""
    found = ring(with_frog(circle(60, **away)) | {"white_line": circle(50)})
    assert found is not None
    return found.angle_deg


@pytest.mark.parametrize("sole", [FORE, HIND], ids=["fore", "hind"])
def test_a_wall_along_a_buffer_is_concentric(sole: Sole) -> None:
    """As thick all round whatever the white line's form: nothing is off. Source: shapely.offset_curve."""
    white = replace(sole, picks=361).points()["white_line"]
    wall = np.array(shapely.offset_curve(shapely.LineString(white), 9, quad_segs=32).coords)
    found = figures(FORE.points() | {"wall": wall, "white_line": white})

    assert found == pytest.approx(dict.fromkeys(found, 0), abs=0.05)


def test_the_line_of_equal_distance_is_that_of_the_ring() -> None:
    """By shapely's buffer and by the nearest distances: where the wall is off, it is off by the way to that line."""
    points = replace(FLARED, bulges=()).points()
    found = ring(points)
    assert found is not None
    even = float(even_thickness(*found))
    line = equal_distance(points["white_line"], even, found.angle_deg)
    white = shapely.LineString(points["white_line"])

    assert [white.distance(shapely.Point(spot)) for spot in line] == pytest.approx([even] * len(line), abs=0.02)


def test_the_zones_weighed_by_their_places_are_even_on_the_whole() -> None:
    """A zone that stands out is made up for by others that stand back."""
    found = ring(FLARED.points())
    assert found is not None

    assert off_even(*found).mean() == pytest.approx(0, abs=1e-9)


def test_a_bulge_is_off_in_its_zone() -> None:
    """More than in any other, and the whole is less concentric than without it."""
    plain, pushed = figures(replace(FLARED, bulges=()).points()), figures(FLARED.points())
    more = {name: pushed[name] - plain[name] for name in plain}

    assert max(more, key=lambda name: more[name]) == "concentric_lateral_quarter_mm"
    assert pushed["concentric_lateral_quarter_mm"] > pushed["concentric_medial_quarter_mm"] + 2


@pytest.mark.parametrize(
    "change",
    [lambda points: moved(points, degrees=75, shift=(-30, 500)), other_foot, reversed_order],
    ids=["turned and moved", "mirrored", "reversed"],
)
def test_the_same_sole_however_it_lies(change: Callable[[Points], Points]) -> None:
    """The same figures."""
    assert figures(change(FLARED.points())) == pytest.approx(figures(FLARED.points()), abs=1e-6)


def test_twice_as_large_is_twice_as_far_off() -> None:
    """And what was medial has the figures of what was lateral once the sides are called so."""
    one, swapped = figures(FLARED.points()), figures(sides_swapped(FLARED.points()))

    assert figures(moved(FLARED.points(), scale=2)) == pytest.approx({name: 2 * mm for name, mm in one.items()})
    assert swapped["concentric_medial_quarter_mm"] == pytest.approx(one["concentric_lateral_quarter_mm"])


def test_the_hand_alone_makes_an_even_wall_little_uneven() -> None:
    """By some 0.2 mm; the zones stay right on the mean."""
    draws = ring_figures(jittered(with_frog(circle(60)[::26]) | {"white_line": circle(50)[::36]}, draws=100))

    assert 0.05 < float(draws["concentric_mm"].mean()) < 0.3
    assert float(draws["concentric_toe_mm"].mean()) == pytest.approx(0, abs=0.1)


def test_a_wall_that_ends_early_is_not_told() -> None:
    """One side alone says nothing about even; nor is there a mean where no angle was traced on both sides."""
    points = FORE.points() | {"wall": FORE.points()["wall"][:14]}

    assert figures(points) == {}
    with pytest.raises(ValueError, match="both sides"):
        even_thickness(np.array([3.0, 6.0]), np.array([9.0, 9.0]))

"""The smooth line through a few taps, against general libraries and shapes of known size."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some
from scipy.interpolate import CubicSpline
from shapely import LineString, Point, Polygon, hausdorff_distance

from recordgen.records.models.lines.smooth import Floats, smooth, stretches_each
from tests.support.sole_shapes import FORE, HIND, Sole, ellipse, turned

SEEDS = some.integers(0, 10_000)


def taps(count: int, sole: Sole = FORE) -> Floats:
    """So many taps spread along a sole's wall."""
    wall = Sole(**(vars(sole) | {"picks": count})).points()["wall"]
    return np.asarray(wall, dtype=float)


def shaken(seed: int, count: int) -> Floats:
    """Taps along a wall by a poor hand."""
    return taps(count) + np.random.default_rng(seed).normal(0, 3, (count, 2))


@given(seed=SEEDS, count=some.integers(4, 15))
def test_it_is_the_cubic_spline_of_a_general_library(seed: int, count: int) -> None:
    """With the root of the distances as steps and not-a-knot ends. Source: scipy.interpolate.CubicSpline."""
    points = shaken(seed, count)
    steps = np.concatenate([[0], np.cumsum(np.hypot(*np.diff(points, axis=0).T) ** 0.5)])
    each = stretches_each(count)
    at = np.interp(np.arange((count - 1) * each + 1) / each, np.arange(count), steps)

    assert smooth(points) == pytest.approx(CubicSpline(steps, points, bc_type="not-a-knot")(at), abs=1e-8)


@given(seed=SEEDS, count=some.integers(5, 15))
def test_it_runs_through_every_tap(seed: int, count: int) -> None:
    """In their order, the ends among them."""
    points = shaken(seed, count)

    assert smooth(points)[:: stretches_each(count)] == pytest.approx(points)


@given(seed=SEEDS, degrees=some.floats(-180, 180), factor=some.floats(0.01, 50))
def test_it_turns_and_grows_with_the_picture(seed: int, degrees: float, factor: float) -> None:
    """And is the same in px as in mm."""
    points = shaken(seed, 9)

    assert smooth(turned(points, degrees) * factor) == pytest.approx(turned(smooth(points), degrees) * factor, abs=1e-6)


def test_tapped_the_other_way_round_it_is_the_same_line() -> None:
    """Only the order is turned."""
    points = shaken(3, 11)

    assert smooth(points[::-1]) == pytest.approx(smooth(points)[::-1])


def test_draws_at_once_are_drawn_one_by_one() -> None:
    """Each draw has steps of its own."""
    draws = np.stack([shaken(seed, 8) for seed in range(30)])

    assert smooth(draws) == pytest.approx(np.stack([smooth(one) for one in draws]))


@pytest.mark.parametrize(("across", "along"), [(60.0, 60.0), (65.0, 60.0), (55.0, 66.0)])
def test_the_area_of_an_ellipse_comes_out(across: float, along: float) -> None:
    """From 13 taps within a half of a hundredth, where straight lines lose four. Source: pi times both half axes."""
    points = ellipse(across, along, 13)
    closed = np.concatenate([points, points[:1]])

    true = np.pi * across * along
    assert Polygon(smooth(closed)).area == pytest.approx(true, rel=0.005)
    assert Polygon(points).area < 0.965 * true


@pytest.mark.parametrize("count", [7, 9, 11, 13])
@pytest.mark.parametrize("sole", [FORE, HIND])
def test_another_smooth_line_is_close_and_no_better(sole: Sole, count: int) -> None:
    """The centripetal Catmull-Rom line through the same taps is further from the true wall in the mean.

    Source: Barry & Goldman 1988, Computer Graphics 22(4):199-204; from memory, not read.
    """
    points, true = taps(count, sole), LineString(taps(400, sole))
    ours, other = (LineString(line) for line in (smooth(points), catmull_rom(points)))
    away = [float(np.mean([true.distance(Point(spot)) for spot in line.coords])) for line in (ours, other)]

    assert hausdorff_distance(ours, other, densify=0.2) < 4
    assert away[0] < min(0.5, away[1])


def test_two_taps_on_one_spot_do_not_matter() -> None:
    """The line stands still there and goes on."""
    points = taps(9)
    twice = np.insert(points, 4, points[4], axis=0)

    assert hausdorff_distance(LineString(smooth(twice)), LineString(smooth(points)), densify=0.2) < 2.5


def test_three_points_are_too_few() -> None:
    """The refusal says how many it needs."""
    with pytest.raises(ValueError, match="needs 4 points"):
        smooth(taps(9)[:3])


def catmull_rom(points: Floats) -> Floats:
    """The line by Barry and Goldman's pyramid, its ends mirrored, written apart from the code that is tested."""
    held = [2 * points[0] - points[1], *points, 2 * points[-1] - points[-2]]
    found = []
    for one, two, three, four in zip(held, held[1:], held[2:], held[3:], strict=False):
        knots = np.cumsum([0, *(np.hypot(*(b - a)) ** 0.5 for a, b in ((one, two), (two, three), (three, four)))])
        for at in np.linspace(knots[1], knots[2], 25):
            found.append(_pyramid([one, two, three, four], knots, at))
    return np.array(found)


def _pyramid(held: list[Floats], knots: Floats, at: float) -> Floats:
    row = [_between(held[i], held[i + 1], knots[i], knots[i + 1], at) for i in range(3)]
    row = [_between(row[i], row[i + 1], knots[i], knots[i + 2], at) for i in range(2)]
    return _between(row[0], row[1], knots[1], knots[2], at)


def _between(one: Floats, other: Floats, start: float, end: float, at: float) -> Floats:
    return np.asarray(((end - at) * one + (at - start) * other) / (end - start))

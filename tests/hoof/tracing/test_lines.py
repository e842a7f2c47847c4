"""The direction of a wall, its upper third against the rest, and the straight edge laid along it."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as some

from recordgen.hoof.tracing.foot_frame import Floats
from recordgen.hoof.tracing.upright import direction, gap, turned_from, upper_and_lower
from tests.support.sole_shapes import jittered, turned
from tests.support.upright_shapes import arc

OUTWARD = np.array([1.0, 1.0])
# A wall of 90 mm from the hairline, which stands at the top left, that turns outward by 12 degrees below its third.
KNICK = np.concatenate(
    [[[0.0, 0.0]], np.cumsum([turned(np.array([30.0, 0]), -55), turned(np.array([60.0, 0]), -43)], 0)]
)


def flare(wall: Floats) -> Floats:
    """The turn from the upper third to the rest, degrees."""
    return turned_from(*upper_and_lower(wall))


@given(seed=some.integers(0, 1000), count=some.integers(3, 12))
def test_the_direction_is_the_first_principal_axis(seed: int, count: int) -> None:
    """As the singular vectors of a general library tell it, up to its sign. Source: numpy.linalg.svd, LAPACK gesdd."""
    wall = arc(3.0, count=count) + np.random.default_rng(seed).normal(0, 1, (count, 2))
    axis = np.linalg.svd(wall - wall.mean(axis=0))[2][0]

    assert abs(float(direction(wall) @ axis)) == pytest.approx(1, abs=1e-9)


def test_the_direction_runs_from_the_first_point_to_the_last() -> None:
    """Picked the other way round, it is turned by half a turn."""
    assert direction(arc(2.0)[::-1]) == pytest.approx(-direction(arc(2.0)))


def test_a_wall_that_turns_below_its_third_is_flatter_by_that_angle() -> None:
    """The hairline's third stands alone in the upper part."""
    assert float(flare(KNICK)) == pytest.approx(12, abs=0.02)


@given(shares=some.lists(some.floats(0.02, 0.98), max_size=8), lower=some.booleans())
def test_more_picks_on_the_same_line_change_nothing(shares: list[float], lower: bool) -> None:
    """Whether they are dense above or below."""
    start, end = KNICK[int(lower) : int(lower) + 2]
    more = [start + share * (end - start) for share in sorted(shares)]
    wall = np.insert(KNICK, 1 + int(lower), more, axis=0) if more else KNICK

    assert float(flare(wall)) == pytest.approx(float(flare(KNICK)), abs=1e-6)


@pytest.mark.parametrize("count", [4, 5, 7, 10, 13])
def test_a_pick_near_the_cut_does_not_jump_from_draw_to_draw(count: int) -> None:
    """Each draw is cut for itself: all at once come out as one by one."""
    drawn = jittered({"wall": arc(4.0, count=count)}, draws=40, sd=0.5)["wall"]

    assert flare(drawn) == pytest.approx([float(flare(one)) for one in drawn])


def test_the_error_of_a_flare_hardly_hangs_on_the_number_of_picks() -> None:
    """From 4 to 13 picks it only falls a little."""
    spread = [float(flare(jittered({"wall": arc(4.0, count=n)}, 2000, 0.4)["wall"]).std()) for n in range(4, 14)]

    assert max(spread) < 1.4 * min(spread)


def test_a_wall_with_the_same_pick_twice_has_a_flare() -> None:
    """A stretch of no length counts for nothing."""
    wall = np.concatenate([KNICK[:1], KNICK, KNICK[-1:]])

    assert float(flare(wall)) == pytest.approx(float(flare(KNICK)))


@given(degrees=some.floats(-180, 180), sagitta=some.sampled_from([3.0, -3.0]), factor=some.floats(0.5, 4))
def test_the_gap_turns_with_the_picture_and_grows_with_the_wall(degrees: float, sagitta: float, factor: float) -> None:
    """However the wall lies, hollow stays hollow."""
    found = gap(turned(arc(sagitta), degrees) * factor, turned(OUTWARD, degrees))

    assert float(found) == pytest.approx(sagitta * factor, abs=1e-6)


def test_the_gap_of_a_wall_seen_from_within_has_the_other_sign() -> None:
    """A line hollow from outside bulges from inside."""
    assert float(gap(arc(3.0), -OUTWARD)) == pytest.approx(-float(gap(arc(3.0), OUTWARD)))


@pytest.mark.parametrize(
    ("inward", "expected"), [((0, 1, 3, 1, 0), 3), ((0, -1, -3, -1, 0), -3), ((0, 4, -1, 0, 0), 4)]
)
def test_the_larger_of_hollow_and_bulge_is_told(inward: tuple[float, ...], expected: float) -> None:
    """Of a wall that is wavy too."""
    wall = np.array([[-off, 80.0 - 20 * step] for step, off in enumerate(inward)])

    assert float(gap(wall, np.array([1.0, 0.0]))) == pytest.approx(expected)


def test_the_greatest_gap_of_a_straight_wall_has_a_corner() -> None:
    """A pick moved either way opens a gap or a bulge of that size: no slope there that the delta method could take."""
    wall = np.array([[0.0, 80], [0, 60], [0, 40], [0, 20], [0, 0]])
    moved = wall + np.array([[0, 0], [-1, 0], [0, 0], [1, 0], [0, 0]])

    one = {step: float(gap(wall + step * (moved - wall), np.array([1.0, 0.0]))) for step in (0.1, -0.1)}
    assert one == pytest.approx({0.1: 0.1, -0.1: 0.1})

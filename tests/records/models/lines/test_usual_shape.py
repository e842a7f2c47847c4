"""Outlines of a sole through a few taps as they usually run: near the truth, whatever the order or the side."""

from __future__ import annotations

import numpy as np
import pytest
from hypothesis import given, settings
from hypothesis import strategies as some
from shapely import LineString, Point

from recordgen.records.models.lines.drawn import drawn_lines, follows_usual_shape
from recordgen.records.models.lines.shape_table import ANGLES, SHIPPED, VERSION, known_table
from recordgen.records.models.lines.smooth import Floats, smooth
from recordgen.records.models.lines.usual_shape import off_the_curve, usual_lines
from recordgen.records.models.tracing import Tracing
from tests.shape_model.made import table
from tests.support.photographed_soles import Photographed, photographed, tapped_by
from tests.support.sole_shapes import Bulge, Sole, moved, other_foot
from tests.support.typed_tracings import tapped

HAND_PX = 2.4
LINES = ("wall", "white_line")


def points(tracing: Tracing) -> dict[str, Floats]:
    """The taps of a tracing."""
    return {name: np.array(spots, dtype=float) for name, spots in tracing.named().items()}


def photographs(count: int, taps: int = 7) -> list[tuple[Photographed, dict[str, Floats]]]:
    """Odd soles that the table was not made of, and what a hand tapped of each."""
    lots = [np.random.default_rng([99, number]) for number in range(count)]
    seen = [photographed(lot, odd=True) for lot in lots]
    return [(one, points(tapped_by(one, lot, taps, taps - 2, HAND_PX))) for one, lot in zip(seen, lots, strict=True)]


def away(line: Floats, true: Floats) -> float:
    """The mean distance of a line from the true one."""
    return float(np.mean([LineString(true).distance(Point(spot)) for spot in line]))


@pytest.mark.parametrize("name", LINES)
def test_it_lies_nearer_to_the_truth_than_the_plain_line(name: str) -> None:
    """In the mean of 20 soles by 7 and 5 taps by a third, the hand's error included."""
    usual, plain = [], []
    for seen, taps in photographs(20):
        lines = usual_lines(taps, HAND_PX)
        assert lines
        usual.append(away(lines[name], seen.px[name]))
        plain.append(away(smooth(taps[name]), seen.px[name]))

    assert np.mean(usual) < 0.67 * np.mean(plain)


@given(seed=some.integers(0, 1000), degrees=some.floats(-180, 180), factor=some.floats(0.2, 5))
@settings(max_examples=20, deadline=None)
def test_it_turns_folds_and_grows_with_the_picture(seed: int, degrees: float, factor: float) -> None:
    """The same foot however it was photographed, and the other foot as its mirror image."""
    taps = points(Tracing.model_validate(tapped(hand_px=3, seed=seed)))
    plain = usual_lines(taps, 3)
    turned = usual_lines(moved(taps, degrees, (40, -7), factor), 3 * factor)
    other = usual_lines(other_foot(taps), 3)
    assert plain
    assert turned
    assert other

    for name in LINES:
        assert turned[name] == pytest.approx(moved(plain, degrees, (40, -7), factor)[name], abs=1e-6 * factor)
        assert other[name] == pytest.approx(other_foot(plain)[name], abs=1e-6)


@given(order=some.permutations(range(11)))
@settings(max_examples=20, deadline=None)
def test_taps_may_come_in_any_order(order: list[int]) -> None:
    """The angle sorts them."""
    taps = points(Tracing.model_validate(tapped(hand_px=3)))
    plain, mixed = usual_lines(taps, 3), usual_lines(taps | {"wall": taps["wall"][order]}, 3)
    assert plain
    assert mixed

    assert mixed["wall"] == pytest.approx(plain["wall"])


def test_draws_at_once_are_drawn_one_by_one() -> None:
    """Each with a middle, a size and ends of its own."""
    taps = points(Tracing.model_validate(tapped(hand_px=3)))
    hand = np.random.default_rng(5)
    draws = {name: found + hand.normal(0, 3, (30, *found.shape)) for name, found in taps.items()}
    at_once = usual_lines(draws, 3)
    single = [usual_lines({name: found[number] for name, found in draws.items()}, 3) for number in range(30)]
    assert at_once

    for name in LINES:
        assert at_once[name] == pytest.approx(np.stack([one[name] for one in single if one]))


def test_a_surer_hand_is_followed_more_nearly() -> None:
    """With a hand that may be far off, the line leaves the taps."""
    taps = points(Tracing.model_validate(tapped(hand_px=6)))
    off = []
    for sd in (0.5, 6.0, 20.0):
        lines = usual_lines(taps, sd)
        assert lines
        off.append(float(np.mean([LineString(lines["wall"]).distance(Point(spot)) for spot in taps["wall"]])))

    assert off == sorted(off)
    assert off[0] < 1.0


BULGED = Sole(bulges=(Bulge(at=-30, height=16, width=30),))


@pytest.mark.parametrize(("sole", "follows"), [(Sole(), True), (BULGED, False)])
def test_a_tap_off_the_usual_outlines_brings_the_plain_line_back(sole: Sole, follows: bool) -> None:
    """A bulge that hardly any foot has."""
    tracing = Tracing.model_validate(tapped(sole, 13, 9, model=1, hand_error=1.0))
    drawn, plain = drawn_lines(points(tracing), tracing), smooth(points(tracing)["wall"])

    assert follows_usual_shape(tracing) == follows
    assert np.array_equal(drawn["wall"], plain) != follows


@pytest.mark.parametrize("without", ["wall", "frog_apex"])
def test_without_wall_or_frog_there_is_no_usual_line(without: str) -> None:
    """Nothing tells where the middle lies."""
    taps = {name: found for name, found in points(Tracing.model_validate(tapped())).items() if name != without}

    assert usual_lines(taps, 3) is None
    assert off_the_curve(taps, 3)


def test_the_table_is_that_of_its_script() -> None:
    """Of fewer soles the means come out nearly the same, and neither side is favoured."""
    wall, ring = table(300)

    assert known_table(VERSION) is SHIPPED
    assert (SHIPPED.wall.shape, SHIPPED.ring.shape) == ((10, ANGLES), (9, ANGLES))
    assert SHIPPED.wall[0] == pytest.approx(wall[0], abs=0.02)
    assert SHIPPED.ring[0] == pytest.approx(ring[0], abs=0.01)
    assert SHIPPED.wall[0] == pytest.approx(SHIPPED.wall[0][::-1], abs=2e-4)

"""The figures of a sole in the frame of its frog."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import replace

import numpy as np
import pytest

from recordgen.hoof.tracing.foot_frame import Points
from recordgen.hoof.tracing.sole import NEEDS, sole_figures
from tests.support.sole_shapes import (
    FORE,
    HIND,
    ellipse,
    jittered,
    moved,
    other_foot,
    reversed_order,
    sides_swapped,
    with_frog,
)

# A tilted sole, so that no sign hides behind a zero.
CROOKED = replace(FORE, turn=7, lopsided=0.08).points()


def figures(points: Points) -> dict[str, float]:
    """The figures of one sole as plain numbers."""
    return {name: float(value) for name, value in sole_figures(points).items()}


def test_every_figure_of_a_whole_sole() -> None:
    """All of the table, in its order, each a finite number."""
    found = figures(FORE.points())

    assert list(found) == list(NEEDS)
    assert np.isfinite(list(found.values())).all()


def test_an_ellipse() -> None:
    """Twice its half axes across and along, widest in the middle, half its area on each side.

    Derived from: area of an ellipse, pi a b.
    """
    heels = {"buttress_medial": [[-5.0, -65.0]], "buttress_lateral": [[5.0, -65.0]]}
    found = figures(with_frog(ellipse(60, 65, 720), **heels))

    assert found["sole_length_mm"] == pytest.approx(130)
    assert found["sole_width_mm"] == pytest.approx(120)
    assert found["sole_area_mm2"] == pytest.approx(np.pi * 60 * 65, rel=1e-4)
    assert found["widest_from_toe_percent"] == pytest.approx(50)
    assert found["toe_to_heel_part"] == pytest.approx(1)
    assert found["lateral_area_percent"] == pytest.approx(50)


def test_frog_bars_buttresses_and_breakover() -> None:
    """Distances along the axis, bars against it: above 0 where they come nearer to it toward the toe."""
    wall = np.array([[-40.0, -20], [-40, 100], [40, 100], [40, -20]])
    found = figures(
        with_frog(
            wall,
            buttress_medial=[[-35, -10]],
            buttress_lateral=[[35, -16]],
            bar_medial=[[-30, 0], [-20, 10]],
            bar_lateral=[[30, 0], [30, 20]],
            breakover=[[3, 92]],
        )
    )

    expected = {
        "heel_buttress_medial_mm": 40,
        "heel_buttress_lateral_mm": 46,
        "buttress_difference_mm": 6,
        "frog_length_mm": 30,
        "frog_width_mm": 20,
        "frog_width_to_length": 2 / 3,
        "bar_medial_deg": 45,
        "bar_lateral_deg": 0,
        "bar_difference_deg": -45,
        "sole_breakover_mm": 8,
        "sole_length_mm": 113,
    }
    assert {name: found[name] for name in expected} == pytest.approx(expected)


@pytest.mark.parametrize(
    "change",
    [
        lambda points: moved(points, degrees=37, shift=(210, -90)),
        lambda points: moved(points, degrees=180),
        other_foot,
        reversed_order,
        lambda points: other_foot(moved(points, degrees=-120)),
    ],
    ids=["turned and shifted", "upside down", "other foot", "reversed", "other foot turned"],
)
def test_the_same_sole_however_it_lies(change: Callable[[Points], Points]) -> None:
    """Turned, shifted, picked backwards, or the horse's other foot: the same figures."""
    assert figures(change(CROOKED)) == pytest.approx(figures(CROOKED), abs=1e-7)


def test_twice_as_large() -> None:
    """Lengths double, the area is fourfold, shares and angles stay."""
    small, large = figures(CROOKED), figures(moved(CROOKED, scale=2))
    factors = {name: 2 if name.endswith("_mm") else 4 if name.endswith("_mm2") else 1 for name in small}

    assert large == pytest.approx({name: factors[name] * value for name, value in small.items()})


def test_sides_called_by_the_other_name() -> None:
    """Medial is lateral now: figures of the sides change places, differences their sign."""
    one, other = figures(CROOKED), figures(sides_swapped(CROOKED))

    for name in ("buttress_difference_mm", "bar_difference_deg"):
        assert other[name] == pytest.approx(-one[name])
    for name in ("heel_buttress_{}_mm", "{}_area_percent", "bar_{}_deg"):
        assert other[name.format("medial")] == pytest.approx(one[name.format("lateral")])
    assert other["sole_width_mm"] == pytest.approx(one["sole_width_mm"])


def test_the_side_of_an_area() -> None:
    """A square from 10 mm medial to 30 mm lateral of the axis has a quarter of its area on the medial side."""
    square = np.array([[-10.0, 0], [-10, 40], [30, 40], [30, 0]])

    assert figures(with_frog(square))["medial_area_percent"] == pytest.approx(25)
    assert figures(with_frog(square))["lateral_area_percent"] == pytest.approx(75)


@pytest.mark.parametrize("missing", sorted({name for names in NEEDS.values() for name in names}))
def test_figures_whose_landmarks_are_missing_are_left_out(missing: str) -> None:
    """Only those that need the landmark; the others stay as they were."""
    whole = figures(FORE.points())
    points = {name: spots for name, spots in FORE.points().items() if name != missing}

    assert figures(points) == {name: value for name, value in whole.items() if missing not in NEEDS[name]}


@pytest.mark.parametrize("apex", [[0, 0], [25, 0], [-10, 0]])
def test_a_frog_without_a_side_gives_no_figures(apex: list[float]) -> None:
    """With the apex in its base, or in line with its corners, there is no axis, or no telling of sides."""
    assert sole_figures(with_frog(ellipse(60, 65), frog_apex=[apex])) == {}


def test_a_flat_wall_gives_no_numbers() -> None:
    """Picks all on one line across enclose no area: shares are no number, and nothing fails."""
    flat = np.stack([np.linspace(-50, 50, 12), np.zeros(12)], axis=-1)

    assert np.isnan(figures(with_frog(flat))["medial_area_percent"])


def test_nothing_behind_the_widest_place() -> None:
    """Widest behind the buttresses: no relation of toe part to heel part."""
    wedge = np.array([[-50.0, -60], [0, 60], [50, -60]])
    heels = {"buttress_medial": [[-5.0, -40.0]], "buttress_lateral": [[5.0, -40.0]]}

    assert np.isnan(figures(with_frog(wedge, **heels))["toe_to_heel_part"])


def test_all_draws_at_once() -> None:
    """One call for all draws gives what one call for each gives."""
    draws = jittered(HIND.points(), draws=6)
    together = sole_figures(draws)

    for draw in range(6):
        alone = figures({name: spots[draw] for name, spots in draws.items()})
        assert {name: float(values[draw]) for name, values in together.items()} == pytest.approx(alone)


def test_the_hand_hardly_moves_the_figures() -> None:
    """With 0.3 mm a pick the mean of the draws is the plain reading, and the widest place holds to 1 % of it."""
    plain, draws = figures(FORE.points()), sole_figures(jittered(FORE.points()))

    assert draws["sole_width_mm"].mean() == pytest.approx(plain["sole_width_mm"], abs=0.1)
    assert draws["sole_length_mm"].mean() == pytest.approx(plain["sole_length_mm"], abs=0.25)
    assert draws["widest_from_toe_percent"].mean() == pytest.approx(plain["widest_from_toe_percent"], abs=0.3)
    assert draws["widest_from_toe_percent"].std() < 1

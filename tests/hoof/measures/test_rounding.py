"""The step to which figures were typed, and what it adds to an error."""

from __future__ import annotations

import math

import numpy as np
import pytest

from recordgen.hoof.context import Context
from recordgen.hoof.measures.rounding import rounding_sd, rounding_steps, significant, step_of
from tests.support.horse_records import MEASURES, PRACTICE, REFERENCE, WAYS, measured, toes, visit


@pytest.mark.parametrize(
    ("figures", "step"),
    [
        ([], 0),
        ([81], 1),
        ([80, 80, 80, 80, 80, 80], 1),
        ([81, 84, 79], 1),
        ([80, 85, 75, 90, 95], 5),
        ([80, 70, 90, 60], 10),
        ([82, 84, 86, 88, 80, 78, 76, 90, 92, 94], 2),
        ([82, 84, 86], 1),
        ([50.5, 51, 49.5], 0.5),
        ([50.1, 51, 49.5], 0.1),
        ([25.4 * 3.25, 25.4 * 3.125, 25.4 * 3.375, 25.4 * 3.5, 25.4 * 3.75, 25.4 * 3.625], 25.4 / 8),
        ([25.4 * 3.25, 25.4 * 3.0625], 25.4 / 16),
        ([*range(70, 90), 82.55], 1),
        ([math.pi, math.e], 0),
    ],
)
def test_the_step_is_seen_in_the_figures(figures: list[float], step: float) -> None:
    """A coarse one is believed where whole figures would hardly keep to it by chance."""
    assert step_of(figures) == step


@pytest.mark.parametrize("step", [1, 5])
def test_rounding_adds_what_a_simulation_shows(step: float) -> None:
    """The spread of what rounding takes away or adds. Source: JCGM 100:2008 (GUM), section F.2.2.1."""
    true = np.random.default_rng(1).uniform(0, 100, 100_000)
    rounded = step * np.round(true / step)

    assert rounding_sd(step) == pytest.approx(np.std(rounded - true), rel=0.01)


def test_each_measure_and_way_has_its_own_step() -> None:
    """Degrees read to halves, millimetres to fives."""
    taken = [
        visit(f"2026-0{month}-01", left_fore={"after": {"toe_length": 70 + 5 * month, "toe_angle": 50 + month / 2}})
        for month in range(1, 7)
    ]

    assert rounding_steps(WAYS.measures, {}, taken) == {("toe_length", "rule"): 5, ("toe_angle", "protractor"): 0.5}


def test_rounding_is_counted_in_a_change() -> None:
    """Readings to five millimetres may differ by more than such to one."""
    taken = [(f"2026-0{month}-01", None, 70.0 + 5 * month) for month in range(1, 7)]
    sd = math.hypot(1, 5 / math.sqrt(12))

    assert measured("toe_length", *toes(*taken)).smallest_real_change == pytest.approx(1.96 * math.sqrt(2) * sd)


def test_the_practice_s_own_error_holds_its_rounding_already() -> None:
    """It was found in figures that were rounded when they were typed."""
    again = {"before": {"toe_length": 90}, "repeat": {"before": [{"toe_length": 91}]}}
    visits = [visit(f"2026-{month:02}-14", left_fore=again) for month in range(1, 12)]
    by = Context.of(PRACTICE, REFERENCE, visits)

    assert measured("toe_length", *visits, by=by).smallest_real_size == pytest.approx(1.96 * math.sqrt(0.5))


def test_tables_are_left_as_they_are() -> None:
    """Only the horse's own copy counts rounding."""
    WAYS.with_rounding_of(toes(("2026-01-01", 90, 80)))

    assert MEASURES["toe_length"].words.methods["rule"].sd == 1


@pytest.mark.parametrize(("value", "told"), [(2.77186, 2.77), (0.0541, 0.0541), (0.00123456, 0.00123), (12.345, 12.3)])
def test_errors_are_given_on_with_three_figures(value: float, told: float) -> None:
    """Three that count, wherever the point stands."""
    assert significant(value) == told

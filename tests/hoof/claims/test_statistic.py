"""The weight of a step or a ramp against no change, and what chance alone reaches."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.stats import norm

from recordgen.hoof.claims.null_table import LOG_RATIOS, READINGS, ROWS, chance
from recordgen.hoof.claims.statistic import EXPECTED_SIZE, levels_of, log_ratio, shapes_of
from tests.null_table.simulated import chances

UNEVEN_DAYS = (0, 20, 80, 120, 150, 200, 380, 390, 440, 500, 560, 600)
UNEVEN_SDS = (2.0, 1.0, 1.0, 3.0, 1.0, 1.0, 1.0, 0.2, 0.2, 0.2, 0.2, 0.2)


@pytest.mark.parametrize("size", [0.0, 0.5, 1.0, 2.0, 3.0, 4.0, 5.0])
def test_two_readings_are_judged_by_their_difference(size: float) -> None:
    """With two readings the chance is that of the normal distribution. Source: scipy.stats.norm."""
    assert chance(log_ratio(np.array([size])), 2) == pytest.approx(2 * norm.sf(size), rel=0.05)


@pytest.mark.parametrize("ratio", LOG_RATIOS)
def test_each_column_of_the_table_stands_for_its_ratio(ratio: float) -> None:
    """Two readings give the ratio z**2 / 2 x 16/17 - log(17) / 2, so each column's chance is known exactly.

    Within the simulated table's own error. Source: the ratio of two normal densities; scipy.stats.norm.
    """
    size = (2 * (ratio + 0.5 * np.log(1 + EXPECTED_SIZE**2)) * (1 + EXPECTED_SIZE**2) / EXPECTED_SIZE**2) ** 0.5

    assert np.log10(chance(np.array(ratio), 2)) == pytest.approx(np.log10(2 * norm.sf(size)), abs=0.015)


@pytest.mark.parametrize("size", [0.5, 1.0, 2.0, 3.0])
def test_one_reading_is_judged_by_its_distance_from_nothing(size: float) -> None:
    """A single difference from nothing is one of two in the table. Source: scipy.stats.norm."""
    shapes = levels_of([2.0])
    sizes = shapes.contrasts @ np.array([2 * size])

    assert chance(log_ratio(sizes), shapes.readings) == pytest.approx(2 * norm.sf(size), rel=0.05)


@pytest.mark.parametrize("count", [3, 6, 12])
def test_the_size_of_a_step_is_the_difference_of_its_means(count: int) -> None:
    """Mean after less mean before, over its standard error: the two-sample statistic with known errors."""
    readings = np.random.default_rng(count).normal(80, 1, count)
    shapes = shapes_of(range(count), [2.0] * count)
    sizes = shapes.contrasts @ readings

    for size, at, ramp in zip(sizes, shapes.starts, shapes.ramp, strict=True):
        if not ramp:
            error = 2 * (1 / at + 1 / (count - at)) ** 0.5
            assert size == pytest.approx((readings[at:].mean() - readings[:at].mean()) / error)


def test_a_trend_over_all_readings_is_the_slope_of_least_squares() -> None:
    """The ramp from the first reading on is a straight line, weighed by the errors. Source: numpy.polyfit."""
    readings = np.random.default_rng(3).normal(80, 1, len(UNEVEN_DAYS))
    shapes = shapes_of(UNEVEN_DAYS, UNEVEN_SDS)
    whole = int(np.flatnonzero(shapes.ramp & (shapes.starts == 0))[0])
    (slope, _), spread = np.polyfit(UNEVEN_DAYS, readings, 1, w=1 / np.array(UNEVEN_SDS), cov="unscaled")

    assert shapes.errors[whole] == pytest.approx(spread[0, 0] ** 0.5)
    assert (shapes.contrasts @ readings)[whole] * shapes.errors[whole] == pytest.approx(slope)


@pytest.mark.parametrize("count", [4, 8])
def test_the_averaged_ratio_is_that_of_the_densities(count: int) -> None:
    """With one shape the ratio is that of two normal densities of its size. Source: scipy.stats.norm."""
    size = np.linspace(-5, 5, count)
    densities = norm.logpdf(size, scale=(1 + EXPECTED_SIZE**2) ** 0.5) - norm.logpdf(size)

    assert log_ratio(size[:, None]) == pytest.approx(densities)


@pytest.mark.parametrize("least", [0.1, 0.01])
@pytest.mark.parametrize("count", [5, 9])
def test_the_table_agrees_with_permutations(count: int, least: float) -> None:
    """Without a change each order of a series is as likely: of the orders of many series the share told reach so far.

    Source: permutation test; 40 orders each of 4,000 series. A single series' orders know its own spread, which the
    table does not, so that they are taken together.
    """
    rng = np.random.default_rng(count)
    series = rng.standard_normal((4000, 1, count))
    orders = rng.permuted(np.broadcast_to(series, (4000, 40, count)), axis=-1)
    reached = chance(log_ratio(orders @ shapes_of(range(count), [1.0] * count).contrasts.T), count) <= least

    assert reached.mean() == pytest.approx(least, rel=0.15)


@pytest.mark.parametrize("least", [0.05, 0.01, 0.001])
@pytest.mark.parametrize(
    ("days", "sds"), [(range(6), [1.0] * 6), (UNEVEN_DAYS, UNEVEN_SDS), ((0, 1, 365), (2, 0.2, 0.2))]
)
def test_the_table_holds_for_uneven_gaps_and_errors(least: float, days: list[int], sds: list[float]) -> None:
    """Of series without a change about the share told by the table reach so far, however they were read."""
    shapes = shapes_of(list(days), sds)
    readings = np.random.default_rng(7).standard_normal((200_000, len(sds))) * np.array(sds)
    found = np.mean(chance(log_ratio(readings @ shapes.contrasts.T), shapes.readings) <= least)

    assert found == pytest.approx(least, rel=0.25)


@pytest.mark.parametrize("row", [0, 1, 6])
def test_the_stored_table_is_what_the_simulation_gives(row: int) -> None:
    """`python -m tests.null_table` writes the same again; here with fewer draws."""
    stored = [float(value) for value in ROWS.strip().split("\n")[row].split()]
    anew = -np.log10(chances(READINGS[row], np.array(LOG_RATIOS), draws=20_000))

    assert stored == pytest.approx(anew, abs=0.05)


def test_readings_of_two_ways_are_not_compared() -> None:
    """A step just where another way was taken up is no change that anybody could see."""
    shapes = shapes_of(range(4), [1.0] * 4, ["rule", "rule", "gauge", "gauge"])
    sizes = shapes.contrasts @ np.array([80.0, 80.0, 95.0, 95.0])

    assert np.abs(sizes).max() < 1e-9
    assert 2 not in shapes.starts[~shapes.ramp]


@pytest.mark.parametrize(("ways", "readings"), [("", 4), ("aaaa", 4), ("aabb", 3), ("abca", 2), ("abcd", 1)])
def test_each_further_way_takes_a_reading(ways: str, readings: int) -> None:
    """Its level has to be told too, as each level of a one-way layout takes a degree of freedom."""
    assert shapes_of([0, 42, 84, 126], [1.0] * 4, list(ways)).readings == readings


@pytest.mark.parametrize("ways", [["rule"], ["rule", "gauge"]])
def test_one_reading_of_each_way_shows_no_change(ways: list[str]) -> None:
    """There is nothing to compare, and chance is all that may speak."""
    shapes = shapes_of(range(len(ways)), [1.0] * len(ways), ways)

    assert shapes.contrasts.shape == (0, len(ways))
    assert chance(log_ratio(np.zeros(0)), shapes.readings) == 1


def test_each_reading_needs_a_day_an_error_and_a_way() -> None:
    """Unequal lengths are refused."""
    with pytest.raises(ValueError, match="one day, one error and one way"):
        shapes_of([0, 1], [1.0], ["rule", "rule"])

"""Net growth, cycle by cycle."""

from __future__ import annotations

import statistics
from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import stats  # type: ignore[import-untyped]

from recordgen.hoof.growth import Cycle, Growth, cycles, growth, growth_readings, rate_mm_per_day, wear_mm
from recordgen.hoof.series import Reading
from recordgen.records.visit import Visit
from tests.hoof.building import summary, toes, visit

DAY = date(2026, 3, 1)


def reading(week: int, before: float | None, after: float | None) -> Reading:
    """A reading some weeks after the first."""
    return Reading(DAY + timedelta(weeks=week), before, after)


def grown(*visits: Visit) -> list[tuple[str, str, float]]:
    """First day, last day and growth of the cycles of the left fore."""
    found = cycles(growth_readings("left_fore", visits))
    return [(one.start.isoformat(), one.end.isoformat(), one.growth_mm) for one in found]


def test_from_after_one_trim_to_before_the_next() -> None:
    """What the trim took is no growth."""
    assert grown(*toes(("2026-03-01", 90, 80), ("2026-04-12", 92, 81), ("2026-05-24", 92, 80))) == [
        ("2026-03-01", "2026-04-12", 12),
        ("2026-04-12", "2026-05-24", 11),
    ]


def test_a_cycle_counts_its_days() -> None:
    """Twelve millimetres in six weeks."""
    cycle = Cycle(date(2026, 3, 1), date(2026, 4, 12), 12)

    assert cycle.days == 42
    assert cycle.mm_per_day == pytest.approx(12 / 42)


@pytest.mark.parametrize(
    "taken",
    [
        [("2026-03-01", 90, None), ("2026-04-12", 92, 81)],
        [("2026-03-01", 90, 80), ("2026-04-12", None, 81)],
        [("2026-03-01", 90, 80)],
    ],
)
def test_a_cycle_needs_both_ends(taken: list[tuple[str, float | None, float | None]]) -> None:
    """Without the length after the one trim and before the next there is none."""
    assert grown(*toes(*taken)) == []


@pytest.mark.parametrize("between", [{}, {"left_fore": {"landing": "flat"}}, {"right_fore": {}}])
def test_a_trim_without_the_length_breaks_the_cycle(between: dict[str, object]) -> None:
    """Nobody knows how much was taken; no cycle runs across it."""
    first, last = toes(("2026-03-01", 90, 80), ("2026-05-24", 100, 80))

    assert grown(first, visit("2026-04-12", **between), last) == []
    assert grown(first, last) == [("2026-03-01", "2026-05-24", 20)]


def test_a_look_without_a_trim_passes_the_length_on() -> None:
    """What was found is what stayed: two cycles, one on each side of it."""
    first, last = toes(("2026-03-01", 90, 80), ("2026-05-24", 102, 80))
    (look,) = toes(("2026-04-12", 91, None), trimmed=False)

    assert grown(first, look, last) == [
        ("2026-03-01", "2026-04-12", 11),
        ("2026-04-12", "2026-05-24", 11),
    ]


@pytest.mark.parametrize("seen", [{}, {"left_fore": {"landing": "flat"}}])
def test_a_look_that_tells_no_length_is_passed_over(seen: dict[str, object]) -> None:
    """Nothing was taken, so the cycle runs on."""
    first, last = toes(("2026-03-01", 90, 80), ("2026-05-24", 102, 80))

    assert grown(first, visit("2026-04-12", trimmed=False, **seen), last) == [("2026-03-01", "2026-05-24", 22)]


def test_two_visits_on_one_day() -> None:
    """Measured in the morning, trimmed and measured in the evening: the day ends one cycle and begins the next."""
    taken = [("2026-03-01", 90, 80), ("2026-04-12", 91, None), ("2026-04-12", None, 79), ("2026-05-24", 92, 80)]

    assert grown(*toes(*taken)) == [("2026-03-01", "2026-04-12", 11), ("2026-04-12", "2026-05-24", 13)]


def test_a_day_is_no_cycle() -> None:
    """Trimmed twice in one day: nothing grew between, and nothing is divided by no days."""
    taken = toes(("2026-04-12", 91, 82), ("2026-04-12", 82, 79), ("2026-05-24", 92, 80))

    assert grown(*taken) == [("2026-04-12", "2026-05-24", 13)]


@pytest.mark.parametrize(("now", "expected"), [(77.3, 1), (77.2, 0), (60, 0)])
def test_a_wall_that_became_shorter_is_left_out(now: float, expected: int) -> None:
    """Up to 2.77 mm shorter may be the error of two readings; more is a slip."""
    assert len(cycles([reading(0, None, 80), reading(6, now, None)])) == expected


def test_growth_is_the_median_with_its_range() -> None:
    """One odd cycle moves the range and not the middle."""
    taken = [reading(0, None, 80), reading(1, 82.1, 80), reading(2, 82.8, 80), reading(3, 90, 80)]
    found = growth(taken)

    assert found is not None
    assert [found.low, found.mm_per_day, found.high] == pytest.approx([0.3, 0.4, 10 / 7])
    assert found.cycles == 3


def test_the_median_of_an_even_count_lies_between_the_middle_two() -> None:
    """As numpy has it."""
    taken = [reading(week, 80 + extra, 80) for week, extra in enumerate([0, 1, 2, 4, 9])]
    found = growth(taken)

    assert found is not None
    assert found.mm_per_day == pytest.approx(float(np.median([1, 2, 4, 9])) / 7)


def test_no_growth_without_a_cycle() -> None:
    """A first visit tells a length and no rate."""
    assert growth([]) is None
    assert growth([reading(0, 88, 80)]) is None


@given(st.lists(st.floats(0, 20), min_size=1, max_size=12))
def test_growth_lies_between_its_slowest_and_fastest_cycle(grew: list[float]) -> None:
    """The same rates, computed outside: median, least and most."""
    found = growth([reading(0, None, 80), *(reading(week + 1, 80 + mm, 80) for week, mm in enumerate(grew))])
    rates = [mm / 7 for mm in grew]

    assert found is not None
    assert found.low <= found.mm_per_day <= found.high
    assert found.cycles == len(rates)
    assert [found.low, found.high] == pytest.approx([min(rates), max(rates)])
    assert found.mm_per_day == pytest.approx(statistics.median(rates))


def test_a_steady_foot_grows_at_the_slope_of_its_lengths() -> None:
    """Trims taken back, the lengths of a foot that grows evenly lie on a line; its slope is the rate."""
    taken = [("2026-03-01", 80.0, 80.0), ("2026-03-31", 89.0, 82.0), ("2026-05-20", 97.0, 80.0)]
    line = stats.linregress([0, 30, 80], [80, 89, 104])

    found = summary(*toes(*taken)).feet["left_fore"].growth

    assert found is not None
    assert found.mm_per_day == pytest.approx(line.slope)


def test_feet_grow_apart() -> None:
    """Each foot has cycles of its own; one that was measured once has none."""
    visits = [
        visit("2026-03-01", left_fore={"after": {"toe_length": 80}}, right_fore={"after": {"toe_length": 80}}),
        visit("2026-04-12", left_fore={"before": {"toe_length": 90}}, right_hind={"before": {"toe_length": 90}}),
    ]
    feet = summary(*visits).feet

    assert feet["left_fore"].growth == Growth(10 / 42, 10 / 42, 10 / 42, 1)
    assert feet["right_fore"].growth is None
    assert feet["right_hind"].growth is None


@pytest.mark.parametrize("days", [0, -1])
def test_a_rate_needs_days_in_order(days: int) -> None:
    """The same day, and swapped days, are refused."""
    with pytest.raises(ValueError, match="two days in order"):
        rate_mm_per_day(20, 33, days)


@given(st.floats(0, 40), st.floats(50, 120), st.floats(0, 30), st.floats(0, 30))
def test_wear_is_what_growth_length_and_trim_leave_over(grew: float, then: float, wore: float, took: float) -> None:
    """A wall that grew, wore and was trimmed gives its wear back."""
    now = then + grew - wore - took

    assert wear_mm(grew, then, now, took) == pytest.approx(wore, abs=1e-9)

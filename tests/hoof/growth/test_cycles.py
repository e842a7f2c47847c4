"""From visits to cycles: by toe length, by a mark, what wore off, and what is named rather than used."""

from __future__ import annotations

from datetime import date, timedelta
from statistics import NormalDist

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.hoof.growth.cycles import (
    Cycle,
    mark_cycles,
    net_cycles,
    rate_mm_per_day,
    split_doubted,
    toe_lengths,
    wear,
    wear_mm,
)
from recordgen.hoof.growth.rate import Prior
from recordgen.records.models.visit import Visit
from tests.support.horse_records import toes, visit

ADULT = Prior(0.26, 0.07)
LONGEST = 112


def grown(*visits: Visit) -> list[tuple[str, str, float]]:
    """First day, last day and growth of the cycles of the left fore."""
    found = net_cycles("left_fore", visits)
    return [(one.start.isoformat(), one.end.isoformat(), one.growth_mm) for one in found]


def test_from_after_one_trim_to_before_the_next() -> None:
    """Horn that the trim took is no growth."""
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
    """The growth found is what stayed: two cycles, one on each side of it."""
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


def even(*growth: float, days: int = 42) -> list[Cycle]:
    """Cycles one after the other, by their growth in mm."""
    start = date(2025, 1, 1)
    return [
        Cycle(start + timedelta(days=days * n), start + timedelta(days=days * (n + 1)), mm)
        for n, mm in enumerate(growth)
    ]


def doubts(*growth: float, days: int = 42) -> list[tuple[int, str]]:
    """The number of each cycle that is named, and why."""
    cycles = even(*growth, days=days)
    return [(cycles.index(one.cycle), one.why) for one in split_doubted(cycles, ADULT, LONGEST)[1]]


@pytest.mark.parametrize(
    ("growth", "expected"),
    [
        ([11, 12, 10, 21, 11], [(3, "too fast")]),
        ([11, 12, 10, 1, 11, 12], [(3, "too slow")]),
        ([11, -9, 10, 31, 11, 12], [(1, "too slow"), (3, "too fast")]),
        ([11, 12, 10, 17, 6, 12], []),
        ([32], [(0, "too fast")]),
        ([-8, 11], [(0, "too slow")]),
        ([18], []),
    ],
)
def test_a_slip_is_named_and_not_averaged_in(growth: list[float], expected: list[tuple[int, str]]) -> None:
    """A wrong foot or a slip of a centimetre is far from the others; what life does is not.

    One or two cycles have no others; they are held against what is usual for the class.
    """
    assert doubts(*growth) == expected


def test_a_slip_lies_four_standard_deviations_off() -> None:
    """With one cycle: of two readings and life between, 2 mm in six weeks, and of what horses of its class differ by.

    Common practice, no source: four of them. They add in squares, as the statistics module adds normal distributions.
    """
    middle, spread = 42 * ADULT.mm_per_day, (NormalDist(0, 2.0) + NormalDist(0, 42 * ADULT.sd)).stdev

    assert doubts(middle + 3.99 * spread) == doubts(middle - 3.99 * spread) == []
    assert doubts(middle + 4.01 * spread) == [(0, "too fast")]
    assert doubts(middle - 4.01 * spread) == [(0, "too slow")]


def test_two_slips_do_not_hide_each_other() -> None:
    """The middle of the cycles is told by a median, which two of eight do not move."""
    assert doubts(11, 12, 31, 10, 31, 11, 12, 11) == [(2, "too fast"), (4, "too fast")]


def test_a_foot_that_hardly_grows_is_no_slip() -> None:
    """Horses that wear as much as they grow are told as they are, below nought too."""
    assert doubts(0, -1, 1, 0, -2) == []


def test_a_cycle_over_a_gap_of_months_is_not_used() -> None:
    """Somebody else may have trimmed meanwhile."""
    used, named = split_doubted([*even(11, 12), Cycle(date(2025, 6, 1), date(2026, 6, 1), 95)], ADULT, LONGEST)

    assert len(used) == 2
    assert [one.why for one in named] == ["too long"]


def test_two_visits_in_a_week_weigh_little() -> None:
    """A cycle of three days is used; its growth of two millimetres is no growth of 20 mm a month."""
    assert doubts(11, 12, 11, days=42) == []
    used, named = split_doubted([*even(11, 12, 11), Cycle(date(2026, 1, 1), date(2026, 1, 4), 2)], ADULT, LONGEST)
    assert (len(used), named) == (4, ())


@given(st.lists(st.tuples(st.integers(1, 400), st.floats(-100, 100)), max_size=15))
def test_every_cycle_is_either_used_or_named(taken: list[tuple[int, float]]) -> None:
    """Nothing is lost, nothing told twice."""
    cycles, day = [], date(2020, 1, 1)
    for days, growth in taken:
        cycles.append(Cycle(day, day + timedelta(days=days), growth))
        day += timedelta(days=days)
    used, named = split_doubted(cycles, ADULT, LONGEST)

    assert sorted([*used, *(one.cycle for one in named)], key=lambda cycle: cycle.end) == cycles


def marked(*taken: tuple[str, float, float, float], **values: object) -> list[Visit]:
    """Visits of the left fore: day, mm of the mark below the hairline, toe before and after the trim."""
    return [
        visit(
            day,
            left_fore={
                "before": {"toe_length": before},
                "after": {"toe_length": after},
                "marks": [{"kind": "growth mark", "zone": "toe", "below_hairline": below}],
            },
            **values,
        )
        for day, below, before, after in taken
    ]


def test_a_growth_mark_shows_growth_and_with_the_length_what_wore_off() -> None:
    """The mark came down 13 mm while the toe grew by 9: four wore off.

    Derived from: growth is the mark's way; wear is growth less the change in length.
    """
    visits = marked(("2026-03-01", 15, 88, 80), ("2026-04-12", 28, 89, 80))

    assert [cycle.growth_mm for cycle in mark_cycles("left_fore", visits)] == [13]
    assert [(one.growth_mm, one.wear_mm) for one in wear("left_fore", visits)] == [(13, 4)]


def test_a_mark_that_stands_higher_is_a_new_one() -> None:
    """The old one was trimmed away; up to two millimetres may be the reading."""
    new = marked(("2026-03-01", 75, 88, 80), ("2026-04-12", 12, 89, 80), ("2026-05-24", 25, 89, 80))
    read = marked(("2026-03-01", 15, 88, 80), ("2026-04-12", 13, 89, 80))

    assert [(cycle.start.month, cycle.growth_mm) for cycle in mark_cycles("left_fore", new)] == [(4, 13)]
    assert [cycle.growth_mm for cycle in mark_cycles("left_fore", read)] == [-2]


def test_boots_between_two_visits_exclude_wear() -> None:
    """Wear in boots says nothing about bare feet; the growth stays."""
    visits = marked(("2026-03-01", 15, 88, 80))
    visits += marked(("2026-04-12", 28, 92, 80), keeping={"boots": "hoof boots for every ride"})

    assert wear("left_fore", visits) == ()
    assert [cycle.boots for cycle in mark_cycles("left_fore", visits)] == [True]
    assert [cycle.boots for cycle in net_cycles("left_fore", visits)] == [True]


def test_only_growth_marks_measure_growth() -> None:
    """A crack's end may climb, and one ring looks like another."""
    ring = {"marks": [{"kind": "event ring", "below_hairline": 10}]}

    assert mark_cycles("left_fore", [visit("2026-03-01", left_fore=ring), visit("2026-04-12", left_fore=ring)]) == ()


def test_short_cycles_are_known_as_such() -> None:
    """Below four weeks the error of two readings is a fifth of the growth or more."""
    assert [Cycle(date(2026, 1, 1), date(2026, 1, 1) + timedelta(days=days), 5).short for days in (27, 28)] == [
        True,
        False,
    ]


def test_readings_of_a_foot_never_looked_at() -> None:
    """A trim without it breaks its cycles, and that is all."""
    assert [reading.before for reading in toe_lengths("right_hind", toes(("2026-03-01", 90, 80)))] == [None]

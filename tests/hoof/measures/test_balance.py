"""Left compared with right of a pair of feet."""

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.measures.balance import PAIRED_MEASURES, PairDifference
from tests.support.horse_records import MEASURES, summary, visit


def pairs(*visits: Any) -> dict[tuple[str, str], PairDifference]:
    """The differences of a horse's pairs, by pair and measure."""
    return {(found.pair, found.measure): found for found in summary(*visits).pairs}


def after(**values: float) -> dict[str, Any]:
    """A foot measured after the trim."""
    return {"after": values}


def test_left_less_right() -> None:
    """The sign stays: a shorter left is below zero."""
    found = pairs(visit("2026-10-14", left_fore=after(toe_length=80), right_fore=after(toe_length=84)))

    assert list(found) == [("fore", "toe_length")]
    assert found["fore", "toe_length"].difference == -4


@pytest.mark.parametrize(("right", "expected"), [(82, False), (85, True)])
def test_a_difference_must_be_more_than_chance_gives(right: float, expected: bool) -> None:
    """Of one visit with a rule, 2.9 mm; smaller ones are how readings differ."""
    found = pairs(visit("2026-10-14", left_fore=after(toe_length=80), right_fore=after(toe_length=right)))

    assert found["fore", "toe_length"].real is expected


def test_the_errors_of_both_feet_make_the_interval_of_their_difference() -> None:
    """Their variances add up (Bland & Altman 1999); what is usual of such differences narrows it a little."""
    found = pairs(visit("2026-10-14", left_fore=after(toe_length=80), right_fore=after(toe_length=100)))
    one = found["fore", "toe_length"]

    assert (one.high - one.low) / 2 == pytest.approx(one.smallest_real_difference, rel=0.05)


def test_a_small_difference_that_stays_is_told_in_time() -> None:
    """Two millimetres at six visits are more than six times the error of their mean."""
    days = [f"2026-0{month}-14" for month in range(1, 7)]
    both = [visit(day, left_fore=after(toe_length=80), right_fore=after(toe_length=82)) for day in days]
    told = pairs(*both)["fore", "toe_length"]

    assert (pairs(both[0])["fore", "toe_length"].real, told.real) == (False, True)
    assert told.low < -2 < told.high < 0


def test_a_difference_that_was_mended_is_not_told() -> None:
    """Feet that stood apart and were trimmed level since, count from then on alone."""
    days = {"2026-01-14": 90, "2026-02-28": 90, "2026-04-14": 90, "2026-06-14": 80}
    both = [visit(day, left_fore=after(toe_length=80), right_fore=after(toe_length=mm)) for day, mm in days.items()]

    assert [pairs(*both[:count])["fore", "toe_length"].real for count in (3, 4)] == [True, False]


def test_feet_measured_in_two_ways_are_not_compared() -> None:
    """Rule and photograph may differ by themselves."""
    ways = {"methods": {"heel_height_medial": "photograph"}}
    left, right = ({"after": {"heel_height": {side: 30}}} for side in ("medial", "lateral"))

    assert pairs(visit("2026-10-14", left_fore=left, right_fore=right, **ways)) == {}


def test_fore_is_not_compared_with_hind() -> None:
    """One left fore and one right hind make no pair."""
    assert not pairs(visit("2026-10-14", left_fore=after(toe_length=80), right_hind=after(toe_length=70)))


def test_feet_of_different_visits_are_not_compared() -> None:
    """Weeks of growth would pass for a difference between left and right."""
    then = visit("2026-09-02", left_fore=after(toe_length=80), left_hind=after(toe_length=78))
    now = visit("2026-10-14", right_fore=after(toe_length=90))

    assert not pairs(then, now)


def test_before_the_trim_is_not_compared_with_after_it() -> None:
    """The trim would pass for a difference between left and right."""
    right = {"before": {"toe_length": 90}}

    assert not pairs(visit("2026-10-14", left_fore=after(toe_length=80), right_fore=right))


def test_an_earlier_visit_at_which_both_were_measured_still_counts() -> None:
    """A value left out at the last visit is compared as it last stood."""
    both = visit("2026-09-02", left_fore=after(toe_angle=50), right_fore=after(toe_angle=54))
    last = visit("2026-10-14", left_fore=after(toe_length=80), right_fore=after(toe_length=80))

    assert set(pairs(both, last)) == {("fore", "toe_angle"), ("fore", "toe_length")}


def test_hind_feet_are_a_pair_too() -> None:
    """Both readings stand beside what two readings may differ by."""
    last = visit("2026-10-14", left_hind=after(toe_angle=50.5), right_hind=after(toe_angle=51))
    found = pairs(last)["hind", "toe_angle"]

    assert (found.left, found.right, found.day) == (50.5, 51, date(2026, 10, 14))
    assert found.smallest_real_difference == pytest.approx(1.96 * (2 * (1 + 0.25 / 12)) ** 0.5)


def test_only_measures_of_the_table_are_paired() -> None:
    """Each of them is a measure; of others, those that tracings alone tell."""
    assert set(PAIRED_MEASURES) <= set(MEASURES)
    frogs = ({"frog": {"width": width, "length": 80}} for width in (50, 60))

    assert pairs(visit("2026-10-14", **dict(zip(("left_fore", "right_fore"), frogs, strict=True)))) == {}

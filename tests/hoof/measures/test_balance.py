"""Left compared with right of a pair of feet."""

from typing import Any

import pytest

from recordgen.hoof.measures.balance import PAIRED_MEASURES, PairDifference, pair_differences
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


@pytest.mark.parametrize(("right", "expected"), [(82.5, False), (83.0, True)])
def test_a_difference_of_two_readings_must_exceed_their_error(right: float, expected: bool) -> None:
    """With a rule, 1.96 times the root of two: 2.77 mm."""
    found = pairs(visit("2026-10-14", left_fore=after(toe_length=80), right_fore=after(toe_length=right)))

    assert found["fore", "toe_length"].real is expected


def test_exactly_the_smallest_difference_is_real() -> None:
    """As with a change through time."""
    assert PairDifference("fore", "toe_length", 83, 80, 3).real
    assert PairDifference("fore", "toe_length", 80, 83, 3).real
    assert not PairDifference("fore", "toe_length", 82.9, 80, 3).real


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
    """What was left out at the last visit is compared as it last stood."""
    both = visit("2026-09-02", left_fore=after(toe_angle=50), right_fore=after(toe_angle=54))
    last = visit("2026-10-14", left_fore=after(toe_length=80), right_fore=after(toe_length=80))

    assert set(pairs(both, last)) == {("fore", "toe_angle"), ("fore", "toe_length")}


def test_hind_feet_are_a_pair_too() -> None:
    """Both readings stand beside the smallest difference that is real."""
    found = pair_differences({"left_hind": {"toe_angle": 50}, "right_hind": {"toe_angle": 51}}, {"toe_angle": 2.77})

    assert found == (PairDifference("hind", "toe_angle", 50, 51, 2.77),)


def test_only_measures_of_the_table_are_paired() -> None:
    """Each of them is a measure; others are left out."""
    assert set(PAIRED_MEASURES) <= set(MEASURES)
    latest = {"left_fore": {"frog_width": 50.0}, "right_fore": {"frog_width": 60.0}}
    assert pair_differences(latest, {"frog_width": 1}) == ()  # type: ignore[arg-type]

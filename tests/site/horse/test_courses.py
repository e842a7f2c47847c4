"""Toe lengths in per cent of a field."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.growth.season import growing_days
from recordgen.site.horse.courses import DAYS_AHEAD, Courses, toe_courses
from tests.support.horse_records import summary, toes

TRIMS = [(f"2026-{month:02}-01", 84.0, 74.0) for month in range(5, 12)]
TODAY = date(2026, 12, 1)


def courses(*trims: tuple[str, float | None, float | None], **values: Any) -> Courses:
    """The courses of a horse whose left fore was measured."""
    found = toe_courses(summary(*toes(*trims), today=TODAY, **values))
    assert found is not None
    return found


def test_one_visit_is_no_course() -> None:
    """A dot tells no more than its figure; a horse without visits has none either."""
    assert toe_courses(summary(*toes(*TRIMS[:1]))) is None
    assert toe_courses(summary()) is None


def test_the_line_goes_from_before_to_after_and_stays_in_the_field() -> None:
    """A zigzag in the order in which it was measured; 100 is the right and the lower edge."""
    one = courses(*TRIMS).by_foot["left_fore"]

    assert len(one.line) == 2 * len(TRIMS)
    assert one.line[0][0] == one.line[1][0] == 0
    assert one.line[0][1] < one.line[1][1]
    assert all(0 <= x <= 100 and 0 <= y <= 100 for x, y in (*one.line, *one.after))


def test_all_feet_share_one_scale_in_tens() -> None:
    """From a round number below the shortest to one above the longest."""
    found = courses(*TRIMS)

    assert (found.low_mm % 10, found.high_mm % 10) == (0, 0)
    assert found.low_mm <= 74
    assert found.high_mm >= 84


def test_growth_is_expected_to_today_and_beyond() -> None:
    """By the foot's own rate and season since the last trim, past the latest day of the window."""
    horse = summary(*toes(*TRIMS), today=TODAY)
    found = toe_courses(horse)
    assert found is not None
    assert horse.due is not None
    expected = found.by_foot["left_fore"].expected
    assert expected is not None
    grown = growing_days(horse.growth.season, date(2026, 11, 1), TODAY)

    assert expected.by_today_mm == pytest.approx(74 + horse.growth.feet["left_fore"].net.mean * grown)
    assert (found.last - max(TODAY, horse.due.latest)).days == DAYS_AHEAD
    assert expected.middle[-1][0] == 100


def test_a_horse_that_left_is_expected_to_do_nothing() -> None:
    """Neither growth nor today is drawn."""
    found = courses(*TRIMS, left={"date": "2026-11-20"})

    assert found.by_foot["left_fore"].expected is None
    assert found.today is None


def test_a_foot_not_measured_at_the_last_visit_is_not_told_forward() -> None:
    """It was trimmed since, so that nobody knows how long it is."""
    *earlier, _ = TRIMS
    found = courses(*earlier, ("2026-11-20", None, None))

    assert found.by_foot["left_fore"].expected is None


def test_what_is_older_than_a_year_is_left_to_the_folded_pictures() -> None:
    """The first day shown lies within about thirteen months of the last visit."""
    found = courses(("2024-05-01", 90, 80), *TRIMS)

    assert found.first == date(2026, 5, 1)

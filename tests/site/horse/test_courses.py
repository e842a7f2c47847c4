"""Toe lengths of the last year and what is expected since."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.growth.season import growing_days
from recordgen.site.drawings.growth import BEYOND
from recordgen.site.horse.courses import Courses, toe_courses
from tests.support.horse_records import NAMING, summary, toes

TRIMS = [(f"2026-{month:02}-01", 84.0, 74.0) for month in range(5, 12)]
TODAY = date(2026, 12, 1)


def courses(*trims: tuple[str, float | None, float | None], **values: Any) -> Courses:
    """The courses of a horse whose left fore was measured."""
    found = toe_courses(summary(*toes(*trims), today=TODAY, **values), NAMING)
    assert found is not None
    return found


def test_one_visit_is_no_course() -> None:
    """A dot tells no more than its figure; a horse without visits has none either."""
    assert toe_courses(summary(*toes(*TRIMS[:1])), NAMING) is None
    assert toe_courses(summary(), NAMING) is None


def test_all_feet_share_days_and_a_scale_that_hold_everything() -> None:
    """From before the first visit to past the last day expected, from below the shortest toe to above the longest."""
    found = courses(*TRIMS)
    expected = found.by_foot["left_fore"].expected
    assert expected is not None

    assert found.span[0] < found.first == date(2026, 5, 1)
    assert found.span[1] > expected.end
    assert found.scale[0] < 74
    assert found.scale[1] > max(84, expected.reach[1])


def test_growth_is_expected_to_today_and_beyond() -> None:
    """By the foot's own rate and season since the last trim, past the latest day of the window."""
    horse = summary(*toes(*TRIMS), today=TODAY)
    found = toe_courses(horse, NAMING)
    assert found is not None
    assert horse.due is not None
    one = found.by_foot["left_fore"]
    assert one.expected is not None
    mean = horse.growth.feet["left_fore"].net.mean
    grown = {day: mean * growing_days(horse.growth.season, date(2026, 11, 1), day) for day in (TODAY, one.expected.end)}

    assert one.now.by_mm(TODAY) == pytest.approx(74 + grown[TODAY])
    assert one.expected.end == max(TODAY, horse.due.latest) + BEYOND
    assert one.expected.length(one.expected.mm_per_day[1], one.expected.end) == pytest.approx(
        74 + grown[one.expected.end], abs=0.01
    )


def test_a_horse_that_left_is_expected_to_do_nothing() -> None:
    """Neither growth nor today is drawn."""
    found = courses(*TRIMS, left={"date": "2026-11-20"})

    assert found.by_foot["left_fore"].expected is None
    assert not found.present


def test_a_foot_not_measured_at_the_last_visit_is_not_told_forward() -> None:
    """It was trimmed since, so that nobody knows how long it is."""
    *earlier, _ = TRIMS
    found = courses(*earlier, ("2026-11-20", None, None))

    assert found.by_foot["left_fore"].expected is None
    assert found.by_foot["left_fore"].now.by_mm(TODAY) is None


def test_what_is_older_than_a_year_is_left_to_the_folded_pictures() -> None:
    """The first day shown lies within about thirteen months of the last visit."""
    found = courses(("2024-05-01", 90, 80), *TRIMS)

    assert found.first == date(2026, 5, 1)

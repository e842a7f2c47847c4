"""The strip of days around a due date."""

from __future__ import annotations

import itertools
from datetime import date, timedelta

import pytest

from recordgen.hoof.due import Due
from recordgen.site.drawings.due_strip import MOST_DAYS, strip

BEST = date(2026, 11, 25)
WEEK = timedelta(days=7)
DUE = Due(BEST - WEEK, BEST, BEST + WEEK, "usual", "", "", "", 0)


@pytest.mark.parametrize("away", [-30, -7, 0, 5, 7, 8, 40])
def test_today_and_the_whole_window_are_seen(away: int) -> None:
    """Once each, in a row of days without a hole."""
    today = BEST + timedelta(days=away)
    days = strip(DUE, today)

    assert [one.day for one in days if one.today] == [today]
    assert [one.day for one in days if one.best] == [BEST]
    assert sum(one.inside for one in days) == 15
    assert {(later.day - one.day).days for one, later in itertools.pairwise(days)} == {1}


@pytest.mark.parametrize("away", [-200, 200])
def test_a_day_far_off_leaves_the_window_in_sight(away: int) -> None:
    """Today is then told in words alone."""
    days = strip(DUE, BEST + timedelta(days=away))

    assert len(days) == MOST_DAYS
    assert sum(one.inside for one in days) == 15
    assert not any(one.today for one in days)

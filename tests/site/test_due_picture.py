"""Windows placed on a line of days."""

from __future__ import annotations

from datetime import date, timedelta

import pytest

from recordgen.hoof.due import Due
from recordgen.site.drawings.due_picture import DayLine, due_row, due_rows, state_of
from tests.support.horse_records import summary, visit

TODAY = date(2026, 11, 27)


def due(earliest: int, best: int, latest: int) -> Due:
    """A window by days from today."""
    first, day, last = (TODAY + timedelta(days=count) for count in (earliest, best, latest))
    return Due(first, day, last, "usual", "", "", "", max(0, -latest))


@pytest.mark.parametrize(("window", "state"), [((-9, -5, -1), "late"), ((-9, -5, 0), "now"), ((1, 5, 9), "ahead")])
def test_a_window_has_passed_is_open_or_lies_ahead(window: tuple[int, int, int], state: str) -> None:
    """Its last day is still open, and the day before its first lies ahead."""
    assert state_of(due(*window), TODAY) == state


def test_a_line_runs_from_monday_to_sunday_about_the_windows() -> None:
    """It holds today, a week before and four after, and every window that is near."""
    line = DayLine.of([due(20, 30, 40)], TODAY)

    assert (line.first.weekday(), line.last.weekday()) == (0, 6)
    assert line.first <= TODAY - timedelta(weeks=1)
    assert line.last >= TODAY + timedelta(days=40)


def test_a_window_far_away_stands_at_the_edge() -> None:
    """A horse that is a year late does not press the others together, and has its place."""
    line = DayLine.of([due(-400, -390, -380), due(1, 5, 9)], TODAY)
    far = line.stretch(TODAY - timedelta(days=400), TODAY - timedelta(days=380))

    assert (TODAY - line.first).days <= 7 * 7
    assert (far.left, far.width > 0) == (0, True)


def test_days_lie_evenly_on_the_line() -> None:
    """Two weeks: the second Monday begins in the middle, and a day is a fourteenth wide."""
    line = DayLine(date(2026, 11, 23), date(2026, 12, 6))
    half = line.stretch(date(2026, 11, 30), date(2026, 12, 6))

    assert (half.left, half.width) == pytest.approx((50, 50), abs=0.02)
    assert line.middle(date(2026, 11, 23)) == pytest.approx(100 / 28, abs=0.02)


def test_a_months_name_stands_where_it_has_room() -> None:
    """The first one at the beginning of the line, unless the next is near; none at the very end."""
    line = DayLine(date(2026, 10, 26), date(2027, 1, 3))

    assert [day for _, day in line.months] == [date(2026, 11, 1), date(2026, 12, 1)]


def test_no_line_of_days_out_of_order() -> None:
    """The last day before the first is refused."""
    with pytest.raises(ValueError, match="out of order"):
        DayLine(TODAY, TODAY - timedelta(days=1))


def test_a_late_horse_waits_from_its_window_to_today() -> None:
    """The wait begins the day after its window; a horse that was never visited has no row."""
    late, new = summary(visit("2026-08-01"), today=TODAY), summary(today=TODAY)
    assert late.due is not None
    line = DayLine.of([late.due], TODAY)
    row = due_row(late, line, TODAY)

    assert row is not None
    assert row.waited == line.stretch(late.due.latest + timedelta(days=1), TODAY)
    assert due_rows([new, late], line, TODAY) == [row]

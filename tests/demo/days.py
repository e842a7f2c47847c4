"""The days of visits, and how fast horn grows between two of them."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

# The day the demo is looked at.
TODAY = date(2026, 11, 25)
FIRST = date(2024, 12, 1)

# Growth of a month against the year's mean, slowest in winter; the size of the swing is invented.
# Source: "Effect of Season on Travel Patterns and Hoof Growth of Domestic Horses", 2014 (9 Morgan horses).
SEASON = (0.84, 0.86, 0.95, 1.04, 1.08, 1.04, 1.0, 1.0, 1.07, 1.08, 0.97, 0.88)

# Days nobody works, and the day the visit moved to.
HOLIDAYS = {
    date(2024, 12, 25): date(2024, 12, 23),
    date(2024, 12, 26): date(2024, 12, 23),
    date(2025, 4, 18): date(2025, 4, 17),
    date(2025, 12, 24): date(2025, 12, 23),
    date(2025, 12, 25): date(2025, 12, 23),
    date(2025, 12, 26): date(2025, 12, 23),
    date(2026, 1, 1): date(2026, 1, 2),
    date(2026, 4, 3): date(2026, 4, 2),
}


def counted_back(last: date, *weeks: int, since: date = FIRST) -> tuple[date, ...]:
    """The days of visits up to `last`, oldest first, none before `since`.

    weeks: intervals counted back from the last visit; taken again from the front where they run out.
    """
    days = [last]
    while True:
        day = days[-1] - timedelta(weeks=weeks[(len(days) - 1) % len(weeks)])
        if day < since:
            return tuple(HOLIDAYS.get(day, day) for day in reversed(days))
        days.append(day)


def growth(start: date, end: date, mm_a_day: float) -> float:
    """Millimetres grown from one day to another at a yearly mean of `mm_a_day`, season by season."""
    days = (start + timedelta(days=count) for count in range((end - start).days))
    return mm_a_day * sum(SEASON[day.month - 1] for day in days)


def grown_down(days: Iterable[date], start: float, mm_a_day: float) -> dict[date, int]:
    """How far below the hairline a mark stands on each of `days`, in whole mm, `start` mm on the first."""
    ordered = sorted(days)
    return {day: round(start + growth(ordered[0], day, mm_a_day)) for day in ordered}


def season(day: date) -> str:
    """The name of a day's season."""
    return ("winter", "spring", "summer", "autumn")[day.month % 12 // 3]

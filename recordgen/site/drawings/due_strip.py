"""The stretch of days around a due date, as the page draws it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.due import Due

MARGIN_DAYS = 2
# At 300 CSS px, the narrowest a strip stands, each of so many days is still seen.
MOST_DAYS = 75


@dataclass(frozen=True)
class DayMark:
    """One day of the stretch: whether it lies in the window, whether it is the best day, and whether it is today."""

    day: date
    inside: bool
    best: bool
    today: bool


def strip(due: Due, today: date) -> tuple[DayMark, ...]:
    """The days from a little before today or the window to a little after both.

    Where these lie too far apart, those furthest from the window are left out, today among them.
    """
    first = min(today, due.earliest) - timedelta(days=MARGIN_DAYS)
    last = max(today, due.latest) + timedelta(days=MARGIN_DAYS)
    if (last - first).days >= MOST_DAYS:
        if today > due.latest:
            last = first + timedelta(days=MOST_DAYS - 1)
        else:
            first = last - timedelta(days=MOST_DAYS - 1)
    days = (first + timedelta(days=offset) for offset in range((last - first).days + 1))
    return tuple(DayMark(day, due.earliest <= day <= due.latest, day == due.best, day == today) for day in days)

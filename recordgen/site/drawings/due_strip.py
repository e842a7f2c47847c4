"""The stretch of days around a due date, as the page draws it."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.due import Due

MARGIN_DAYS = 5
MOST_DAYS = 42


@dataclass(frozen=True)
class DayMark:
    """One day of the stretch: whether it lies in the window, and whether it is the best day."""

    day: date
    inside: bool
    best: bool


def strip(due: Due) -> tuple[DayMark, ...]:
    """The days from a little before the window to a little after it, six weeks at the most."""
    first = max(due.earliest - timedelta(days=MARGIN_DAYS), due.best - timedelta(days=MOST_DAYS // 2))
    last = min(due.latest + timedelta(days=MARGIN_DAYS), due.best + timedelta(days=MOST_DAYS // 2))
    days = (first + timedelta(days=offset) for offset in range((last - first).days + 1))
    return tuple(DayMark(day, due.earliest <= day <= due.latest, day == due.best) for day in days)

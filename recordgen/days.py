"""Days and lists as people write them, whatever language the computer is set to; every room may use it."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)
WEEKDAYS = ("Monday", "Tuesday", "Wednesday", "Thursday", "Friday", "Saturday", "Sunday")
SHORT_MONTHS = tuple(month[:3] for month in MONTHS)


def spoken_day(day: date) -> str:
    """The day in words: `14 October 2026`."""
    return f"{month_day(day)} {day.year}"


def month_day(day: date) -> str:
    """The day without its year: `14 October`."""
    return f"{day.day} {MONTHS[day.month - 1]}"


def weekday_day(day: date) -> str:
    """The day with its weekday: `Wednesday, 14 October`."""
    return f"{WEEKDAYS[day.weekday()]}, {month_day(day)}"


def month_name(day: date) -> str:
    """The month alone: `October`."""
    return MONTHS[day.month - 1]


def month_year(day: date) -> str:
    """The month and its year: `October 2026`."""
    return f"{month_name(day)} {day.year}"


def short_day(day: date) -> str:
    """The day where there is little room: `14 Oct 2026`."""
    return f"{day.day} {SHORT_MONTHS[day.month - 1]} {day.year}"


def listed(words: Sequence[str], joined_by: str = "and") -> str:
    """Words as a list in a sentence: `Bramble, Otter and Pippin`."""
    return f" {joined_by} ".join(part for part in (", ".join(words[:-1]), *words[-1:]) if part)

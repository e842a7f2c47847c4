"""A day as people write it, whatever language the computer is set to."""

from __future__ import annotations

import datetime as dt

_MONTHS = (
    *("January", "February", "March", "April", "May", "June"),
    *("July", "August", "September", "October", "November", "December"),
)


def spoken_day(day: dt.date) -> str:
    """The day in words: `14 October 2026`."""
    return f"{day.day} {_MONTHS[day.month - 1]} {day.year}"


def listed(words: list[str]) -> str:
    """Words as a list in a sentence: `Bramble, Otter and Pippin`."""
    return " and ".join(part for part in (", ".join(words[:-1]), *words[-1:]) if part)

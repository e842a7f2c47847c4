"""Days and lists as people write them, whatever language the computer is set to; every room may use it."""

from __future__ import annotations

import re
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


_THREE_NUMBERS = re.compile(r"([0-9]{1,4}) ?([./ -]) ?([0-9]{1,2}) ?\2 ?([0-9]{1,4})")
_DAY_FIRST = re.compile(r"([0-9]{1,2})\.? ?-?([^\W\d_]{3,9})\.?,? ?-?([0-9]{2,4})")
_MONTH_FIRST = re.compile(r"([^\W\d_]{3,9})\.? ([0-9]{1,2})(?:st|nd|rd|th)?,? ([0-9]{2,4})")
# By the first three letters, English and German.
_MONTH_NUMBERS = {name.lower(): number for number, name in enumerate(SHORT_MONTHS, 1)}
_MONTH_NUMBERS |= {"mär": 3, "mrz": 3, "mai": 5, "okt": 10, "dez": 12}


def days_meant(text: str) -> list[date]:
    """The days that somebody may mean who types a day in another form: 14.10.2026, 10/14/2026, 14 October 2026.

    None where it is no day at all; two where numbers between strokes can be the day or the month. Two digits of a year
    are of this century. Between points or hyphens the day goes first. Common practice, no source.
    """
    plain = " ".join(text.split())
    if found := _THREE_NUMBERS.fullmatch(plain):
        first, sign, second, third = int(found[1]), found[2], int(found[3]), int(found[4])
        if len(found[1]) == 4:
            orders = [(first, second, third)] if _day(first, second, third) else [(first, third, second)]
        elif len(found[4]) in (2, 4):
            orders = [(third, second, first), (third, first, second)]
            orders = orders if sign == "/" else orders[: 1 if _day(*orders[0]) else 2]
        else:
            return []
        return list(dict.fromkeys(day for order in orders if (day := _day(*order))))
    if found := _DAY_FIRST.fullmatch(plain):
        number, month, year = found.groups()
    elif found := _MONTH_FIRST.fullmatch(plain):
        month, number, year = found.groups()
    else:
        return []
    meant = _day(int(year), _MONTH_NUMBERS.get(month[:3].lower(), 0), int(number))
    return [meant] if meant else []


def _day(year: int, month: int, day: int) -> date | None:
    try:
        return date(year + 2000 if year < 100 else year, month, day)
    except ValueError:
        return None

"""A day as people say it, from which something is looked at: 2026-06-01, June, June 2025."""

from __future__ import annotations

import datetime as dt
import re
from typing import Any

import click

from recordgen.days import MONTHS
from recordgen.sentences import say

_MONTH = re.compile(r"([a-z]{3,9})\.?(?: +(\d{4}))?|(\d{4})-(\d{2})", re.IGNORECASE)


# Month, year where one is told, and day.
Since = tuple[int, int | None, int]


class SinceType(click.ParamType):  # type: ignore[type-arg]
    """The first day of a time: a day, a month of a year, or the last month of that name."""

    name = "since"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> Since:
        """Month, year where one is told, and day."""
        if isinstance(value, tuple):
            return value
        try:
            day = dt.date.fromisoformat(value)
        except ValueError:
            return self._month(value) or self.fail(
                say("'{value}' is no day; write it like 2026-06-01, June or June 2025", value=value), param, ctx
            )
        return day.month, day.year, day.day

    def _month(self, value: str) -> Since | None:
        found = _MONTH.fullmatch(value.strip())
        if found is None:
            return None
        if found[4]:
            return (int(found[4]), int(found[3]), 1) if 1 <= int(found[4]) <= len(MONTHS) else None
        months = [at for at, name in enumerate(MONTHS, 1) if name.casefold().startswith(found[1].casefold())]
        return (months[0], int(found[2]) if found[2] else None, 1) if len(months) == 1 else None


def day_of(since: Since, today: dt.date) -> dt.date:
    """The day that was meant; without a year the last one that is not after today."""
    month, year, day = since
    if year is None:
        year = today.year if (month, day) <= (today.month, today.day) else today.year - 1
    return dt.date(year, month, day)

"""A day that notes on which other days the same would have come out, so that a result is kept for all of them."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Any

ONE_DAY = timedelta(days=1)
# What else a day is asked for: whoever asks gets what is true of that very day alone.
ASKED_OF_ONE_DAY = (
    *("ctime", "isocalendar", "isoformat", "isoweekday", "replace", "strftime", "timetuple", "toordinal", "weekday"),
    *("__add__", "__radd__", "__sub__", "__rsub__", "__format__", "__str__", "__repr__", "__reduce__"),
)


@dataclass(frozen=True)
class AlikeDays:
    """The days, first and last among them, on each of which the same comes out."""

    first: date = date.min
    last: date = date.max

    def __contains__(self, day: date) -> bool:
        """Tell whether a day is one of them."""
        return self.first <= day <= self.last

    def both(self, other: AlikeDays) -> AlikeDays:
        """The days that are among these and among others."""
        return AlikeDays(max(self.first, other.first), min(self.last, other.last))


EVERY_DAY = AlikeDays()


class WatchedDay(date):
    """A day for work whose result is kept: how it is looked at tells how long the result stands.

    Held against another day, the result stands until that comparison turns; asked for its year or month, until that
    ends; asked for anything else, it stands on this day alone. plain: the day itself, for what is not kept. alike: the
    days for which all that was asked so far is the same.
    """

    plain: date
    alike: AlikeDays

    @classmethod
    def of(cls, day: date) -> WatchedDay:
        """A watched day at which nobody has looked yet."""
        plain = plain_day(day)
        made = cls(plain.year, plain.month, plain.day)
        made.plain, made.alike = plain, EVERY_DAY
        return made

    def narrow(self, days: AlikeDays) -> None:
        """Note that what comes out is the same on no more than these days."""
        self.alike = self.alike.both(days)

    def exactly(self) -> date:
        """The day itself, for what is true of it alone."""
        self.narrow(AlikeDays(self.plain, self.plain))
        return self.plain

    def _is_before(self, other: date) -> bool:
        before = self.plain < other
        self.narrow(AlikeDays(last=other - ONE_DAY) if before else AlikeDays(first=other))
        return before

    def _is_after(self, other: date) -> bool:
        after = self.plain > other
        self.narrow(AlikeDays(first=other + ONE_DAY) if after else AlikeDays(last=other))
        return after

    def __lt__(self, other: date) -> bool:
        return self._is_before(other)

    def __ge__(self, other: date) -> bool:
        return not self._is_before(other)

    def __gt__(self, other: date) -> bool:
        return self._is_after(other)

    def __le__(self, other: date) -> bool:
        return not self._is_after(other)

    def __eq__(self, other: object) -> bool:
        return isinstance(other, date) and not self._is_before(other) and not self._is_after(other)

    def __ne__(self, other: object) -> bool:
        return not self == other

    def __hash__(self) -> int:
        return hash(self.exactly())

    @property
    def year(self) -> int:
        """The year, throughout which the same comes out."""
        year = self.plain.year
        self.narrow(AlikeDays(date(year, 1, 1), date(year, 12, 31)))
        return year

    @property
    def month(self) -> int:
        """The month, throughout which the same comes out."""
        first = self.plain.replace(day=1)
        self.narrow(AlikeDays(first, (first + timedelta(days=31)).replace(day=1) - ONE_DAY))
        return first.month

    @property
    def day(self) -> int:
        """The day of the month."""
        return self.exactly().day


def plain_day(day: date) -> date:
    """A day that watches nothing: the same, or the one that a watched day is."""
    return day.plain if isinstance(day, WatchedDay) else day


def _of_one_day(name: str) -> Callable[..., Any]:
    def asked(day: WatchedDay, *args: Any, **kwargs: Any) -> Any:
        return getattr(day.exactly(), name)(*args, **kwargs)

    return asked


for _name in ASKED_OF_ONE_DAY:
    setattr(WatchedDay, _name, _of_one_day(_name))

"""A sheet with a column a day: where days begin and end, and which stretches they make up."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.pictures.shapes import Shape, line

DAY = timedelta(1)
MONDAY, SATURDAY = 0, 5


@dataclass(frozen=True)
class DayColumns:
    """The days from the first to the last, both included, side by side in a plot.

    Raises ValueError where the last day is before the first.
    """

    first: date
    last: date
    left: float
    right: float
    top: float
    bottom: float

    def __post_init__(self) -> None:
        """Refuse days out of order."""
        if self.last < self.first:
            raise ValueError(f"days out of order: {self.first}, {self.last}")

    @property
    def width(self) -> float:
        """How wide a day is."""
        return (self.right - self.left) / ((self.last - self.first).days + 1)

    @property
    def days(self) -> list[date]:
        """Every day drawn, in order."""
        return [self.first + timedelta(count) for count in range((self.last - self.first).days + 1)]

    def start(self, day: date) -> float:
        """Where a day begins, left to right."""
        return self.left + self.width * (day - self.first).days

    def middle(self, day: date) -> float:
        """Where the middle of a day stands."""
        return self.start(day) + self.width / 2

    def shows(self, day: date) -> bool:
        """Whether the day is one of those drawn."""
        return self.first <= day <= self.last

    def block(self, start: date, end: date) -> Shape:
        """The columns of a stretch of days, both included, from top to bottom."""
        left, right = self.start(start), self.start(end) + self.width
        return line([(left, self.top), (right, self.top), (right, self.bottom), (left, self.bottom)], closed=True)


def free_days(days: Sequence[date], off: Sequence[tuple[date, date]]) -> list[tuple[date, date]]:
    """The stretches of weekends and days off among days in order, each by its first and last day."""
    found: list[tuple[date, date]] = []
    for day in days:
        if day.weekday() < SATURDAY and not any(start <= day <= end for start, end in off):
            continue
        if found and found[-1][1] + DAY == day:
            found[-1] = (found[-1][0], day)
        else:
            found.append((day, day))
    return found

"""The windows of several horses on one line of days, placed in per cent of its width, so that no text is scaled."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from recordgen.hoof.due import Due
from recordgen.hoof.rounds.rounds import Plan
from recordgen.hoof.summary import HorseSummary

# So far back and ahead windows are drawn in full; one that lies beyond stands at the edge.
MOST_WEEKS_BACK, MOST_WEEKS_AHEAD = 6, 12
LEAST_WEEKS_BACK, LEAST_WEEKS_AHEAD = 1, 4
# A month's name beside another needs so much room, per cent.
ROOM_FOR_A_MONTH = 11.0
DIGITS = 2

State = Literal["late", "now", "ahead"]


@dataclass(frozen=True)
class Stretch:
    """A stretch of days: where it begins and how wide it is, in per cent of the line."""

    left: float
    width: float


@dataclass(frozen=True)
class DayLine:
    """The days from the first to the last, both included, side by side.

    Raises ValueError where the last day is before the first.
    """

    first: date
    last: date

    def __post_init__(self) -> None:
        """Refuse days out of order."""
        if self.last < self.first:
            raise ValueError(f"days out of order: {self.first}, {self.last}")

    @classmethod
    def of(cls, dues: Iterable[Due], today: date) -> DayLine:
        """A line from a Monday to a Sunday that holds today and the windows, as far as they are near."""
        known = list(dues)
        first = min([today - timedelta(weeks=LEAST_WEEKS_BACK), *(one.earliest for one in known)])
        last = max([today + timedelta(weeks=LEAST_WEEKS_AHEAD), *(one.latest for one in known)])
        first = max(first, today - timedelta(weeks=MOST_WEEKS_BACK))
        last = min(last, today + timedelta(weeks=MOST_WEEKS_AHEAD))
        return cls(first - timedelta(days=first.weekday()), last + timedelta(days=6 - last.weekday()))

    @property
    def months(self) -> list[tuple[float, date]]:
        """The place where each month begins whose name has room; the first one at the beginning of the line."""
        days = [self.first + timedelta(days=count) for count in range((self.last - self.first).days + 1)]
        starts = [(self._start(day), day) for day in days if day.day == 1]
        found = [(0.0, self.first), *starts] if not starts or starts[0][0] >= ROOM_FOR_A_MONTH else starts
        return [one for one in found if one[0] + ROOM_FOR_A_MONTH <= 100]

    def middle(self, day: date) -> float:
        """The place where the middle of a day stands; a day beyond the line stands at its edge."""
        held = min(max(day, self.first), self.last)
        return round(self._start(held) + self._width / 2, DIGITS)

    def stretch(self, first: date, last: date) -> Stretch:
        """The days from one to another, both included, as far as they are on the line; at its edge one day."""
        left = self._start(min(max(first, self.first), self.last))
        right = self._start(min(max(last, self.first), self.last)) + self._width
        return Stretch(round(left, DIGITS), round(right - left, DIGITS))

    @property
    def _width(self) -> float:
        return 100 / ((self.last - self.first).days + 1)

    def _start(self, day: date) -> float:
        return round((day - self.first).days * self._width, DIGITS)


@dataclass(frozen=True)
class DueRow:
    """One horse's window on the line, and its best day.

    waited: from the end of a window that has passed to today. planned: the day of the round it is on, if there is one.
    """

    horse: HorseSummary
    state: State
    window: Stretch
    best: float
    waited: Stretch | None
    planned: float | None


def state_of(due: Due, today: date) -> State:
    """Tell whether a window has passed, is open today, or lies ahead."""
    if due.overdue_days:
        return "late"
    return "now" if due.earliest <= today else "ahead"


def due_row(horse: HorseSummary, line: DayLine, today: date, planned: date | None = None) -> DueRow | None:
    """The row of a horse; None of one without a window."""
    due = horse.due
    if due is None:
        return None
    return DueRow(
        horse,
        state_of(due, today),
        line.stretch(due.earliest, due.latest),
        line.middle(due.best),
        line.stretch(due.latest + timedelta(days=1), today) if due.overdue_days else None,
        line.middle(planned) if planned else None,
    )


def due_rows(horses: Sequence[HorseSummary], line: DayLine, today: date, plan: Plan | None = None) -> list[DueRow]:
    """The rows of the horses that have a window, in their order. plan: the rounds that would do."""
    planned = {(wish.stable, wish.horse): one.day for one in (plan.rounds if plan else ()) for wish in one.wishes}
    found = (due_row(one, line, today, planned.get((one.stable, one.slug))) for one in horses)
    return [row for row in found if row]

"""One horse's window among the coming weeks: from its earliest to its latest day, with its best day."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from recordgen.pictures.canvas import Canvas, legend
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, Shape, circle, dots, line

HALF_BAR, ARROW, STUB = 4.6, 6.0, 13.0
HALF_BEST, LEAST_BEST, MOST_BEST = 7.4, 3.8, 8.0
RING = 4.6

WINDOW = Pen("moss", 0.9, "moss", fill_opacity=0.36)
BEST = Pen(fill="moss")
PASSED = Pen("clay", 1.2, "clay", fill_opacity=0.45)
WAITED = Pen("clay", 2.0, dash=(0.1, 4.0), round_ends=True)
PLANNED = Pen("ink", 1.5, "card")
PLANNED_DOT = Pen("ink", 3.0, round_ends=True)


@dataclass(frozen=True)
class WeekRow:
    """One horse and its window, all days included. planned: the day of the visit that is planned for it, if one is.

    Raises ValueError for days out of order.
    """

    name: str
    earliest: date
    best: date
    latest: date
    planned: date | None

    def __post_init__(self) -> None:
        """Refuse what is no window."""
        if not self.earliest <= self.best <= self.latest:
            raise ValueError(f"days out of order: {self.earliest}, {self.best}, {self.latest}")


def draw_window(canvas: Canvas, columns: DayColumns, row: WeekRow, y: float, today: date) -> None:
    """The window as a bar about a height, pointed where it goes on outside the sheet, and its best day.

    A window that lies before the sheet is a short arrow at its left edge. Once it has passed it
    changes colour, and the days waited since are dotted.
    """
    left, right = _ends(columns, row)
    to_left, to_right = row.earliest < columns.first, row.latest > columns.last
    pen = PASSED if row.latest < today else WINDOW
    canvas.draw(bar_form(left, right, y, to_left, to_right), pen)
    if row.latest < today:
        _draw_waited(canvas, right, columns.middle(min(today, columns.last)), y)
    if columns.shows(row.best):
        draw_best(canvas, (columns.middle(row.best), y), columns.width)
    if row.planned and columns.shows(row.planned):
        draw_planned(canvas, (columns.middle(row.planned), y))


def _ends(columns: DayColumns, row: WeekRow) -> tuple[float, float]:
    if row.latest < columns.first:
        return columns.left, columns.left + STUB
    if row.earliest > columns.last:
        return columns.right - STUB, columns.right
    return columns.start(max(row.earliest, columns.first)), columns.start(min(row.latest, columns.last)) + columns.width


def bar_form(left: float, right: float, y: float, to_left: bool = False, to_right: bool = False) -> Shape:
    """A bar about a height whose ends are upright, or pointed like an arrow where it goes on."""
    point = min(ARROW, (right - left) / (2 if to_left and to_right else 1))
    up, down = y - HALF_BAR, y + HALF_BAR
    tip_left = [(left + point, down), (left, y), (left + point, up)] if to_left else [(left, down), (left, up)]
    tip_right = [(right - point, up), (right, y), (right - point, down)] if to_right else [(right, up), (right, down)]
    return line([*tip_left, *tip_right], closed=True)


def _draw_waited(canvas: Canvas, left: float, right: float, y: float) -> None:
    if right - left > 4:
        canvas.draw(line([(left + 3, y), (right, y)]), WAITED)


def draw_best(canvas: Canvas, at: Point, width: float) -> None:
    """A strong upright block, taller than the window and about as wide as a day."""
    x, y = at
    half = min(max(width, LEAST_BEST), MOST_BEST) / 2
    corners = [
        (x - half, y - HALF_BEST),
        (x + half, y - HALF_BEST),
        (x + half, y + HALF_BEST),
        (x - half, y + HALF_BEST),
    ]
    canvas.draw(line(corners, closed=True), BEST)


def draw_planned(canvas: Canvas, at: Point) -> None:
    """A ring with a dot in it."""
    canvas.draw(circle(at, RING), PLANNED)
    canvas.draw(dots([at]), PLANNED_DOT)


def draw_flag(canvas: Canvas, at: Point, foot: float) -> None:
    """A staff with a small flag on top, from a point down to its foot."""
    x, top = at
    canvas.draw(line([(x, top), (x, foot)]), Pen("ink", 1.0))
    canvas.draw(line([(x, top), (x + 8, top + 3.4), (x, top + 6.8)], closed=True), Pen("ink", 1.0, "ink"))


WeekForm = Literal["window", "best", "passed", "planned", "round"]
KEY_FORMS: dict[WeekForm, Callable[[Canvas, Point], None]] = {
    "window": lambda canvas, at: canvas.draw(bar_form(at[0] - 7, at[0] + 7, at[1]), WINDOW),
    "best": lambda canvas, at: draw_best(canvas, at, LEAST_BEST),
    "passed": lambda canvas, at: canvas.draw(bar_form(at[0] - 7, at[0] + 6, at[1], to_left=True), PASSED),
    "planned": lambda canvas, at: draw_planned(canvas, at),
    "round": lambda canvas, at: draw_flag(canvas, (at[0] - 3, at[1] - 7), at[1] + 7),
}


def week_key(words: Mapping[WeekForm, str]) -> dict[WeekForm, str]:
    """A small picture of each form in `weeks_ahead` that has words, named by them."""
    return legend(KEY_FORMS, words)


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

"""The coming weeks of one stable: each horse's window with its best day, the rounds proposed, and the days off."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from datetime import date

from recordgen.days import SHORT_MONTHS
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.charts.due_windows import (
    MONDAY,
    DayColumns,
    WeekForm,
    WeekRow,
    draw_flag,
    draw_window,
    free_days,
    week_key,
)
from recordgen.pictures.labels_below import shortened, width_of
from recordgen.pictures.pen import Colour, Pen
from recordgen.pictures.shapes import joined, line, segments

__all__ = ["WeekForm", "WeekRow", "week_key", "weeks_ahead"]

# At 320 CSS px wide, less than most phones give it, 12 of these units are still more than 11 px.
WIDTH, FONT_SIZE = 340.0, 12.0
LEAST_LEFT, MOST_LEFT, RIGHT = 40.0, 98.0, 336.0
ROW, BELOW = 22.0, 20.0
ROOM_FOR_FLAGS, ROOM_FOR_TODAY = 15.0, 14.0

GRID = Pen("line", 0.8)
AXIS = Pen("quiet", 0.8)
SHADE = Pen(fill="line", opacity=0.5)
TODAY = Pen("quiet", 1.2, dash=(2.0, 2.4))


def weeks_ahead(
    rows: Sequence[WeekRow],
    first: date,
    last: date,
    rounds: Sequence[date],
    today: date,
    off: Sequence[tuple[date, date]],
    labels: Mapping[str, str],
    title: str,
) -> str:
    """The windows of a stable's horses from the first to the last day, both included, a row a horse as given.

    rounds: days proposed for a visit. off: stretches without work, both ends included. labels: `today`, written above
    its line where it is given. A window that passed without a visit is joined to today.
    Raises ValueError where there is no row or the last day is before the first.
    """
    words = labels.get("today", "")
    columns = _columns(rows, first, last, ROOM_FOR_TODAY if words and first <= today <= last else 0)
    canvas = Canvas(WIDTH, columns.bottom + BELOW, FONT_SIZE)
    _draw_shade(canvas, columns, off)
    _draw_weeks(canvas, columns, len(rows))
    _draw_today(canvas, columns, today, words)
    for day in sorted({day for day in rounds if columns.shows(day)}):
        draw_flag(canvas, (columns.middle(day), columns.top - 12), columns.bottom)
    for index, row in enumerate(rows):
        _draw_row(canvas, columns, columns.top + ROW * (index + 0.5), row, today)
    return canvas.picture(title)


def _columns(rows: Sequence[WeekRow], first: date, last: date, above: float) -> DayColumns:
    if not rows:
        raise ValueError("no horse to draw")
    widest = max(width_of(row.name, FONT_SIZE) for row in rows)
    left = min(max(widest + 8, LEAST_LEFT), MOST_LEFT)
    top = ROOM_FOR_FLAGS + above
    return DayColumns(first, last, left, RIGHT, top, top + ROW * len(rows))


def _draw_shade(canvas: Canvas, columns: DayColumns, off: Sequence[tuple[date, date]]) -> None:
    shaded = free_days(columns.days, off)
    if shaded:
        canvas.draw(joined(columns.block(start, end) for start, end in shaded), SHADE)


def _draw_weeks(canvas: Canvas, columns: DayColumns, rows: int) -> None:
    """The rows' lines, a line where each week begins, and the days of the Mondays below."""
    top, bottom = columns.top, columns.bottom
    mondays = [day for day in columns.days if day.weekday() == MONDAY]
    across = [((0.0, top + ROW * index), (RIGHT, top + ROW * index)) for index in range(1, rows)]
    down = [((columns.start(day), top), (columns.start(day), bottom)) for day in mondays]
    if across or down:
        canvas.draw(segments([*across, *down]), GRID)
    canvas.draw(line([(columns.left, bottom), (RIGHT, bottom)]), AXIS)
    labelled = week_labels(columns, mondays or [columns.first])
    canvas.draw(segments([((x, bottom), (x, bottom + 3.5)) for x, _ in labelled]), AXIS)
    for x, words in labelled:
        canvas.write(words, (min(x, WIDTH - width_of(words, FONT_SIZE)), bottom + 15))


def week_labels(columns: DayColumns, days: Sequence[date]) -> list[tuple[float, str]]:
    """Where days begin, with their words, as many as stand side by side on the sheet; always the first one."""
    labels = [(columns.start(day), f"{day.day} {SHORT_MONTHS[day.month - 1]}") for day in days]
    widest = max(width_of(words, FONT_SIZE) for _, words in labels)
    shown = labels[:: math.ceil((widest + 5) / (7 * columns.width))]
    return shown[:1] + [(x, words) for x, words in shown[1:] if x + width_of(words, FONT_SIZE) <= WIDTH]


def _draw_today(canvas: Canvas, columns: DayColumns, today: date, words: str) -> None:
    if not columns.shows(today):
        return
    x = columns.middle(today)
    canvas.draw(line([(x, columns.top), (x, columns.bottom)]), TODAY)
    if words:
        half = width_of(words, FONT_SIZE) / 2
        canvas.write(words, (max(min(x, WIDTH - half), half), 11), "middle")


def _draw_row(canvas: Canvas, columns: DayColumns, y: float, row: WeekRow, today: date) -> None:
    with canvas.told(row.name):
        colour: Colour = "clay" if row.latest < today else "ink"
        canvas.write(shortened(row.name, columns.left - 8, FONT_SIZE), (0, y + 4), colour=colour)
        draw_window(canvas, columns, row, y, today)

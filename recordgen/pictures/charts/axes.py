"""The plot of a panel: where a day and a value stand, its axes, and the round numbers that label them."""

from __future__ import annotations

import math
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.days import SHORT_MONTHS, short_day
from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.observations import Event
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, line, segments
from recordgen.records.models.names import Foot

# At 260 CSS px wide, the narrowest a panel stands, 12 of these units are still more than 11 px.
WIDTH, HEIGHT, FONT_SIZE = 280.0, 184.0, 12.0
LEFT, RIGHT, TOP = 36.0, 264.0, 21.0
FOOT_OF_AXIS = 164.0
LABELS_BELOW = 179.0

GRID = Pen("line", 0.8)
AXIS = Pen("quiet", 0.8)


@dataclass(frozen=True)
class Axes:
    """The plot's place on the sheet: which days it spans and which values from its bottom to its top."""

    span: Span
    scale: Scale
    bottom: float = FOOT_OF_AXIS
    top: float = TOP

    def x(self, day: date) -> float:
        """Where a day stands, left to right."""
        reach = max((self.span[1] - self.span[0]).days, 1)
        return LEFT + (RIGHT - LEFT) * (day - self.span[0]).days / reach

    def y(self, value: float) -> float:
        """Where a value stands; y grows downwards, values upwards."""
        low, high = self.scale
        return self.bottom - (self.bottom - self.top) * (value - low) / (high - low)

    def at(self, day: date, value: float) -> Point:
        """Where a value of a day stands."""
        return self.x(day), self.y(value)


def number_words(value: float) -> str:
    """A value as an axis shows it, with a true minus sign."""
    return f"{value:g}".replace("-", "\N{MINUS SIGN}")


def draw_frame(canvas: Canvas, frame: Axes, unit: str, words: Callable[[float], str] = number_words) -> None:
    """The lines across, the values with their unit at the left, the days below."""
    values = value_ticks(frame.scale)
    canvas.draw(segments([((LEFT, frame.y(value)), (RIGHT, frame.y(value))) for value in values]), GRID)
    for value in values:
        canvas.write(words(value), (LEFT - 6, frame.y(value) + 4), "end")
    canvas.write(unit, (LEFT - 6, 11), "end")
    draw_days(canvas, frame)


def draw_days(canvas: Canvas, frame: Axes) -> None:
    """The time axis: a line, a notch for each labelled day, and its words."""
    ticks = day_ticks(frame.span)
    canvas.draw(line([(LEFT, FOOT_OF_AXIS), (RIGHT, FOOT_OF_AXIS)]), AXIS)
    notches = [((frame.x(day), FOOT_OF_AXIS), (frame.x(day), FOOT_OF_AXIS + 3.5)) for day, _ in ticks]
    if notches:
        canvas.draw(segments(notches), AXIS)
    for day, words in ticks:
        canvas.write(words, (frame.x(day), LABELS_BELOW), "middle")


MONTH_STEPS = (1, 2, 3, 4, 6, 12, 24, 60, 120, 240)
MOST_DAY_TICKS = 4
MOST_MONTH_TICKS = 5
MOST_YEAR_TICKS = 7
LONGEST_IN_DAYS = 45
LEAST_SPAN_DAYS = 112

Span = tuple[date, date]
Scale = tuple[float, float]


def nice_step(reach: float, most: int) -> float:
    """The smallest step of 1, 2 or 5 times a power of ten that crosses a reach in at most so many steps."""
    rough = reach / most
    power: float = 10 ** math.floor(math.log10(rough))
    return next(step * power for step in (1, 2, 5, 10) if step * power >= rough * (1 - 1e-9))


def value_ticks(scale: Scale, most: int = 4) -> list[float]:
    """Round values inside a scale, two to five of them, or more where more steps are allowed."""
    low, high = scale
    step = nice_step(high - low, most)
    first, last = math.ceil(low / step - 1e-9), math.floor(high / step + 1e-9)
    return [round(count * step, 6) for count in range(first, last + 1)]


def day_ticks(span: Span) -> list[tuple[date, str]]:
    """Days to label on a time axis with their words, few enough never to touch: weeks, months or years."""
    if (span[1] - span[0]).days <= LONGEST_IN_DAYS:
        return _week_ticks(span)
    steps = ((list(_months(span, step)), MOST_YEAR_TICKS if step >= 12 else MOST_MONTH_TICKS) for step in MONTH_STEPS)
    return _month_labels(next((days for days, most in steps if len(days) <= most), []))


def _week_ticks(span: Span) -> list[tuple[date, str]]:
    reach = (span[1] - span[0]).days
    step = 7 * max(1, math.ceil((reach + 1) / 7 / MOST_DAY_TICKS))
    days = [span[0] + timedelta(days) for days in range(0, reach + 1, step)]
    return [(day, short_day(day) if day == days[0] else f"{day.day} {SHORT_MONTHS[day.month - 1]}") for day in days]


def _months(span: Span, step: int) -> Iterator[date]:
    first, last = (day.year * 12 + day.month - 1 for day in span)
    for month in range(first - first % step, last + 1, step):
        day = date(max(month // 12, 1), month % 12 + 1, 1)
        if span[0] <= day <= span[1]:
            yield day


def _month_labels(days: Sequence[date]) -> list[tuple[date, str]]:
    year_shown = any(day.month == 1 for day in days)
    labels = [str(day.year) if day.month == 1 else SHORT_MONTHS[day.month - 1] for day in days]
    if labels and not year_shown:
        labels[0] = f"{labels[0]} {days[0].year}"
    return list(zip(days, labels, strict=True))


def values_of(readings: Iterable[Reading]) -> list[float]:
    """Every value that was taken, before and after."""
    return [value for reading in readings for value in (reading.before, reading.after) if value is not None]


def shared_scale(
    readings_by_foot: Mapping[Foot, Sequence[Reading]], least: float = 10, more: Sequence[float] = ()
) -> Scale:
    """One scale for all feet, in round numbers with a little room; never narrower than `least`.

    more: values beside the readings that it must hold.
    Raises ValueError where no foot has a value.
    """
    values = [value for readings in readings_by_foot.values() for value in values_of(readings)]
    return round_scale([*values, *more], least)


def round_scale(values: Sequence[float], least: float) -> Scale:
    """A scale in round numbers that holds all values with a little room; never narrower than `least`.

    Raises ValueError where there is no value.
    """
    if not values:
        raise ValueError("no reading to make a scale from")
    low, high = min(values), max(values)
    room = max((high - low) * 0.06, (least - (high - low)) / 2)
    step = nice_step(high - low + 2 * room, 6)
    return math.floor((low - room) / step) * step, math.ceil((high + room) / step) * step


def scale_about_zero(readings_by_foot: Mapping[Foot, Sequence[Reading]], error: float) -> Scale:
    """One scale for all feet with zero in its middle, wide enough for every value and twice the measuring error."""
    values = [value for readings in readings_by_foot.values() for value in values_of(readings)]
    reach = max([abs(value) for value in values] + [2 * error, 1.0]) * 1.08
    step = nice_step(reach, 4)
    top = math.ceil(reach / step) * step
    return -top, top


def shared_span(
    readings_by_foot: Mapping[Foot, Sequence[Reading]], events: Sequence[Event] = (), until: date | None = None
) -> Span:
    """One stretch of days for all feet with a little room at both ends; never shorter than sixteen weeks.

    until: a day still to come that it must hold.
    Raises ValueError where there is no day at all.
    """
    days = [reading.day for readings in readings_by_foot.values() for reading in readings]
    days += [event.day for event in events]
    days += [until] if until else []
    if not days:
        raise ValueError("no day to make a span from")
    first, last = min(days), max(days)
    reach = (last - first).days
    room = timedelta(max(math.ceil(reach * 0.025), math.ceil((LEAST_SPAN_DAYS - reach) / 2)))
    return first - room, last + room

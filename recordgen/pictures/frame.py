"""The plot of a panel: where a day and a value stand on the sheet, its lines and the labels of its axes."""

from __future__ import annotations

from collections.abc import Callable
from dataclasses import dataclass
from datetime import date

from recordgen.pictures.canvas import Canvas, Pen
from recordgen.pictures.shapes import Point, line, segments
from recordgen.pictures.ticks import Scale, Span, day_ticks, value_ticks

# At 260 CSS px wide, the narrowest a panel stands, 12 of these units are still more than 11 px.
WIDTH, HEIGHT, FONT_SIZE = 280.0, 184.0, 12.0
LEFT, RIGHT, TOP = 36.0, 264.0, 21.0
FOOT_OF_AXIS = 164.0
LABELS_BELOW = 179.0

GRID = Pen("line", 0.8)
AXIS = Pen("quiet", 0.8)


@dataclass(frozen=True)
class Frame:
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


def draw_frame(canvas: Canvas, frame: Frame, unit: str, words: Callable[[float], str] = number_words) -> None:
    """The lines across, the values with their unit at the left, the days below."""
    values = value_ticks(frame.scale)
    canvas.draw(segments([((LEFT, frame.y(value)), (RIGHT, frame.y(value))) for value in values]), GRID)
    for value in values:
        canvas.write(words(value), (LEFT - 6, frame.y(value) + 4), "end")
    canvas.write(unit, (LEFT - 6, 11), "end")
    draw_days(canvas, frame)


def draw_days(canvas: Canvas, frame: Frame) -> None:
    """The time axis: a line, a notch for each labelled day, and its words."""
    ticks = day_ticks(frame.span)
    canvas.draw(line([(LEFT, FOOT_OF_AXIS), (RIGHT, FOOT_OF_AXIS)]), AXIS)
    notches = [((frame.x(day), FOOT_OF_AXIS), (frame.x(day), FOOT_OF_AXIS + 3.5)) for day, _ in ticks]
    if notches:
        canvas.draw(segments(notches), AXIS)
    for day, words in ticks:
        canvas.write(words, (frame.x(day), LABELS_BELOW), "middle")

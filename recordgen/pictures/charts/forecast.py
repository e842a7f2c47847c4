"""The wall still to grow: a cone from the last trim on, and the best day to trim it again."""

from __future__ import annotations

from contextlib import nullcontext
from dataclasses import dataclass
from datetime import date

from recordgen.pictures.canvas import Canvas
from recordgen.pictures.charts.limits import day_number
from recordgen.pictures.pen import FOOT_COLOUR, Pen
from recordgen.pictures.shapes import Shape, finite, in_order, line
from recordgen.records.models.names import Foot

# Shorter than a right foot's own dashes: what is only expected looks lighter than what was measured.
AHEAD = (1.8, 2.4)
TO_THE_DAY = Pen("quiet", 0.9, dash=(0.9, 2.2))
BEST, BEST_SIZE = Pen(fill="ink"), 5.2


@dataclass(frozen=True)
class ForecastCone:
    """The range in which a length is expected to go after a trim.

    start, start_mm: the day of the trim and the length after it, in the unit shown. best: the best day for the next
    trim. end: the last day drawn. mm_per_day: net growth, low, middle and high. text: told to whoever points at it.
    Raises ValueError for days or rates out of order and for what is no number.
    """

    start: date
    start_mm: float
    best: date
    end: date
    mm_per_day: tuple[float, float, float]
    text: str = ""

    def __post_init__(self) -> None:
        """Refuse what cannot be drawn."""
        finite("length", self.start_mm)
        in_order("rates of growth", *self.mm_per_day)
        if not self.start <= self.best <= self.end:
            raise ValueError(f"days out of order: {self.start}, {self.best}, {self.end}")

    def length(self, rate: float, day: date) -> float:
        """The length on a day at one rate of growth, in the unit shown."""
        return self.start_mm + rate * (day - self.start).days

    @property
    def reach(self) -> tuple[float, float]:
        """The lowest and the highest length on the last day, to be held by a shared scale."""
        return self.length(self.mm_per_day[0], self.end), self.length(self.mm_per_day[2], self.end)


def draw_forecast(canvas: Canvas, foot: Foot, forecast: ForecastCone, weight: float, ground: float) -> None:
    """The cone, its middle in a light stroke of the foot's colour, and the best day on the line of the days.

    ground: the value that stands at that line.
    """
    with canvas.group(forecast.text) if forecast.text else nullcontext():
        canvas.draw(cone_form(forecast), Pen(fill=FOOT_COLOUR[foot], opacity=0.2))
        best, end = day_number(forecast.best), day_number(forecast.end)
        middle = forecast.mm_per_day[1]
        ahead = [(day_number(forecast.start), forecast.start_mm), (end, forecast.length(middle, forecast.end))]
        canvas.draw(line(ahead), Pen(FOOT_COLOUR[foot], 1.4 * weight, dash=AHEAD))
        canvas.draw(line([(best, forecast.length(middle, forecast.best)), (best, ground)]), TO_THE_DAY)
        canvas.mark([(best, ground)], "D", BEST_SIZE, BEST)


def cone_form(forecast: ForecastCone) -> Shape:
    """The triangle between the slowest and the fastest growth."""
    low, high = forecast.reach
    end = day_number(forecast.end)
    return line([(day_number(forecast.start), forecast.start_mm), (end, high), (end, low)], closed=True)

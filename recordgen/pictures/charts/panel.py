"""The axes of the panels through time: made once, their frame drawn once for what it shows, four feet on each frame."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import UTC, datetime, time, timedelta
from functools import cache, lru_cache
from typing import Any

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.dates import MONTHLY, YEARLY, AutoDateLocator
from matplotlib.lines import Line2D
from matplotlib.ticker import MaxNLocator

from recordgen.language.quantities import IN_ENGLISH, Quantities
from recordgen.pictures.axes import Lettering, Limits, View, framed_axes, lines_of, on_axes
from recordgen.pictures.charts.inch_ticks import inch_ticks
from recordgen.pictures.charts.limits import FIRST_DAY, Scale, Span, day_number
from recordgen.pictures.charts.panel_size import BOTTOM, HEIGHT, LEFT, LOWER, RIGHT, TOP, WIDTH
from recordgen.pictures.pen import COLOURS
from recordgen.pictures.svg import svg_elements

# Where words stand at the right side of the axes.
RIGHT_BESIDE_WORDS = 118.0
ROUND_STEPS = (1, 2, 5, 10)
MOST_STEPS = 3
# So few that no two labels of days touch; a year stands in place of its January, else beside the first month.
MONTH_STEPS, YEAR_STEPS = [2, 3, 4, 6, 12], [1, 2, 5, 10, 20, 50]
MOST_LABELS = 4
MINUS = "\N{MINUS SIGN}"


@dataclass(frozen=True)
class Frame:
    """All that the panels of the four feet of a horse have in common.

    band: room kept free above the days, picture units. sides: words at the right of the upper and of the lower half;
    then values are shown without their sign. low: less high than other panels. written: the language of months and
    numbers, and the unit in which lengths are labelled, though they are mm. unit: its words, or none.
    """

    span: Span
    scale: Scale
    unit: str
    band: float = 0.0
    sides: tuple[str, str] | None = None
    low: bool = False
    written: Quantities = IN_ENGLISH

    @property
    def height(self) -> float:
        """The height of the figure, picture units."""
        return HEIGHT - LOWER if self.low else HEIGHT

    @property
    def bottom(self) -> float:
        """Tell how far below the upper edge the line of the days stands."""
        return BOTTOM - LOWER if self.low else BOTTOM

    @property
    def right(self) -> float:
        """The place where the axes end."""
        return RIGHT_BESIDE_WORDS if self.sides else RIGHT

    @property
    def across(self) -> Limits:
        """The limits of the days."""
        return day_number(self.span[0]), day_number(self.span[1])

    @property
    def holds_january(self) -> bool:
        """Tell whether a year begins within the days."""
        return self.span[0].year < self.span[1].year or self.span[0].timetuple().tm_yday == 1

    @property
    def values(self) -> dict[float, str]:
        """Round values to label, with their words; those of both sides of nought are told by their size."""
        low, high = self.scale
        if self.written.units.inches:
            return {value: self._sized(words) for value, words in inch_ticks(low, high, MOST_STEPS).items()}
        ticks = MaxNLocator(MOST_STEPS, steps=ROUND_STEPS).tick_values(low, high)
        return {float(tick): self._sized(f"{tick:g}") for tick in ticks if low <= tick <= high}

    def _sized(self, words: str) -> str:
        return self.written.language.figures(words.removeprefix("-") if self.sides else words).replace("-", MINUS)

    @property
    def up(self) -> Limits:
        """The limits of the values, with the band below them."""
        low, high = self.scale
        return low - (high - low) * self.band / (self.bottom - TOP - self.band), high

    def above_days(self, units: float) -> float:
        """The value that stands so many picture units above the line of the days."""
        low, high = self.up
        return low + (high - low) * units / (self.bottom - TOP)


def day_ticks(frame: Frame) -> dict[float, str]:
    """The days to label by their numbers, with their words: months by short names, a year in place of its January.

    Where no January is among them the first month bears its year.
    """
    make: Any = AutoDateLocator
    locator = make(minticks=2)
    most = MOST_LABELS - 1 if frame.sides else MOST_LABELS
    locator.maxticks |= {YEARLY: most, MONTHLY: most + 1 if frame.holds_january else most}
    locator.intervald |= {YEARLY: YEAR_STEPS, MONTHLY: MONTH_STEPS}
    numbers = locator.tick_values(*(datetime.combine(day, time(), UTC) for day in frame.span))
    days = [FIRST_DAY + timedelta(days=number) for number in numbers]
    words = [str(day.year) if day.month == 1 else frame.written.language.short_month(day) for day in days]
    if days and all(day.month > 1 for day in days):
        words[0] += f" \N{RIGHT SINGLE QUOTATION MARK}{days[0].year % 100:02}"
    first, last = frame.across
    return {n: word for n, word in zip(map(float, numbers), words, strict=True) if first <= n <= last}


def panel_view(frame: Frame) -> View:
    """The axes with their frame drawn, ready for one foot."""
    return View(_axes(frame.right, frame.low), frame.across, frame.up, (WIDTH, frame.height), drawn_frame(frame))


@cache
def _axes(right: float, low: bool) -> Axes:
    lower = LOWER if low else 0
    axes = framed_axes(WIDTH, HEIGHT - lower, (LEFT, TOP, right, BOTTOM - lower))
    # Nothing is written along them, so that nobody has to look for room for it.
    axes.xaxis.set_label_coords(0, 0)
    axes.yaxis.set_label_coords(0, 0)
    return axes


@lru_cache(maxsize=64)
def drawn_frame(frame: Frame) -> str:
    """Ticks, labels and lines of a frame, drawn once for all that show it."""
    axes = _axes(frame.right, frame.low)
    days = day_ticks(frame)
    axes.set_xticks(list(days), list(days.values()))
    axes.set_yticks(list(frame.values), list(frame.values.values()))
    axes.set(xlim=frame.across, ylim=frame.up)
    added: list[Artist] = []
    if frame.unit:
        added.append(on_axes(Lettering(frame.unit, (-0.04, 1), "end", down=-8), axes, axes.transAxes))
    if frame.sides:
        across = on_axes(Line2D(frame.across, (0, 0), color=COLOURS["quiet"], linewidth=1.2), axes, axes.transData)
        sides = zip(frame.sides, (0.77, 0.23), strict=True)
        added += [across, *(one for words, up in sides for one in lines_of(words, (1.06, up), axes.transAxes))]
    return svg_elements(axes, [axes, *added])

"""The axes of the panels through time: made once, their frame drawn once for what it shows, four feet on each frame."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache, lru_cache
from typing import Any

from matplotlib.artist import Artist
from matplotlib.axes import Axes
from matplotlib.dates import MONTHLY, YEARLY, AutoDateLocator
from matplotlib.ticker import FixedLocator, Formatter, FuncFormatter, MaxNLocator
from matplotlib.transforms import blended_transform_factory

from recordgen.days import SHORT_MONTHS
from recordgen.pictures.axes import Lettering, Limits, View, framed_axes, lines_of
from recordgen.pictures.charts.limits import FIRST_DAY, Scale, Span, day_number
from recordgen.pictures.pen import COLOURS
from recordgen.pictures.svg import drawn

# Four stand abreast at 1280 CSS px and two on a phone: then a unit is about a pixel, and words are 11 to 16 px.
WIDTH, HEIGHT = 170.0, 118.0
LEFT, RIGHT, TOP, BOTTOM = 29.0, 154.0, 18.0, 97.0
# Where words stand at the right side of the axes.
RIGHT_BESIDE_WORDS = 118.0
ROUND_STEPS = (1, 2, 5, 10)
MOST_STEPS = 3
# So few that no two labels of days touch; a year stands in place of its January, else beside the first month.
MONTH_STEPS, YEAR_STEPS = [2, 3, 4, 6, 12], [1, 2, 5, 10, 20, 50]
MOST_LABELS = 4


@dataclass(frozen=True)
class Frame:
    """All that the panels of the four feet of a horse have in common.

    band: room kept free above the days, picture units. today, today_words: a day to mark, with its word above. sides:
    words at the right of the upper and of the lower half; then values are shown without their sign.
    """

    span: Span
    scale: Scale
    unit: str
    band: float = 0.0
    today: date | None = None
    today_words: str = ""
    sides: tuple[str, str] | None = None

    @property
    def right(self) -> float:
        """Where the axes end."""
        return RIGHT_BESIDE_WORDS if self.sides else RIGHT

    @property
    def across(self) -> Limits:
        """The limits of the days."""
        return day_number(self.span[0]), day_number(self.span[1])

    @property
    def holds_january(self) -> bool:
        """Whether a year begins within the days."""
        return self.span[0].year < self.span[1].year or self.span[0].timetuple().tm_yday == 1

    @property
    def values(self) -> tuple[float, ...]:
        """Round values to label."""
        low, high = self.scale
        ticks = MaxNLocator(MOST_STEPS, steps=ROUND_STEPS).tick_values(low, high)
        return tuple(float(tick) for tick in ticks if low <= tick <= high)

    @property
    def up(self) -> Limits:
        """The limits of the values, with the band below them."""
        low, high = self.scale
        return low - (high - low) * self.band / (BOTTOM - TOP - self.band), high

    def above_days(self, units: float) -> float:
        """The value that stands so many picture units above the line of the days."""
        low, high = self.up
        return low + (high - low) * units / (BOTTOM - TOP)


class DayLabels(Formatter):
    """Months by their short names and years by their number, a year being told at least once."""

    def __call__(self, value: float, pos: int | None = None) -> str:
        """The word for one day."""
        day = _day(value)
        return str(day.year) if day.month == 1 else SHORT_MONTHS[day.month - 1]

    def format_ticks(self, values: Sequence[float]) -> list[str]:
        """The words for all days of an axis."""
        words = [self(value) for value in values]
        if words and not any(_day(value).month == 1 for value in values):
            words[0] += f" \N{RIGHT SINGLE QUOTATION MARK}{_day(values[0]).year % 100:02}"
        return words


def _day(value: float) -> date:
    return FIRST_DAY + timedelta(days=value)


def panel_view(frame: Frame) -> View:
    """The axes with their frame drawn, ready for one foot."""
    return View(_axes(frame.right), frame.across, frame.up, (WIDTH, HEIGHT), _drawn(frame))


@cache
def _axes(right: float) -> Axes:
    axes = framed_axes(WIDTH, HEIGHT, (LEFT, TOP, right, BOTTOM))
    make: Any = AutoDateLocator
    locator = make(minticks=2)
    locator.intervald |= {YEARLY: YEAR_STEPS, MONTHLY: MONTH_STEPS}
    axes.xaxis.set_major_locator(locator)
    axes.xaxis.set_major_formatter(DayLabels())
    return axes


@lru_cache(maxsize=64)
def _drawn(frame: Frame) -> str:
    axes = _axes(frame.right)
    axes.set(xlim=frame.across, ylim=frame.up)
    days: Any = axes.xaxis.get_major_locator()
    most = MOST_LABELS - 1 if frame.sides else MOST_LABELS
    days.maxticks |= {YEARLY: most, MONTHLY: most + 1 if frame.holds_january else most}
    axes.yaxis.set_major_locator(FixedLocator(frame.values))
    axes.yaxis.set_major_formatter(FuncFormatter(lambda value, _: _value_words(abs(value) if frame.sides else value)))
    lines, words = _today(axes, frame) if frame.today else ([], [])
    if frame.sides:
        lines.append(axes.axhline(0, color=COLOURS["quiet"], linewidth=1.2))
        words += [*lines_of(frame.sides[0], (1.06, 0.77), axes.transAxes)]
        words += [*lines_of(frame.sides[1], (1.06, 0.23), axes.transAxes)]
    unit = axes.text(LEFT - 5, HEIGHT - 10, frame.unit, transform=None, ha="right")
    written = drawn(axes, [axes, *words])
    for one in [unit, *lines]:
        one.remove()
    return written


def _value_words(value: float) -> str:
    return f"{value:g}".replace("-", "\N{MINUS SIGN}")


def _today(axes: Axes, frame: Frame) -> tuple[list[Artist], list[Artist]]:
    """A line at today, and its word above the axes."""
    day = day_number(frame.today or frame.span[1])
    words = Lettering(frame.today_words, (day, 1), "middle", "clay", down=-5)
    words.set_transform(blended_transform_factory(axes.transData, axes.transAxes))
    return [axes.axvline(day, color=COLOURS["clay"], linewidth=1.2)], [words]

"""The axes of the picture of growth: rates from left to right, a row a foot from top to bottom."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache

from matplotlib.axes import Axes
from matplotlib.ticker import FixedLocator, MaxNLocator, NullFormatter

from recordgen.language.quantities import IN_ENGLISH, Quantities
from recordgen.pictures.axes import Limits, View, framed_axes
from recordgen.pictures.charts.inch_ticks import decimal_ticks
from recordgen.pictures.charts.limits import roomy_scale
from recordgen.pictures.svg import svg_elements

# At 310 CSS px wide, what a phone gives it, words are 11 px.
WIDTH, ROW = 336.0, 42.0
LEFT, RIGHT, TOP, BELOW = 14.0, 322.0, 2.0, 37.0
LEAST_SCALE, MOST_STEPS = 3.0, 7
ROUND_STEPS = (1, 2, 5, 10)


@dataclass(frozen=True)
class RateFrame:
    """All that the axes show: the limits of the rates, how many rows, and the unit.

    inches: the rates to label, mm, with their words in inches; empty where mm are labelled.
    """

    across: Limits
    rows: int
    unit: str
    inches: tuple[tuple[float, str], ...] = ()

    @property
    def height(self) -> float:
        """The height of the figure, picture units."""
        return TOP + ROW * self.rows + BELOW


def rate_frame(values: Sequence[float], rows: int, unit: str, written: Quantities = IN_ENGLISH) -> RateFrame:
    """Axes that hold all values, mm, on to round numbers of mm, or of inches where these are labelled."""
    if written.units.inches:
        labelled = tuple(decimal_ticks(*roomy_scale(values, LEAST_SCALE), MOST_STEPS, written.language).items())
        return RateFrame((labelled[0][0], labelled[-1][0]), rows, unit, labelled)
    ticks = MaxNLocator(MOST_STEPS, steps=ROUND_STEPS).tick_values(*roomy_scale(values, LEAST_SCALE))
    return RateFrame((float(ticks[0]), float(ticks[-1])), rows, unit)


def rate_view(frame: RateFrame) -> View:
    """The axes with their frame drawn."""
    return View(
        _axes(frame.rows, bool(frame.inches)), frame.across, (frame.rows, 0), (WIDTH, frame.height), _draw_axes(frame)
    )


@cache
def _axes(rows: int, inches: bool) -> Axes:
    height = TOP + ROW * rows + BELOW
    axes = framed_axes(WIDTH, height, (LEFT, TOP, RIGHT, TOP + ROW * rows))
    if not inches:
        axes.xaxis.set_major_locator(MaxNLocator(MOST_STEPS, steps=ROUND_STEPS))
    axes.yaxis.set_major_locator(FixedLocator(range(1, rows)))
    axes.yaxis.set_major_formatter(NullFormatter())
    axes.grid(axis="x")
    return axes


@lru_cache(maxsize=64)
def _draw_axes(frame: RateFrame) -> str:
    axes = _axes(frame.rows, bool(frame.inches))
    if frame.inches:
        axes.set_xticks(*zip(*frame.inches, strict=True))
    axes.set(xlim=frame.across, ylim=(frame.rows, 0), xlabel=frame.unit)
    return svg_elements(axes, [axes])

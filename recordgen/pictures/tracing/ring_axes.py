"""The axes of a sole's ring unrolled: degrees from the toe with the zones of the wall, and millimetres of thickness."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from functools import cache, lru_cache

from matplotlib.axes import Axes
from matplotlib.ticker import FixedLocator, MaxNLocator, MultipleLocator, NullFormatter
from matplotlib.transforms import blended_transform_factory

from recordgen.pictures.axes import Limits, View, framed_axes, lines_of
from recordgen.pictures.charts.inch_ticks import inch_ticks
from recordgen.pictures.shapes import Point
from recordgen.pictures.svg import svg_elements
from recordgen.units import INCH_MM

# A zone of the wall: its words, and from where to where it goes, degrees from the toe.
Zone = tuple[str, float, float]

# At 310 CSS px wide, what a phone gives it, words are 11 px.
WIDTH, HEIGHT = 336.0, 186.0
BOX = (30.0, 20.0, 332.0, 148.0)
LEAST_REACH, REACH_STEP = 150.0, 15.0
LEAST_TOP, MM_STEP, MOST_STEPS = 10.0, 2.0, 4


@dataclass(frozen=True)
class RingFrame:
    """All that the axes show.

    reach: degrees to both sides of the toe. highest: mm at the top. sides: words at the left and at the right end.
    inches: whether mm are labelled in inches.
    """

    reach: float
    highest: float
    zones: tuple[Zone, ...]
    sides: tuple[str, str]
    unit: str
    inches: bool = False

    @property
    def across(self) -> Limits:
        """The limits of the degrees."""
        return -self.reach, self.reach


def ring_frame(
    points: Sequence[Point], zones: tuple[Zone, ...], sides: tuple[str, str], unit: str, inches: bool = False
) -> RingFrame:
    """Axes that hold all points, on to round numbers; zones out of their sight are left out."""
    reach = MultipleLocator(REACH_STEP).view_limits(0, max(abs(degrees) for degrees, _ in points))[1]
    highest = MultipleLocator(INCH_MM / 8 if inches else MM_STEP).view_limits(0, max(mm for _, mm in points) + 0.5)[1]
    reach, highest = max(float(reach), LEAST_REACH), max(float(highest), LEAST_TOP)
    return RingFrame(reach, highest, tuple(z for z in zones if z[2] > -reach and z[1] < reach), sides, unit, inches)


def ring_view(frame: RingFrame) -> View:
    """The axes with their frame drawn."""
    return View(_axes(frame.inches), frame.across, (0, frame.highest), (WIDTH, HEIGHT), _draw_axes(frame))


@cache
def _axes(inches: bool) -> Axes:
    axes = framed_axes(WIDTH, HEIGHT, BOX)
    if not inches:
        axes.yaxis.set_major_locator(MaxNLocator(MOST_STEPS, steps=(1, 2, 5, 10)))
    axes.xaxis.set_major_formatter(NullFormatter())
    axes.xaxis.set_label_coords(0, 0)
    axes.yaxis.set_label_coords(0, 0)
    axes.grid(axis="x", linestyle=(0, (1.0, 3.0)))
    return axes


@lru_cache(maxsize=16)
def _draw_axes(frame: RingFrame) -> str:
    axes = _axes(frame.inches)
    if frame.inches:
        ticks = inch_ticks(0, frame.highest, MOST_STEPS)
        axes.set_yticks(list(ticks), list(ticks.values()))
    axes.set(xlim=frame.across, ylim=(0, frame.highest))
    axes.xaxis.set_major_locator(FixedLocator([start for _, start, _ in frame.zones if start > -frame.reach]))
    below = blended_transform_factory(axes.transData, axes.transAxes)
    named = [
        one
        for words, *bounds in frame.zones
        for one in lines_of(words, (_middle(bounds, frame), -0.1), below, "middle", centred=False)
    ]
    inner, outer = frame.sides
    words = [
        axes.text(0.01, 1.04, inner, transform=axes.transAxes),
        axes.text(1, 1.04, outer, transform=axes.transAxes, ha="right"),
        axes.text(-0.02, 1.07, frame.unit, transform=axes.transAxes, ha="right"),
    ]
    written = svg_elements(axes, [axes, *named])
    for one in words:
        one.remove()
    return written


def _middle(bounds: Sequence[float], frame: RingFrame) -> float:
    """The middle of what is seen of a zone, degrees."""
    return (max(bounds[0], -frame.reach) + min(bounds[1], frame.reach)) / 2

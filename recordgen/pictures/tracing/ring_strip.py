"""The ring of a sole unrolled: how thick the wall is from the inner heel over the toe to the outer heel.

Unrolled, as millimetres then stand on one straight axis: what is a millimetre thicker looks the same at the heel and at
the toe, and two rings can be read against each other. Bent round a foot they would not.
"""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from recordgen.pictures.canvas import Canvas, legend
from recordgen.pictures.charts.axes import AXIS, GRID, number_words, value_ticks
from recordgen.pictures.labels_below import shortened
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, finite, joined, line, segments

__all__ = ["RingForm", "RingLine", "RingZone", "ring_key", "ring_strip"]

# At 310 CSS px wide, what a phone gives it, 12 of these units are still 11 px.
WIDTH, HEIGHT, FONT_SIZE = 336.0, 186.0, 12.0
LEFT, RIGHT, TOP, BOTTOM = 30.0, 332.0, 20.0, 148.0
FIRST_ROW, ROWS_APART, NOTCH = 163.0, 14.0, 4.0
LEAST_REACH, REACH_STEP = 150.0, 15.0
LEAST_TOP, TOP_STEP = 10.0, 2.0

Line = tuple[Point, ...]
RingForm = Literal["latest", "other", "earlier", "baseline", "above"]

# In the order in which they are drawn.
PENS: dict[RingForm, Pen] = {
    "above": Pen("moss", 0.6, "moss", fill_opacity=0.5),
    "earlier": Pen("quiet", 0.9),
    "baseline": Pen("moss", 1.8, dash=(0.1, 3.4), round_ends=True),
    "other": Pen("ink", 1.4, dash=(5.0, 3.0)),
    "latest": Pen("ink", 2.4),
}
KEY_ORDER: tuple[RingForm, ...] = ("latest", "other", "earlier", "baseline", "above")
BOUND = Pen("line", 0.9, dash=(1.0, 3.0))


@dataclass(frozen=True)
class RingLine:
    """One line on the strip: stretches of (degrees from the toe, inner side below 0; mm).

    form: the ring told of, that of the other moment of the same day, one of an earlier day, or the baseline. `above`
    is no line: its stretches are polygons between a ring and its baseline.
    """

    form: RingForm
    stretches: tuple[Line, ...]


@dataclass(frozen=True)
class RingZone:
    """A zone of the wall: its words, and from where to where it goes, degrees from the toe."""

    words: str
    start: float
    end: float


def ring_strip(lines: Sequence[RingLine], zones: Sequence[RingZone], labels: Mapping[str, str], title: str) -> str:
    """The unrolled ring with its zones named below and mm at the left. labels: `inner`, `outer`, `unit`.

    Raises ValueError where there is no point, or one is no number.
    """
    points = [point for one in lines for stretch in one.stretches for point in stretch]
    if not points:
        raise ValueError("no ring to draw")
    finite("ring", *(number for point in points for number in point))
    strip = _Strip.of(points)
    canvas = Canvas(WIDTH, HEIGHT, FONT_SIZE)
    _draw_axes(canvas, strip, zones, labels)
    for form, pen in PENS.items():
        for one in lines:
            if one.form == form and one.stretches:
                closed = form == "above"
                canvas.draw(joined(line(strip.all(stretch), closed) for stretch in one.stretches), pen)
    return canvas.picture(title)


@dataclass(frozen=True)
class _Strip:
    """The plot: how many degrees it reaches to each side, and the mm at its top."""

    reach: float
    highest: float

    @classmethod
    def of(cls, points: Sequence[Point]) -> _Strip:
        reach = math.ceil(max(abs(degrees) for degrees, _ in points) / REACH_STEP) * REACH_STEP
        highest = math.ceil((max(mm for _, mm in points) + 0.5) / TOP_STEP) * TOP_STEP
        return cls(max(reach, LEAST_REACH), max(highest, LEAST_TOP))

    def x(self, degrees: float) -> float:
        return LEFT + (RIGHT - LEFT) * (degrees + self.reach) / (2 * self.reach)

    def y(self, mm: float) -> float:
        return BOTTOM - (BOTTOM - TOP) * mm / self.highest

    def all(self, points: Sequence[Point]) -> list[Point]:
        return [(self.x(degrees), self.y(mm)) for degrees, mm in points]


def _draw_axes(canvas: Canvas, strip: _Strip, zones: Sequence[RingZone], labels: Mapping[str, str]) -> None:
    values = value_ticks((0.0, strip.highest))
    canvas.draw(segments(((LEFT, strip.y(mm)), (RIGHT, strip.y(mm))) for mm in values), GRID)
    for mm in values:
        if strip.y(mm) > TOP + 8:
            canvas.write(number_words(mm), (LEFT - 5, strip.y(mm) + 4), "end")
    canvas.write(labels["unit"], (LEFT - 5, TOP + 2), "end")
    canvas.write(labels["inner"], (LEFT + 2, 12))
    canvas.write(labels["outer"], (RIGHT, 12), "end")
    shown = [zone for zone in zones if zone.end > -strip.reach and zone.start < strip.reach]
    inner_bounds = [strip.x(zone.start) for zone in shown if zone.start > -strip.reach]
    canvas.draw(segments(((x, TOP), (x, BOTTOM + NOTCH)) for x in inner_bounds), BOUND)
    canvas.draw(line([(LEFT, BOTTOM), (RIGHT, BOTTOM)]), AXIS)
    for zone in shown:
        _name_zone(canvas, strip, zone)


def _name_zone(canvas: Canvas, strip: _Strip, zone: RingZone) -> None:
    """Its words below the axis, one a line, about its middle."""
    left, right = (strip.x(min(max(bound, -strip.reach), strip.reach)) for bound in (zone.start, zone.end))
    for row, word in enumerate(zone.words.split(" ")[:2]):
        room = 1.3 * (right - left)
        canvas.write(shortened(word, room, FONT_SIZE), ((left + right) / 2, FIRST_ROW + ROWS_APART * row), "middle")


def ring_key(words: Mapping[RingForm, str]) -> dict[RingForm, str]:
    """A small picture of each form that has words, named by them."""
    return legend({form: _key(form) for form in KEY_ORDER}, words)


def _key(form: RingForm) -> Callable[[Canvas, Point], None]:
    def draw(canvas: Canvas, at: Point) -> None:
        x, y = at
        half = 4.5
        box = [(x - half, y - half), (x + half, y - half), (x + half, y + half), (x - half, y + half)]
        shape = line(box, closed=True) if form == "above" else line([(x - 7, y), (x + 7, y)])
        canvas.draw(shape, PENS[form])

    return draw

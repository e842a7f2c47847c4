"""A sole with the line that runs everywhere equally far from its white line, and what stands outside that line.

A drawing to think by: the words on it say that it is no plan to cut.
"""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

from recordgen.pictures.canvas import Canvas, box_key, legend, stroke_key
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, line
from recordgen.pictures.tracing import sole_anatomy as anatomy
from recordgen.pictures.tracing.sole import (
    EDGE,
    FONT_SIZE,
    PAIR_WIDTH,
    WHITE_LINE,
    Line,
    SolePlace,
    TracedSole,
    extent_of,
    height_of,
    unit_of,
)
from recordgen.pictures.tracing.upright_layout import BAR_MM, BAR_ROOM, draw_scale_bar

OffForm = Literal["wall", "white line", "even", "outside"]
EVEN = Pen("moss", 1.6, dash=(5.0, 3.0))
OUTSIDE = Pen("moss", 0.8, "moss", fill_opacity=0.45)
ASIDE, TOP, AWAY, NOTE_ROOM = 62.0, 26.0, 6.0, 18.0
# How wide the sheet of a drawing without words is, whose lines are finer, as it stands small.
ALONE = 110.0
FINE_EDGE, FINE_EVEN = Pen("ink", 0.9), Pen("moss", 1.1, dash=(3.0, 2.0))
# Words of a place nearer to the axis than this, mm, stand above it.
TOE_HALF = 12.0


@dataclass(frozen=True)
class OffConcentric:
    """even: the line of equal distance. outside: stretches of wall outside it, as polygons, mm in the foot's frame.

    told: words beside places of the wall, such as how far a zone stands outside.
    """

    sole: TracedSole
    even: Line
    outside: tuple[Line, ...]
    told: tuple[tuple[str, Point], ...] = ()


def off_concentric(shown: OffConcentric, labels: Mapping[str, str], title: str, bar_mm: float = BAR_MM) -> str:
    """The drawing. labels: `inner`, `outer`, `bar`, and `note`, which says that it is no plan to cut."""
    extent = extent_of([shown.sole])
    unit = unit_of(extent, PAIR_WIDTH - 2 * ASIDE)
    height = height_of(extent, unit, TOP + NOTE_ROOM)
    canvas = Canvas(PAIR_WIDTH, height, FONT_SIZE)
    place = SolePlace(extent, unit, PAIR_WIDTH / 2, TOP + NOTE_ROOM)
    _draw(canvas, shown, place, EDGE, EVEN)
    canvas.write(labels["note"], (PAIR_WIDTH / 2, 12), "middle", "ink")
    canvas.write(labels["inner"], (1, 12 + NOTE_ROOM))
    canvas.write(labels["outer"], (PAIR_WIDTH - 1, 12 + NOTE_ROOM), "end")
    for words, at in shown.told:
        x, y = place.at(at)
        if abs(at[0]) < TOE_HALF:
            canvas.write(words, (x, y - AWAY), "middle", "ink")
        else:
            left = at[0] < 0
            canvas.write(words, (x - AWAY if left else x + AWAY, y + 4), "end" if left else "start", "ink")
    draw_scale_bar(canvas, labels["bar"], unit, height, bar_mm)
    return canvas.picture(title, "wide")


def off_concentric_alone(shown: OffConcentric, title: str) -> str:
    """The same without a word, to stand small beside words that tell it, and that it is no plan to cut."""
    extent = extent_of([shown.sole])
    unit = unit_of(extent, ALONE)
    canvas = Canvas(ALONE, height_of(extent, unit, 0) - BAR_ROOM, FONT_SIZE)
    _draw(canvas, shown, SolePlace(extent, unit, ALONE / 2, 0), FINE_EDGE, FINE_EVEN)
    return canvas.picture(title, "wide")


def _draw(canvas: Canvas, shown: OffConcentric, place: SolePlace, edge: Pen, even: Pen) -> None:
    for form in shown.outside:
        canvas.draw(line(place.all(form), closed=True), OUTSIDE)
    canvas.draw(anatomy.smoothly(place.all(shown.sole.white_line)), WHITE_LINE)
    canvas.draw(line(place.all(shown.even)), even)
    canvas.draw(anatomy.smoothly(place.all(shown.sole.wall)), edge)


def off_key(words: Mapping[OffForm, str]) -> dict[OffForm, str]:
    """A small picture of each form that has words, named by them."""
    return legend(_KEY_FORMS, words)


_KEY_FORMS: dict[OffForm, Callable[[Canvas, Point], None]] = {
    "wall": stroke_key(EDGE),
    "white line": stroke_key(WHITE_LINE),
    "even": stroke_key(EVEN),
    "outside": box_key(OUTSIDE),
}

"""Soles as they were traced, to scale: toe up, inner side at the left whatever foot it is."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from recordgen.pictures.canvas import Canvas, box_key, legend, stroke_key
from recordgen.pictures.pen import DEEP_GROOVE, GROOVE, Pen
from recordgen.pictures.shapes import Point, line
from recordgen.pictures.tracing import sole_anatomy as anatomy
from recordgen.pictures.tracing.upright_layout import BAR_MM, BAR_ROOM, draw_scale_bar
from recordgen.pictures.tracing.zone_names import NamedZones, draw_zones

# At 310 CSS px wide, what a phone gives it, 12 of these units are still more than 11 px.
WIDTH, PAIR_WIDTH, FONT_SIZE = 300.0, 336.0, 12.0
MOST_HEIGHT = 300.0
SIDE_ROOM, TOP, NAME_ROOM = 14.0, 22.0, 16.0
PAIR_INSET = 12.0
BEYOND = 4.0
BREAKOVER_HALF, BREAKOVER_END = 7.0, 2.0

Line = tuple[Point, ...]
SoleForm = Literal["wall", "white line", "flare", "frog", "bars", "axis", "best axis", "breakover"]

GROUND = Pen(fill="straw", opacity=0.1)
HORN = Pen(fill="quiet", opacity=0.28)
EDGE = Pen("ink", 2.0, round_ends=True)
WHITE_LINE = Pen("straw", 1.5, dash=(0.1, 3.0), round_ends=True)
FLARE = Pen("moss", 0.8, "moss", fill_opacity=0.85)
BARE_FROG, FROG = Pen(fill="card"), Pen("ink", 1.0, "straw", fill_opacity=0.26)
BARE_BARS, BARS = Pen(fill="card"), Pen("ink", 1.1, "quiet", fill_opacity=0.3)
AXIS = Pen("quiet", 1.0, dash=(2.0, 2.6))
BEST_AXIS = Pen("moss", 1.8, dash=(8.0, 4.0))
BREAKOVER = Pen("ink", 1.8)


@dataclass(frozen=True)
class TracedSole:
    """A sole in the foot's own frame, mm: x across it, outer side above 0; y along the frog's axis, toe above 0.

    wall, white_line: from the inner heel round the toe to the outer one. frog: inner corner, apex, outer corner.
    best_axis: a point on it, and by how many degrees it leans to the outer side; None where it is not turned. flares:
    the stretches of wall that stand above its baseline, as polygons. What is empty was not traced, or is not there.
    """

    wall: Line = ()
    white_line: Line = ()
    frog: Line = ()
    bars: tuple[Line, ...] = ()
    best_axis: tuple[Point, float] | None = None
    breakover: Point | None = None
    flares: tuple[Line, ...] = ()

    @property
    def points(self) -> Line:
        """Every point that must find room."""
        single = (self.breakover,) if self.breakover else ()
        return (*self.wall, *self.white_line, *self.frog, *(point for bar in self.bars for point in bar), *single)

    @property
    def forms(self) -> list[SoleForm]:
        """Parts to see, in the order of a key."""
        return [form for form, (_, there) in _PARTS.items() if there(self)]


@dataclass(frozen=True)
class Extent:
    """The reach of soles in the foot's frame, mm; soles drawn with the same extent have the same scale."""

    left: float
    right: float
    back: float
    front: float


def extent_of(soles: Sequence[TracedSole]) -> Extent:
    """The extent that holds some soles, alike on both sides of the axis. Raises ValueError without a point."""
    points = [point for sole in soles for point in sole.points]
    if not points:
        raise ValueError("no sole to draw")
    half = max(abs(x) for x, _ in points)
    return Extent(-half, half, min(y for _, y in points), max(y for _, y in points))


def traced_sole(
    sole: TracedSole,
    extent: Extent,
    labels: Mapping[str, str],
    title: str,
    zones: NamedZones | None = None,
    bar_mm: float = BAR_MM,
) -> str:
    """One sole with a bar of scale. labels: `inner`, `outer`, and `bar`, the words beside it. zones: to name."""
    unit = unit_of(extent, WIDTH)
    height = height_of(extent, unit, TOP)
    canvas, place = Canvas(WIDTH, height, FONT_SIZE), SolePlace(extent, unit, WIDTH / 2, TOP)
    _draw(canvas, sole, place)
    name_sides(canvas, labels, 0, WIDTH, 12)
    draw_scale_bar(canvas, labels["bar"], unit, height, bar_mm)
    if zones:
        draw_zones(canvas, zones, place.at, [*_lines(sole, place), *_rows(canvas, labels, height)], WIDTH)
    return canvas.picture(title, "wide")


def _lines(sole: TracedSole, place: SolePlace) -> list[list[Point]]:
    """Whatever of a sole is drawn as a line or a form, as lines on the sheet."""
    axes = [place.axis((0.0, 0.0), 0.0)] if sole.frog else []
    axes += [place.axis(*sole.best_axis)] if sole.best_axis else []
    return [*map(place.all, (sole.wall, sole.white_line, (*sole.frog, *sole.frog[:1]), *sole.bars)), *axes]


def _rows(canvas: Canvas, labels: Mapping[str, str], height: float) -> list[list[Point]]:
    """The rows of words at the top and at the bottom of a sheet, as lines through them."""
    inner, outer = (canvas.width_of(labels[side]) for side in ("inner", "outer"))
    below = height - BAR_ROOM / 2
    return [[(0.0, 9.0), (inner, 9.0)], [(WIDTH - outer, 9.0), (WIDTH, 9.0)], [(0.0, below), (WIDTH, below)]]


def traced_pair(
    soles: Mapping[str, TracedSole], extent: Extent, labels: Mapping[str, str], title: str, bar_mm: float = BAR_MM
) -> str:
    """Two soles side by side on one scale, each under its name. soles: by name, left one first; labels as above."""
    cell, top = PAIR_WIDTH / 2, TOP + NAME_ROOM
    unit = unit_of(extent, cell)
    canvas = Canvas(PAIR_WIDTH, height_of(extent, unit, top), FONT_SIZE)
    for number, (name, sole) in enumerate(soles.items()):
        start = cell * number
        _draw(canvas, sole, SolePlace(extent, unit, start + cell / 2, top))
        canvas.write(name, (start + cell / 2, 12), "middle", "ink")
        name_sides(canvas, labels, start + PAIR_INSET, start + cell - PAIR_INSET, 12 + NAME_ROOM)
    draw_scale_bar(canvas, labels["bar"], unit, height_of(extent, unit, top), bar_mm)
    return canvas.picture(title, "wide")


def unit_of(extent: Extent, width: float) -> float:
    """Picture units for a millimetre."""
    across, along = extent.right - extent.left, extent.front - extent.back + 2 * BEYOND
    return min((width - 2 * SIDE_ROOM) / max(across, 1), MOST_HEIGHT / max(along, 1))


def height_of(extent: Extent, unit: float, top: float) -> float:
    """Tell how high a sheet must be, picture units, with so much room on top."""
    return top + (extent.front - extent.back + 2 * BEYOND) * unit + BAR_ROOM


def name_sides(canvas: Canvas, labels: Mapping[str, str], left: float, right: float, height: float) -> None:
    """The words for the inner and the outer side at both ends of a row."""
    canvas.write(labels["inner"], (left + 1, height))
    canvas.write(labels["outer"], (right - 1, height), "end")


@dataclass(frozen=True)
class SolePlace:
    """The place of a sole on the sheet: the axis at `middle`, the foremost point below `top`."""

    extent: Extent
    unit: float
    middle: float
    top: float

    def at(self, point: Point) -> Point:
        """The place where a point of the foot stands."""
        return self.middle + point[0] * self.unit, self.top + (self.extent.front + BEYOND - point[1]) * self.unit

    def all(self, points: Sequence[Point]) -> list[Point]:
        """The place where points of the foot stand."""
        return [self.at(point) for point in points]

    def axis(self, through: Point, degrees: float) -> list[Point]:
        """An axis from behind the heels to before the toe."""
        lean = math.tan(math.radians(degrees))
        ends = (self.extent.back - BEYOND / 2, self.extent.front + BEYOND)
        return [self.at((through[0] + (y - through[1]) * lean, y)) for y in ends]


def _draw(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    for part, there in _PARTS.values():
        if there(sole):
            part(canvas, sole, place)


def _draw_wall(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    wall, white = place.all(sole.wall), place.all(sole.white_line)
    canvas.draw(anatomy.smoothly(white or wall), GROUND)
    if white:
        canvas.draw(anatomy.band(wall, white), HORN)
    canvas.draw(anatomy.smoothly(wall), EDGE)


def _draw_white_line(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    canvas.draw(anatomy.smoothly(place.all(sole.white_line)), WHITE_LINE)


def _draw_flares(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    for flare in sole.flares:
        canvas.draw(line(place.all(flare), closed=True), FLARE)


def _draw_frog(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    """With its branches, the groove between them and those beside it, after its three points."""
    corners = place.all(sole.frog)
    for side in (0, 2):
        canvas.draw(anatomy.side_groove(corners, side), GROOVE)
    canvas.draw(anatomy.frog(corners), BARE_FROG)
    canvas.draw(anatomy.frog(corners), FROG)
    canvas.draw(anatomy.central_groove(corners), DEEP_GROOVE)


def _draw_bars(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    for bar in sole.bars:
        canvas.draw(anatomy.bar(place.all(bar)), BARE_BARS)
        canvas.draw(anatomy.bar(place.all(bar)), BARS)


def _draw_axis(canvas: Canvas, _: TracedSole, place: SolePlace) -> None:
    canvas.draw(line(place.axis((0.0, 0.0), 0.0)), AXIS)


def _draw_best_axis(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    if sole.best_axis:
        canvas.draw(line(place.axis(*sole.best_axis)), BEST_AXIS)


def _draw_breakover(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    if sole.breakover:
        x, y = sole.breakover
        across = [(x - BREAKOVER_HALF, y - BREAKOVER_END), (x - BREAKOVER_HALF, y)]
        canvas.draw(line(place.all([*across, *((2 * x - a, b) for a, b in reversed(across))])), BREAKOVER)


# In the order in which they are drawn: how, and whether a sole has it.
_PARTS: dict[SoleForm, tuple[Callable[[Canvas, TracedSole, SolePlace], None], Callable[[TracedSole], bool]]] = {
    "wall": (_draw_wall, lambda sole: bool(sole.wall)),
    "white line": (_draw_white_line, lambda sole: bool(sole.white_line)),
    "flare": (_draw_flares, lambda sole: bool(sole.flares)),
    "bars": (_draw_bars, lambda sole: bool(sole.bars)),
    "frog": (_draw_frog, lambda sole: bool(sole.frog)),
    "axis": (_draw_axis, lambda sole: bool(sole.frog)),
    "best axis": (_draw_best_axis, lambda sole: sole.best_axis is not None),
    "breakover": (_draw_breakover, lambda sole: sole.breakover is not None),
}


def sole_key(words: Mapping[SoleForm, str]) -> dict[SoleForm, str]:
    """A small picture of each form that has words, named by them."""
    return legend(_KEY_FORMS, words)


def _key_wall(canvas: Canvas, at: Point) -> None:
    box_key(HORN, 5.5)(canvas, at)
    canvas.draw(line([(at[0] - 5.5, at[1] - 5.5), (at[0] + 5.5, at[1] - 5.5)]), EDGE)


def _key_frog(canvas: Canvas, at: Point) -> None:
    x, y = at
    canvas.draw(anatomy.frog([(x - 5, y + 5), (x, y - 7), (x + 5, y + 5)]), FROG)


def _key_breakover(canvas: Canvas, at: Point) -> None:
    x, y = at
    canvas.draw(line([(x - 6, y + 3), (x - 6, y), (x + 6, y), (x + 6, y + 3)]), BREAKOVER)


_KEY_FORMS: dict[SoleForm, Callable[[Canvas, Point], None]] = {
    "wall": _key_wall,
    "white line": stroke_key(WHITE_LINE),
    "flare": box_key(FLARE),
    "frog": _key_frog,
    "bars": lambda canvas, at: canvas.draw(anatomy.bar([(at[0] - 5, at[1] + 6), (at[0] + 4, at[1] - 6)]), BARS),
    "axis": stroke_key(AXIS),
    "best axis": stroke_key(BEST_AXIS),
    "breakover": _key_breakover,
}

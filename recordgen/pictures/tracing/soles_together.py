"""Traced soles laid over each other or side by side through a year, each set on one scale."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from typing import Literal

from recordgen.pictures.canvas import Canvas, legend, stroke_key
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import line
from recordgen.pictures.tracing import sole_anatomy as anatomy
from recordgen.pictures.tracing.sole import (
    FLARE,
    FONT_SIZE,
    FROG,
    HORN,
    PAIR_WIDTH,
    TOP,
    SolePlace,
    TracedSole,
    extent_of,
    height_of,
    name_sides,
    unit_of,
)
from recordgen.pictures.tracing.upright_layout import BAR_MM, draw_scale_bar

OverlayForm = Literal["first", "last"]
FIRST, LAST = Pen("clay", 1.6, dash=(5.0, 3.0)), Pen("ink", 2.0, round_ends=True)
FIRST_INSIDE, LAST_INSIDE = Pen("clay", 1.0, dash=(3.0, 2.0)), Pen("ink", 1.0)
COLUMNS, NAME_ROOM, FRAME_GAP = 5, 18.0, 6.0
FRAME_EDGE = Pen("ink", 1.5, round_ends=True)


def overlay(first: TracedSole, last: TracedSole, labels: Mapping[str, str], title: str, bar_mm: float = BAR_MM) -> str:
    """Two soles on one scale, the first dashed under the last. labels: `inner`, `outer` and `bar`."""
    extent = extent_of([first, last])
    unit = unit_of(extent, PAIR_WIDTH)
    height = height_of(extent, unit, TOP)
    canvas = Canvas(PAIR_WIDTH, height, FONT_SIZE)
    place = SolePlace(extent, unit, PAIR_WIDTH / 2, TOP)
    for sole, edge, inside in ((first, FIRST, FIRST_INSIDE), (last, LAST, LAST_INSIDE)):
        for points in (sole.white_line, sole.wall):
            if points:
                canvas.draw(anatomy.smoothly(place.all(points)), edge if points is sole.wall else inside)
        if sole.frog:
            canvas.draw(anatomy.frog(place.all(sole.frog)), inside)
    name_sides(canvas, labels, 0, PAIR_WIDTH, 12)
    draw_scale_bar(canvas, labels["bar"], unit, height, bar_mm)
    return canvas.picture(title, "wide")


def overlay_key(words: Mapping[OverlayForm, str]) -> dict[OverlayForm, str]:
    """A small picture of the line of each, named by its words."""
    return legend({"first": stroke_key(FIRST), "last": stroke_key(LAST)}, words)


def film_strip(frames: Sequence[tuple[str, TracedSole]], title: str) -> str:
    """Soles in the order of their days, on one scale, each over its words. Raises ValueError without a point."""
    extent = extent_of([sole for _, sole in frames])
    cell = PAIR_WIDTH / COLUMNS
    unit = (cell - FRAME_GAP) / max(extent.right - extent.left, 1)
    row = (extent.front - extent.back) * unit + NAME_ROOM + FRAME_GAP
    rows = -(-len(frames) // COLUMNS)
    canvas = Canvas(PAIR_WIDTH, rows * row + FRAME_GAP, FONT_SIZE)
    for number, (words, sole) in enumerate(frames):
        middle, top = cell * (number % COLUMNS + 0.5), row * (number // COLUMNS)
        _frame(canvas, sole, SolePlace(extent, unit, middle, top))
        canvas.write(words, (middle, top + row - FRAME_GAP), "middle", "ink")
    return canvas.picture(title, "wide")


def _frame(canvas: Canvas, sole: TracedSole, place: SolePlace) -> None:
    wall, white = place.all(sole.wall), place.all(sole.white_line)
    if wall and white:
        canvas.draw(anatomy.band(wall, white), HORN)
    for flare in sole.flares:
        canvas.draw(line(place.all(flare), closed=True), FLARE)
    if sole.frog:
        canvas.draw(anatomy.frog(place.all(sole.frog)), FROG)
    if wall:
        canvas.draw(anatomy.smoothly(wall), FRAME_EDGE)

"""Name the zones of a wall on a traced sole: outside the wall where the sheet has room, else inside the white line."""

from __future__ import annotations

from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from itertools import product

import shapely

from recordgen.pictures.canvas import Canvas
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, segments

Line = tuple[Point, ...]

BOUND = Pen("ink", 0.8)
# Of words, picture units: from row to row, above and below a baseline; from whatever else is drawn, and from the edge.
ROW, RISES, SINKS, GAP, EDGE = 13.0, 9.0, 3.0, 3.0, 2.0
# A zone whose middle is so near to the axis, mm, is named above the wall.
TOE_HALF = 12.0
# How far words may stand from the middle of their zone, along the wall and away from it, picture units.
SLIDES = (0.0, -6.0, 6.0, -12.0, 12.0, -18.0, 18.0, -24.0, 24.0)
AWAY = (4.0, 8.0, 12.0, 16.0, 20.0, 26.0, 32.0)


@dataclass(frozen=True)
class NamedZone:
    """A zone of a wall: its words, its whole name, and its middle on the white line and on the outer edge, mm."""

    words: str
    name: str
    inner: Point
    outer: Point


@dataclass(frozen=True)
class NamedZones:
    """The zones of a wall, mm in the foot's frame. bounds: strokes across the wall from zone to zone."""

    zones: tuple[NamedZone, ...] = ()
    bounds: tuple[tuple[Point, Point], ...] = ()


def draw_zones(
    canvas: Canvas, named: NamedZones, at: Callable[[Point], Point], taken: Sequence[Sequence[Point]], width: float
) -> None:
    """The bounds across the wall, and the words clear of all that is taken, each in a group that tells the name.

    at: where a point of the foot stands on the sheet. taken: lines and forms on the sheet. width: of the sheet.
    """
    if named.bounds:
        canvas.draw(segments((at(start), at(end)) for start, end in named.bounds), BOUND)
    full = shapely.union_all([shapely.LineString(one).buffer(GAP) for one in taken if len(one) > 1])
    for zone in named.zones:
        rows = zone.words.split(" ")
        size = max(map(canvas.width_of, rows)), ROW * (len(rows) - 1) + RISES + SINKS
        inner, outer = at(zone.inner), at(zone.outer)
        boxes = _above(outer, size) if abs(zone.outer[0]) < TOE_HALF else _beside(inner, outer, size, width)
        box = _clearest(list(boxes), full)
        full = full.union(box.buffer(GAP))
        with canvas.group(zone.name):
            _write(canvas, rows, box)


def _write(canvas: Canvas, rows: Sequence[str], box: shapely.Polygon) -> None:
    left, top, right, _ = box.bounds
    for number, row in enumerate(rows):
        canvas.write(row, ((left + right) / 2, top + RISES + ROW * number), "middle", "ink")


def _above(spot: Point, size: Point) -> Iterator[shapely.Polygon]:
    """Places over a spot, the nearest first."""
    for away in AWAY:
        yield shapely.box(spot[0] - size[0] / 2, spot[1] - away - size[1], spot[0] + size[0] / 2, spot[1] - away)


def _beside(inner: Point, outer: Point, size: Point, width: float) -> Iterator[shapely.Polygon]:
    """Places on the sheet outside the wall, then those inside the white line, the nearest of each first."""
    outward = -1 if outer[0] < width / 2 else 1
    near = sorted(product(AWAY, SLIDES), key=lambda off: off[0] + abs(off[1]))
    for spot, side in ((outer, outward), (inner, -outward)):
        for away, slide in near:
            x, y = spot[0] + side * away, spot[1] + slide
            left = x if side > 0 else x - size[0]
            if left > EDGE and left + size[0] < width - EDGE:
                yield shapely.box(left, y - size[1] / 2, left + size[0], y + size[1] / 2)


def _clearest(boxes: Sequence[shapely.Polygon], full: shapely.Geometry) -> shapely.Polygon:
    """The first place that is clear; where none is, that with the least under it."""
    clear = next((box for box in boxes if not box.intersects(full)), None)
    return clear or min(boxes, key=lambda box: float(box.intersection(full).area))

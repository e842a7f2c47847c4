"""Marks that grow out with the wall: each on the wall rolled flat, where it was seen before, and when it is gone."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from contextlib import nullcontext
from dataclasses import dataclass

from recordgen.pictures.canvas import Anchor, Canvas
from recordgen.pictures.feet.rolled_wall import RolledWall, wall_heights
from recordgen.pictures.feet.sole_form import zone_shares
from recordgen.pictures.feet.wall_marks import draw_crack, draw_wall_mark, mark_key
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, curve, finite, in_order, line, segments
from recordgen.records.models.foot import MarkKind
from recordgen.records.models.names import ZONES, Foot, Zone

__all__ = ["Defect", "growing_out", "mark_key"]

# As large as the panels through time: two abreast on a phone words are more than 11 px.
WIDTH, HEIGHT = 170.0, 122.0
LEFT, RIGHT, GROUND = 5.0, 165.0, 102.0
HIGHEST, MOST_UNIT = 70.0, 0.85
ABOVE, BELOW = 11.0, GROUND + 16
STEPS, MARK_STEPS, HAIRS = 44, 8, 44

HALF_UNSIZED, LEAST_HALF = 5.5, 3.2
BESIDE_MARK, LEAST_EXPECTED = 4.0, 2.0
HEAD = 3.0

WALL = Pen(fill="quiet", opacity=0.16)
EDGE = Pen("ink", 2.0, round_ends=True)
HAIR = Pen("quiet", 0.8, opacity=0.6, round_ends=True)
ZONE_EDGE = Pen("card", 1.4)
EXPECTED = Pen(fill="moss", opacity=0.32)
WAY = Pen("clay", 0.9, opacity=0.7)
STILL_TO_GO = Pen("quiet", 1.5, dash=(0.1, 3.4), round_ends=True)
ARROW_HEAD = Pen("quiet", 1.3, round_ends=True)

SIDES: dict[str, tuple[float, Anchor]] = {
    "inner": (1.0, "start"),
    "toe": (WIDTH / 2, "middle"),
    "outer": (WIDTH - 1, "end"),
}


@dataclass(frozen=True)
class Defect:
    """Something on the wall that grows down with it.

    below_hairline_mm: along the wall, where it is now. length_mm: how far it reaches round the wall, of no meaning for
    a crack. earlier_mm: where it was seen before, in any order. expected_mm: between which distances it was expected to
    be. label: when it will have grown out, in words.
    """

    zone: Zone
    kind: MarkKind
    below_hairline_mm: float
    length_mm: float | None
    earlier_mm: tuple[float, ...]
    expected_mm: tuple[float, float] | None
    label: str


def growing_out(
    defects: Sequence[Defect], heights: Mapping[Zone, float], labels: Mapping[str, str], foot: Foot, title: str
) -> str:
    """One foot's wall rolled flat, the inner heel at the left, with what grows out of it.

    The words of a single mark stand below it; those of several are told to whoever points at them.

    heights: the wall's height by zone, mm, as far as it was measured. labels: `inner`, `toe` and `outer`, written above
    the wall where they are given.
    Raises ValueError for a distance that is no number or below zero.
    """
    wall = _wall(defects, heights, foot)
    canvas = Canvas(WIDTH, HEIGHT)
    _draw_wall(canvas, wall)
    for side, (x, anchor) in SIDES.items():
        if labels.get(side):
            canvas.write(labels[side], (x, ABOVE), anchor)
    for defect, share in _spots(defects):
        with canvas.group(defect.label) if defect.label else nullcontext():
            _draw_defect(canvas, wall, share, defect)
    if len(defects) == 1:
        _write_below(canvas, wall.x(_spots(defects)[0][1]), defects[0].label)
    return canvas.picture(title, "panel")


def _write_below(canvas: Canvas, x: float, words: str) -> None:
    """Words under the ground, towards the side on which there is room for them."""
    if x < WIDTH / 3:
        canvas.write(words, (1, BELOW), "start", "ink")
    elif x > 2 * WIDTH / 3:
        canvas.write(words, (WIDTH - 1, BELOW), "end", "ink")
    else:
        canvas.write(words, (WIDTH / 2, BELOW), "middle", "ink")


def _wall(defects: Sequence[Defect], heights: Mapping[Zone, float], foot: Foot) -> RolledWall:
    deepest: dict[Zone, float] = {}
    for defect in defects:
        _check(defect)
        deepest[defect.zone] = max(deepest.get(defect.zone, 0), defect.below_hairline_mm, *defect.earlier_mm)
    known = wall_heights(foot, heights, deepest)
    return RolledWall(foot, known, (LEFT, RIGHT), GROUND, min(HIGHEST / max(known.values()), MOST_UNIT))


def _check(defect: Defect) -> None:
    distances = (defect.below_hairline_mm, *defect.earlier_mm, *(defect.expected_mm or ()))
    finite("distance below the hairline", *distances, defect.length_mm or 0)
    in_order("expected distance", *(defect.expected_mm or ()))
    if min(distances) < 0:
        raise ValueError("distance below the hairline below zero")


def _spots(defects: Sequence[Defect]) -> list[tuple[Defect, float]]:
    """Each defect with its share of the way round; those of one zone stand side by side in it."""
    spots = []
    for index, defect in enumerate(defects):
        zone = [other for other, beside in enumerate(defects) if beside.zone == defect.zone]
        start, end = zone_shares(defect.zone)
        spots.append((defect, start + (end - start) * (zone.index(index) + 1) / (len(zone) + 1)))
    return spots


def _draw_wall(canvas: Canvas, wall: RolledWall) -> None:
    hairline = wall.along(-1, 1, 0, STEPS)
    ground = [(RIGHT, GROUND), (LEFT, GROUND)]
    canvas.draw(line([*hairline, *ground], closed=True), WALL)
    canvas.draw(segments(_hairs(wall)), HAIR)
    canvas.draw(segments(_zone_edges(wall)), ZONE_EDGE)
    canvas.draw(curve(hairline), EDGE)
    canvas.draw(line(ground), EDGE)


def _hairs(wall: RolledWall) -> list[tuple[Point, Point]]:
    """Short strokes above the hairline, each a little different, as hair lies over the wall."""
    shares = [-0.985 + 1.97 * step / (HAIRS - 1) for step in range(HAIRS)]
    roots = [wall.at(share, 0) for share in shares]
    return [((x, y - 1.5), (x - 1.0, y - 4.0 - step * 7 % 4 / 2)) for step, (x, y) in enumerate(roots)]


def _zone_edges(wall: RolledWall) -> list[tuple[Point, Point]]:
    edges = [zone_shares(zone)[0] for zone in ZONES[1:]]
    return [(wall.at(share, 0), (wall.x(share), GROUND)) for share in edges]


def _draw_defect(canvas: Canvas, wall: RolledWall, share: float, defect: Defect) -> None:
    now = wall.at(share, defect.below_hairline_mm)
    if defect.expected_mm:
        _draw_expected(canvas, wall, share, defect.expected_mm, _half(wall, defect) + BESIDE_MARK)
    if defect.kind == "crack end":
        draw_crack(canvas, now, GROUND)
    else:
        _draw_way_down(canvas, now)
    if defect.earlier_mm:
        first = wall.at(share, min(defect.earlier_mm))
        canvas.draw(line([first, now]), WAY)
    for below in sorted({*defect.earlier_mm} - {defect.below_hairline_mm}):
        draw_wall_mark(canvas, defect.kind, _edge(wall, share, below, defect), ghost=True)
    draw_wall_mark(canvas, defect.kind, _edge(wall, share, defect.below_hairline_mm, defect))


def _edge(wall: RolledWall, share: float, below: float, defect: Defect) -> list[Point]:
    half = _half(wall, defect)
    x = wall.x(share)
    start, end = (wall.share(min(max(place, LEFT), RIGHT)) for place in (x - half, x + half))
    return wall.along(start, end, below, MARK_STEPS)


def _half(wall: RolledWall, defect: Defect) -> float:
    if defect.kind == "crack end" or not defect.length_mm:
        return HALF_UNSIZED
    return max(defect.length_mm / 2 * wall.unit_round, LEAST_HALF)


def _draw_expected(canvas: Canvas, wall: RolledWall, share: float, expected: tuple[float, float], half: float) -> None:
    """A soft block a little wider than the mark, so that it shows on both sides of it."""
    x = wall.x(share)
    start, end = (wall.share(min(max(place, LEFT), RIGHT)) for place in (x - half, x + half))
    upper, lower = (wall.along(start, end, below, MARK_STEPS) for below in expected)
    lower = [(x, max(y, top + LEAST_EXPECTED)) for (x, y), (_, top) in zip(lower, upper, strict=True)]
    canvas.draw(line([*upper, *reversed(lower)], closed=True), EXPECTED)


def _draw_way_down(canvas: Canvas, now: Point) -> None:
    """A dotted arrow from where it is now to the ground, where there is room for one."""
    x, top = now[0], now[1] + 5
    if GROUND - top < 2 * HEAD:
        return
    canvas.draw(line([(x, top), (x, GROUND - 2)]), STILL_TO_GO)
    canvas.draw(line([(x - HEAD, GROUND - HEAD - 2.5), (x, GROUND - 2.5), (x + HEAD, GROUND - HEAD - 2.5)]), ARROW_HEAD)

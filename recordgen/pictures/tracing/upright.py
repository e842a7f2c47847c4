"""Feet traced from the side or the front: ground, walls, pastern and their angles, on blank or over a photograph."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from dataclasses import dataclass
from typing import Literal

from recordgen.pictures.canvas import Canvas, legend, stroke_key
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, Shape, circle, curve, line, segments
from recordgen.pictures.tracing.upright_layout import (
    BAR_MM,
    FONT_SIZE,
    PlacedFoot,
    below,
    beside,
    draw_scale_bar,
    place_foot,
    row_below,
    write_inside,
)

__all__ = ["TracedUpright", "TracedWall", "UprightForm", "traced_upright", "upright_key"]

Line = tuple[Point, ...]
Mark = Literal["breakover", "heel_contact"]
UprightForm = Literal["wall", "straight", "edge", "pastern", "breakover", "heel_contact"]

ARC_RADIUS, ARC_STEPS = 18.0, 8
MARK_RADIUS, TICK = 3.2, 7.0

HOOF = Pen(fill="quiet", opacity=0.2)
GROUND, HAIRLINE = Pen("quiet", 1.2), Pen("quiet", 1.4, round_ends=True)
WALL = Pen("ink", 2.4, round_ends=True)
STRAIGHT = Pen("quiet", 1.0, dash=(2.0, 2.4))
ARC = Pen("ink", 1.1)
PASTERN = Pen("moss", 2.0, dash=(8.0, 4.0))
EDGE = Pen("moss", 1.5)
MARK = Pen("ink", 1.6)
# Under every line that lies over a photograph.
HALO, HALO_OPACITY = 2.6, 0.75


@dataclass(frozen=True)
class TracedWall:
    """One wall. Points run from the hairline down.

    along: the direction of the ground on the side where its angle is taken, a unit vector. straight: the line nearest
    to its points, from above to the ground; empty where no ground was traced. words: its angle. edge: both ends of the
    straight edge, where the wall is hollow under it; edge_words: how deep.
    """

    line: Line
    along: Point
    straight: Line = ()
    words: str = ""
    edge: Line = ()
    edge_words: str = ""

    @property
    def goes_on(self) -> bool:
        """Tell whether the straight line is to be seen beyond the wall's points."""
        return bool(self.straight) and math.dist(self.straight[0], self.line[0]) > math.dist(*self.straight) / 10


@dataclass(frozen=True)
class TracedUpright:
    """A foot as traced, y downwards, in mm or, where `image` tells a picture's width and height, in px of that picture.

    mm: how long a millimetre is, 0 where nobody knows. marks: single points on the ground. Empty: not traced.
    """

    walls: tuple[TracedWall, ...]
    ground: Line = ()
    pastern: Line = ()
    pastern_words: str = ""
    hairline: Line = ()
    marks: tuple[tuple[Mark, Point], ...] = ()
    image: tuple[float, float] | None = None
    mm: float = 1.0

    @property
    def points(self) -> Line:
        """Every point that must find room, but for the ends of the ground line."""
        walls = [point for wall in self.walls for point in (*wall.line, *wall.straight)]
        return (*walls, *self.pastern, *self.hairline, *(point for _, point in self.marks))

    @property
    def forms(self) -> list[UprightForm]:
        """Parts to see, in the order of a key."""
        held: dict[UprightForm, bool] = {
            "wall": bool(self.walls),
            "straight": any(wall.goes_on for wall in self.walls),
            "edge": any(wall.edge for wall in self.walls),
            "pastern": bool(self.pastern),
        }
        return [form for form, there in held.items() if there] + [mark for mark, _ in self.marks]


def traced_upright(foot: TracedUpright, bar_words: str, title: str, bar_mm: float = BAR_MM) -> str:
    """The foot with its angles written beside and a bar where a mm is known; over a photograph as large as it.

    Raises ValueError where nothing was traced.
    """
    place = place_foot(foot.points, foot.image)
    canvas = Canvas(place.width, place.height, FONT_SIZE)
    ink = _Over(canvas) if foot.image else _Plain(canvas)
    if not foot.image:
        _fill(canvas, foot, place)
    _draw_lines(ink, foot, place)
    for wall in foot.walls:
        _draw_wall(ink, wall, place)
    for mark, point in foot.marks:
        ink.draw(_mark(mark, place.at(point)), MARK)
    _write(canvas, foot, place)
    if foot.mm:
        draw_scale_bar(canvas, bar_words, place.unit * foot.mm, place.height, bar_mm)
    return canvas.picture(title, "" if foot.image else "wide")


class _Plain:
    """Lines as they are."""

    def __init__(self, canvas: Canvas) -> None:
        self.canvas = canvas

    def draw(self, shape: Shape, pen: Pen) -> None:
        self.canvas.draw(shape, pen)


class _Over(_Plain):
    """Lines with a light edge, so that they stand out from whatever is behind them."""

    def draw(self, shape: Shape, pen: Pen) -> None:
        self.canvas.draw(shape, Pen("card", pen.width + HALO, opacity=HALO_OPACITY, round_ends=True))
        self.canvas.draw(shape, pen)


def _fill(canvas: Canvas, foot: TracedUpright, place: PlacedFoot) -> None:
    if len(foot.walls) == 2:
        one, other = (place.all(wall.line) for wall in foot.walls)
        canvas.draw(line([*one, *reversed(other)], closed=True), HOOF)


def _draw_lines(ink: _Plain, foot: TracedUpright, place: PlacedFoot) -> None:
    if foot.ground:
        ink.draw(line(place.across(foot.ground)), GROUND)
    if len(foot.hairline) > 1:
        ink.draw(line(place.all(foot.hairline)), HAIRLINE)
    if foot.pastern:
        ink.draw(line(place.all(foot.pastern)), PASTERN)


def _draw_wall(ink: _Plain, wall: TracedWall, place: PlacedFoot) -> None:
    if wall.straight:
        top, foot = place.all(wall.straight)
        ink.draw(line([top, foot]), STRAIGHT)
        ink.draw(_arc(top, foot, wall.along), ARC)
    ink.draw(line(place.all(wall.line)), WALL)
    if wall.edge:
        ink.draw(line(place.all(wall.edge)), EDGE)


def _arc(top: Point, foot: Point, along: Point) -> Shape:
    """From the ground to the wall, about the point where they meet."""
    start, end = math.atan2(along[1], along[0]), math.atan2(top[1] - foot[1], top[0] - foot[0])
    # The short way round.
    reach = (end - start + math.pi) % (2 * math.pi) - math.pi
    turns = [start + reach * step / ARC_STEPS for step in range(ARC_STEPS + 1)]
    return curve([(foot[0] + ARC_RADIUS * math.cos(turn), foot[1] + ARC_RADIUS * math.sin(turn)) for turn in turns])


def _mark(mark: Mark, at: Point) -> Shape:
    if mark == "breakover":
        return circle(at, MARK_RADIUS)
    return segments([((at[0], at[1] - TICK), (at[0], at[1] + TICK))])


def _write(canvas: Canvas, foot: TracedUpright, place: PlacedFoot) -> None:
    """Angles of walls below the ground, the rest beside its line, away from the hoof."""
    told = [wall for wall in foot.walls if wall.straight and wall.words]
    low = max((place.at(wall.straight[1])[1] for wall in told), default=place.height)
    row = row_below(low, place.height)
    below(canvas, [(place.at(wall.straight[1])[0], wall.words) for wall in told], row, place.width)
    lines = [(wall.edge, wall.edge_words, wall.along[0]) for wall in foot.walls]
    lines.append((foot.pastern, foot.pastern_words, foot.walls[0].along[0] if foot.walls else 1.0))
    middles = [(_middle(place.all(points)), words, inward) for points, words, inward in lines if points and words]
    for at, words, inward in beside(middles, row):
        write_inside(canvas, words, at, "end" if inward > 0 else "start", place.width)


def _middle(points: Line | list[Point]) -> Point:
    return (points[0][0] + points[-1][0]) / 2, (points[0][1] + points[-1][1]) / 2


def upright_key(words: Mapping[UprightForm, str]) -> dict[UprightForm, str]:
    """A small picture of each form that has words, named by them."""
    return legend(_KEY_FORMS, words)


_KEY_FORMS: dict[UprightForm, Callable[[Canvas, Point], None]] = {
    "wall": stroke_key(WALL),
    "straight": stroke_key(STRAIGHT),
    "edge": stroke_key(EDGE),
    "pastern": stroke_key(PASTERN),
    "breakover": lambda canvas, at: canvas.draw(_mark("breakover", at), MARK),
    "heel_contact": lambda canvas, at: canvas.draw(_mark("heel_contact", at), MARK),
}

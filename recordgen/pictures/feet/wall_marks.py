"""Marks that grow down with the wall, each kind by a form of its own so that grey prints tell it too."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping, Sequence

from recordgen.pictures.canvas import Canvas, legend
from recordgen.pictures.pen import Colour, Pen
from recordgen.pictures.shapes import Point, circle, curve, line, segments
from recordgen.records.models.foot import MarkKind

RING_APART, SLIT_HALF, TICK, END = 3.0, 2.6, 3.4, 3.3
TOOTH, TEETH_APART = 2.0, 5.0
GHOST_OPACITY, GHOST_WIDTH = 0.5, 0.75

# The points across a form, level with the hairline, from its left end to its right end; an odd number of them.
Edge = Sequence[Point]


def draw_wall_mark(canvas: Canvas, kind: MarkKind, edge: Edge, ghost: bool = False) -> None:
    """The form of a kind along its edge; a ghost, lighter and not filled, tells where it was seen before."""
    MARK_FORMS[kind](canvas, edge, ghost)


def _pen(colour: Colour, width: float, ghost: bool, fill: Colour | None = None) -> Pen:
    return Pen(colour, width * GHOST_WIDTH, opacity=GHOST_OPACITY) if ghost else Pen(colour, width, fill)


def _growth_mark(canvas: Canvas, edge: Edge, ghost: bool) -> None:
    """A filed line with a short upright stroke at both ends."""
    ends = [((x, y - TICK), (x, y + TICK)) for x, y in (edge[0], edge[-1])]
    canvas.draw(curve(edge), _pen("ink", 2.2, ghost))
    canvas.draw(segments(ends), _pen("ink", 1.4, ghost))


def _crack_end(canvas: Canvas, edge: Edge, ghost: bool) -> None:
    """A small open ring, from which `draw_crack` goes down."""
    ring = circle(edge[len(edge) // 2], END)
    canvas.draw(ring, Pen(fill="card"))
    canvas.draw(ring, _pen("clay", 1.6, ghost))


def _abscess_line(canvas: Canvas, edge: Edge, ghost: bool) -> None:
    """A slit, pointed at both ends and filled."""
    last = len(edge) - 1
    out = [SLIT_HALF * math.sin(math.pi * step / last) for step in range(last + 1)]
    upper = [(x, y - away) for (x, y), away in zip(edge, out, strict=True)]
    lower = [(x, y + away) for (x, y), away in zip(edge, out, strict=True)]
    canvas.draw(line([*upper, *reversed(lower)], closed=True), _pen("clay", 1.0, ghost, "clay"))


def _event_ring(canvas: Canvas, edge: Edge, ghost: bool) -> None:
    """Two lines side by side."""
    for down in (-RING_APART / 2, RING_APART / 2):
        canvas.draw(curve([(x, y + down) for x, y in edge]), _pen("clay", 1.4, ghost))


MARK_FORMS: dict[MarkKind, Callable[[Canvas, Edge, bool], None]] = {
    "growth mark": _growth_mark,
    "crack end": _crack_end,
    "abscess line": _abscess_line,
    "event ring": _event_ring,
}


def draw_crack(canvas: Canvas, top: Point, ground: float) -> None:
    """The crack below its end: a jagged line down to the ground, nothing where the end is on the ground."""
    x, start = top[0], top[1] + END
    if start >= ground:
        return
    steps = max(math.ceil((ground - start) / TEETH_APART), 2)
    sides = [0.0, *(TOOTH if step % 2 else -TOOTH for step in range(1, steps)), 0.0]
    points = [(x + side, start + (ground - start) * step / steps) for step, side in enumerate(sides)]
    canvas.draw(line(points), Pen("card", 4.0, round_ends=True))
    canvas.draw(line(points), Pen("clay", 1.6, round_ends=True))


def mark_key(words: Mapping[MarkKind, str]) -> dict[MarkKind, str]:
    """A small picture of each kind that has words, named by them, for a legend that the page lays out."""
    return legend({kind: _key_form(kind) for kind in MARK_FORMS}, words)


def _key_form(kind: MarkKind) -> Callable[[Canvas, Point], None]:
    up = 4.0 if kind == "crack end" else 0.0

    def draw(canvas: Canvas, at: Point) -> None:
        edge = [(at[0] + 6.5 * step / 4, at[1] - up) for step in range(-4, 5)]
        if kind == "crack end":
            draw_crack(canvas, edge[4], at[1] + 7)
        draw_wall_mark(canvas, kind, edge)

    return draw

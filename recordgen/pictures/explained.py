"""A labelled foot from below, and growing and trimming in one line, for the page that explains the words."""

from __future__ import annotations

from collections.abc import Mapping
from typing import Literal

from recordgen.pictures.canvas import Anchor, Canvas, Pen
from recordgen.pictures.feet import draw_foot
from recordgen.pictures.labels import FONT_SIZE, WIDTH, point_at, write_lines
from recordgen.pictures.shapes import Point, dots, segments
from recordgen.pictures.sole import Sole

FOOT_HEIGHT, FOOT_MIDDLE, FOOT_TOE = 196.0, 180.0, 26.0

Part = Literal[
    "toe",
    "wall",
    "white line",
    "sole",
    "quarters",
    "bars",
    "frog",
    "central groove",
    "collateral grooves",
    "heels",
    "heel bulbs",
]

# Across and back in shares (see `sole.py`), or a share of the wall and mm outward; then the label's side and height.
PARTS: dict[Part, tuple[Point, Anchor, float]] = {
    "toe": ((0.0, 0.05), "middle", 14),
    "wall": ((-0.93, 0.26), "end", 34),
    "sole": ((-0.62, 0.46), "end", 66),
    "frog": ((-0.1, 0.66), "end", 98),
    "bars": ((-0.56, 0.81), "end", 130),
    "heels": ((-0.93, 0.98), "end", 162),
    "white line": ((0.83, 0.24), "start", 34),
    "quarters": ((1.18, 0.58), "start", 66),
    "collateral grooves": ((0.36, 0.77), "start", 94),
    "central groove": ((0.03, 0.9), "start", 130),
    "heel bulbs": ((0.55, 1.12), "start", 166),
}
LABEL_AT: dict[Anchor, float] = {"end": 92.0, "start": 268.0, "middle": FOOT_MIDDLE}


def plain_foot(labels: Mapping[str, str], title: str) -> str:
    """A left fore foot from below with a line from each part to its word; a part without a word is left unnamed."""
    canvas = Canvas(WIDTH, FOOT_HEIGHT, FONT_SIZE)
    sole = Sole("left_fore", FOOT_MIDDLE, FOOT_TOE)
    draw_foot(canvas, sole)
    for part, (place, side, height) in PARTS.items():
        if part in labels:
            _named(canvas, labels[part], sole.part([place])[0], (LABEL_AT[side], height), side)
    return canvas.picture(title)


def _named(canvas: Canvas, words: str, target: Point, at: Point, side: Anchor) -> None:
    away = {"end": (4.0, -4.0), "start": (-4.0, -4.0), "middle": (0.0, 3.0)}[side]
    point_at(canvas, (at[0] + away[0], at[1] + away[1]), target)
    write_lines(canvas, words, at, side)


Step = Literal["grows", "trimmed", "before", "after"]

GROWTH_HEIGHT = 128.0
AFTER_TRIM = [(40.0, 92.0), (140.0, 96.0), (240.0, 92.0)]
BEFORE_TRIM = [(140.0, 42.0), (240.0, 46.0), (340.0, 40.0)]
STEPS: dict[Step, tuple[Point, Anchor]] = {
    "grows": ((84, 62), "end"),
    "trimmed": ((148, 60), "start"),
    "before": ((140, 32), "middle"),
    "after": ((140, 116), "middle"),
}


def wall_growth(labels: Mapping[str, str], title: str) -> str:
    """How the panels through time read: a stroke climbs while the wall grows, a thin one drops where it is trimmed."""
    canvas = Canvas(WIDTH, GROWTH_HEIGHT, FONT_SIZE)
    canvas.draw(segments(zip(BEFORE_TRIM, AFTER_TRIM[1:], strict=False)), Pen("ink", 1.0, opacity=0.8))
    canvas.draw(segments(zip(AFTER_TRIM, BEFORE_TRIM, strict=True)), Pen("ink", 2.4))
    canvas.draw(dots(AFTER_TRIM), Pen("ink", 8.0, round_ends=True))
    for step, (at, anchor) in STEPS.items():
        if step in labels:
            canvas.write(labels[step], at, anchor, "ink")
    return canvas.picture(title)

"""Labelled feet from below and from the side, for the page that explains the words."""

from __future__ import annotations

import math
import textwrap
from collections.abc import Callable, Mapping
from typing import Literal

from recordgen.pictures.canvas import Anchor, Canvas
from recordgen.pictures.feet.foot import draw_foot
from recordgen.pictures.feet.sole_form import SoleForm
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, curve, dots, line, segments

Measure = Literal["hairline", "toe length", "toe angle", "heel angle", "heel height", "pastern axis", "ground"]

HEIGHT, GROUND = 232.0, 208.0
TOE_DEGREES, HEEL_DEGREES = 50.0, 46.0
TOE_TIP, HEEL_TIP = (90.0, GROUND), (198.0, GROUND)
TOE_LENGTH, HEEL_LENGTH, PASTERN_LENGTH = 104.0, 52.0, 100.0
HEIGHT_AT = 268.0

OUTLINE = Pen("ink", 2.0, round_ends=True)
SKIN = Pen("quiet", 1.3, round_ends=True)
MEASURE = Pen("clay", 1.7)
HELP = Pen("quiet", 0.9, dash=(2.0, 2.4))
AXIS = Pen("moss", 2.0, dash=(7.0, 4.0))


def _up(start: Point, degrees: float, length: float) -> Point:
    turn = math.radians(degrees)
    return start[0] + length * math.cos(turn), start[1] - length * math.sin(turn)


def _shift(point: Point, across: float, down: float) -> Point:
    return point[0] + across, point[1] + down


TOE_HAIR = _up(TOE_TIP, TOE_DEGREES, TOE_LENGTH)
HEEL_HAIR = _up(HEEL_TIP, HEEL_DEGREES, HEEL_LENGTH)
PASTERN_FRONT = _up(TOE_HAIR, TOE_DEGREES, PASTERN_LENGTH)
PASTERN_BACK = _shift(PASTERN_FRONT, 62, 26)
HAIRLINE = [TOE_HAIR, _shift(TOE_HAIR, 30, 7), _shift(HEEL_HAIR, -22, -13), HEEL_HAIR]


def side_view(labels: Mapping[str, str], title: str) -> str:
    """A foot from the side, toe to the left, with what is measured on it; a measure without a word is left out."""
    canvas = Canvas(WIDTH, HEIGHT, FONT_SIZE)
    _draw_pastern(canvas)
    _draw_hoof(canvas)
    for measure, draw in MEASURES.items():
        if measure in labels:
            draw(canvas, labels[measure])
    return canvas.picture(title, "wide")


def _draw_pastern(canvas: Canvas) -> None:
    front = [TOE_HAIR, _shift(_up(TOE_HAIR, TOE_DEGREES, 14), -2, -1), _up(TOE_HAIR, TOE_DEGREES, 55), PASTERN_FRONT]
    hollow = [PASTERN_BACK, _shift(PASTERN_BACK, -20, 26), _shift(HEEL_HAIR, 4, -36)]
    bulb = [_shift(HEEL_HAIR, 13, -18), _shift(HEEL_HAIR, 11, -4), HEEL_HAIR]
    canvas.draw(line([*front, *hollow, *bulb, *reversed(HAIRLINE)]), Pen(fill="straw", opacity=0.1))
    canvas.draw(curve(front), SKIN)
    canvas.draw(curve([*hollow, *bulb]), SKIN)


def _draw_hoof(canvas: Canvas) -> None:
    canvas.draw(line([(12, GROUND), (WIDTH - 12, GROUND)]), Pen("quiet", 1.0))
    canvas.draw(line([*HAIRLINE, HEEL_TIP, TOE_TIP], closed=True), Pen(fill="quiet", opacity=0.28))
    canvas.draw(line([TOE_HAIR, TOE_TIP, HEEL_TIP, HEEL_HAIR]), OUTLINE)
    canvas.draw(curve(HAIRLINE), OUTLINE)


def _draw_distance(canvas: Canvas, start: Point, end: Point) -> None:
    """A measured distance: a line with a short cross stroke at each end."""
    length = math.dist(start, end)
    across = ((end[1] - start[1]) / length * 4, (start[0] - end[0]) / length * 4)
    caps = [(_shift(point, *across), _shift(point, -across[0], -across[1])) for point in (start, end)]
    canvas.draw(segments([(start, end), *caps]), MEASURE)


def _arc(canvas: Canvas, centre: Point, degrees: float, radius: float) -> None:
    canvas.draw(curve([_up(centre, degrees * step / 6, radius) for step in range(7)]), MEASURE)


def _hairline(canvas: Canvas, words: str) -> None:
    target = _shift(TOE_HAIR, 30, 7)
    point_at(canvas, (74, 82), target)
    write_lines(canvas, words, (70, 86), "end")


def _toe_length(canvas: Canvas, words: str) -> None:
    aside = (-12.0, -10.0)
    _draw_distance(canvas, _shift(TOE_TIP, *aside), _shift(TOE_HAIR, *aside))
    write_lines(canvas, words, (96, 152), "end")


def _toe_angle(canvas: Canvas, words: str) -> None:
    _arc(canvas, TOE_TIP, TOE_DEGREES, 30)
    write_lines(canvas, words, (90, 226))


def _heel_angle(canvas: Canvas, words: str) -> None:
    _arc(canvas, HEEL_TIP, HEEL_DEGREES, 26)
    write_lines(canvas, words, (200, 226))


def _heel_height(canvas: Canvas, words: str) -> None:
    canvas.draw(line([_shift(HEEL_HAIR, 4, 0), (HEIGHT_AT, HEEL_HAIR[1])]), HELP)
    _draw_distance(canvas, (HEIGHT_AT, GROUND), (HEIGHT_AT, HEEL_HAIR[1]))
    write_lines(canvas, words, (HEIGHT_AT + 8, (GROUND + HEEL_HAIR[1]) / 2 + 4))


def _pastern_axis(canvas: Canvas, words: str) -> None:
    start = (TOE_TIP[0] + 52, GROUND)
    canvas.draw(line([start, _up(start, TOE_DEGREES, 216)]), AXIS)
    write_lines(canvas, words, (283, 50))
    canvas.draw(dots([start]), Pen("moss", 4.0, round_ends=True))


def _ground(canvas: Canvas, words: str) -> None:
    canvas.write(words, (14, GROUND + 18))


MEASURES: dict[Measure, Callable[[Canvas, str], None]] = {
    "pastern axis": _pastern_axis,
    "hairline": _hairline,
    "toe length": _toe_length,
    "toe angle": _toe_angle,
    "heel angle": _heel_angle,
    "heel height": _heel_height,
    "ground": _ground,
}


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

# Across and back in shares (see `sole_form.py`), or a share of the wall and mm outward; then its label's side, height.
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
    sole = SoleForm("left_fore", FOOT_MIDDLE, FOOT_TOE)
    draw_foot(canvas, sole)
    for part, (place, side, height) in PARTS.items():
        if part in labels:
            _label(canvas, labels[part], sole.part([place])[0], (LABEL_AT[side], height), side)
    return canvas.picture(title, "wide")


def _label(canvas: Canvas, words: str, target: Point, at: Point, side: Anchor) -> None:
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
    """Tell how to read panels through time: a stroke climbs while the wall grows, a thin one drops at a trim."""
    canvas = Canvas(WIDTH, GROWTH_HEIGHT, FONT_SIZE)
    canvas.draw(segments(zip(BEFORE_TRIM, AFTER_TRIM[1:], strict=False)), Pen("ink", 1.0, opacity=0.8))
    canvas.draw(segments(zip(AFTER_TRIM, BEFORE_TRIM, strict=True)), Pen("ink", 2.4))
    canvas.draw(dots(AFTER_TRIM), Pen("ink", 8.0, round_ends=True))
    for step, (at, anchor) in STEPS.items():
        if step in labels:
            canvas.write(labels[step], at, anchor, "ink")
    return canvas.picture(title, "wide")


WIDTH, FONT_SIZE = 360.0, 13.0
LETTERS_A_LINE, LINE_HEIGHT = 13, 14.0

LEADER = Pen("quiet", 0.9)
LEADER_END = Pen("quiet", 4.4, round_ends=True)


def point_at(canvas: Canvas, start: Point, target: Point) -> None:
    """A thin line from a word to what it names, with a dot at its end."""
    canvas.draw(line([start, target]), LEADER)
    canvas.draw(dots([target]), LEADER_END)


def write_lines(canvas: Canvas, words: str, at: Point, side: Anchor = "start") -> None:
    """Words in one line, or in several short ones about the same height."""
    lines = textwrap.wrap(words, LETTERS_A_LINE, break_long_words=False, break_on_hyphens=False)
    first = at[1] - (len(lines) - 1) * LINE_HEIGHT / 2
    for count, text in enumerate(lines):
        canvas.write(text, (at[0], first + count * LINE_HEIGHT), side, "ink")

"""A labelled foot from the side, for the page that explains the words."""

from __future__ import annotations

import math
from collections.abc import Callable, Mapping
from typing import Literal

from recordgen.pictures.canvas import Canvas, Pen
from recordgen.pictures.labels import FONT_SIZE, WIDTH, point_at, write_lines
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


def _moved(point: Point, across: float, down: float) -> Point:
    return point[0] + across, point[1] + down


TOE_HAIR = _up(TOE_TIP, TOE_DEGREES, TOE_LENGTH)
HEEL_HAIR = _up(HEEL_TIP, HEEL_DEGREES, HEEL_LENGTH)
PASTERN_FRONT = _up(TOE_HAIR, TOE_DEGREES, PASTERN_LENGTH)
PASTERN_BACK = _moved(PASTERN_FRONT, 62, 26)
HAIRLINE = [TOE_HAIR, _moved(TOE_HAIR, 30, 7), _moved(HEEL_HAIR, -22, -13), HEEL_HAIR]


def side_view(labels: Mapping[str, str], title: str) -> str:
    """A foot from the side, toe to the left, with what is measured on it; a measure without a word is left out."""
    canvas = Canvas(WIDTH, HEIGHT, FONT_SIZE)
    _draw_pastern(canvas)
    _draw_hoof(canvas)
    for measure, draw in MEASURES.items():
        if measure in labels:
            draw(canvas, labels[measure])
    return canvas.picture(title)


def _draw_pastern(canvas: Canvas) -> None:
    front = [TOE_HAIR, _moved(_up(TOE_HAIR, TOE_DEGREES, 14), -2, -1), _up(TOE_HAIR, TOE_DEGREES, 55), PASTERN_FRONT]
    hollow = [PASTERN_BACK, _moved(PASTERN_BACK, -20, 26), _moved(HEEL_HAIR, 4, -36)]
    bulb = [_moved(HEEL_HAIR, 13, -18), _moved(HEEL_HAIR, 11, -4), HEEL_HAIR]
    canvas.draw(line([*front, *hollow, *bulb, *reversed(HAIRLINE)]), Pen(fill="straw", opacity=0.1))
    canvas.draw(curve(front), SKIN)
    canvas.draw(curve([*hollow, *bulb]), SKIN)


def _draw_hoof(canvas: Canvas) -> None:
    canvas.draw(line([(12, GROUND), (WIDTH - 12, GROUND)]), Pen("quiet", 1.0))
    canvas.draw(line([*HAIRLINE, HEEL_TIP, TOE_TIP], closed=True), Pen(fill="quiet", opacity=0.28))
    canvas.draw(line([TOE_HAIR, TOE_TIP, HEEL_TIP, HEEL_HAIR]), OUTLINE)
    canvas.draw(curve(HAIRLINE), OUTLINE)


def _between_ends(canvas: Canvas, start: Point, end: Point) -> None:
    """A measured distance: a line with a short cross stroke at each end."""
    length = math.dist(start, end)
    across = ((end[1] - start[1]) / length * 4, (start[0] - end[0]) / length * 4)
    caps = [(_moved(point, *across), _moved(point, -across[0], -across[1])) for point in (start, end)]
    canvas.draw(segments([(start, end), *caps]), MEASURE)


def _arc(canvas: Canvas, centre: Point, degrees: float, radius: float) -> None:
    canvas.draw(curve([_up(centre, degrees * step / 6, radius) for step in range(7)]), MEASURE)


def _hairline(canvas: Canvas, words: str) -> None:
    target = _moved(TOE_HAIR, 30, 7)
    point_at(canvas, (74, 82), target)
    write_lines(canvas, words, (70, 86), "end")


def _toe_length(canvas: Canvas, words: str) -> None:
    aside = (-12.0, -10.0)
    _between_ends(canvas, _moved(TOE_TIP, *aside), _moved(TOE_HAIR, *aside))
    write_lines(canvas, words, (96, 152), "end")


def _toe_angle(canvas: Canvas, words: str) -> None:
    _arc(canvas, TOE_TIP, TOE_DEGREES, 30)
    write_lines(canvas, words, (90, 226))


def _heel_angle(canvas: Canvas, words: str) -> None:
    _arc(canvas, HEEL_TIP, HEEL_DEGREES, 26)
    write_lines(canvas, words, (200, 226))


def _heel_height(canvas: Canvas, words: str) -> None:
    canvas.draw(line([_moved(HEEL_HAIR, 4, 0), (HEIGHT_AT, HEEL_HAIR[1])]), HELP)
    _between_ends(canvas, (HEIGHT_AT, GROUND), (HEIGHT_AT, HEEL_HAIR[1]))
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

"""The drawings of feet that lie among the demo's photographs: pencil on paper, and the word drawing on each."""

from __future__ import annotations

import io
from collections.abc import Iterator
from dataclasses import replace
from random import Random

import numpy as np
from PIL import Image, ImageDraw, ImageFont

from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.records.photos.convert import plain_photo
from tests.demo.tracings import SCALE_MM, SHEETS, Drawn, SoleFoot, on_sheet, scale_ends
from tests.support.side_shapes import SIDES, FrontFoot, SideFoot

PAPER, PENCIL, FAINT = (250, 248, 242), (72, 70, 68), (168, 165, 160)
# Drawn larger and made smaller, so that lines are smooth.
FINER = 2
WORD = "drawing"
# How many points make an outline smooth.
FINE = 180
# How many rings of growth are hinted at between hairline and ground.
RINGS = (0.22, 0.42, 0.6, 0.78)
# A line in mm, y up, how thick it is in px, and whether it is faint.
Stroke = tuple[Floats, float, bool]


def drawing(one: Drawn) -> bytes:
    """A foot as a picture: the same each time, a plain JPEG as photographs are kept."""
    sheet = SHEETS[one.view]
    paper = Image.new("RGB", (sheet.width * FINER, sheet.height * FINER), PAPER)
    pencil = ImageDraw.Draw(paper)
    hand = Random(one.file)
    strokes = list(_strokes(one))
    lines = on_sheet(one, {str(number): line for number, (line, _, _) in enumerate(strokes)}).values()
    for line, (_, width, faint) in zip(lines, strokes, strict=True):
        _stroke(pencil, line, width, FAINT if faint else PENCIL, hand)
    _lettering(pencil, one, hand)
    small = paper.resize((sheet.width, sheet.height), Image.Resampling.LANCZOS)
    out = io.BytesIO()
    small.save(out, "PNG", compress_level=1)
    return plain_photo(out.getvalue(), one.file)


def _strokes(one: Drawn) -> Iterator[Stroke]:
    if isinstance(one.shape, SoleFoot):
        yield from _sole(one.shape)
    elif isinstance(one.shape, SideFoot):
        yield from _side(one.shape)
    else:
        yield from _front(one.shape)


def _sole(shape: SoleFoot) -> Iterator[Stroke]:
    points = replace(shape, picks=FINE).points()
    white = _even(points["white_line"], FINE)
    yield points["wall"], 3.5, False
    yield white, 2, False
    for outer, inner in zip(points["wall"][2:-2:3], white[2:-2:3], strict=True):
        yield np.array([outer + (inner - outer) * 0.12, outer + (inner - outer) * 0.8]), 1, True
    for end, side in zip((0, -1), SIDES, strict=True):
        yield np.array([points["wall"][end], white[end], points[f"bar_{side}"][0]]), 2.5, False
        yield points[f"bar_{side}"], 3, False
    yield from _frog(points)
    roll = points["breakover"][0]
    yield np.array([roll + _by(-14, -1), roll + _by(0, 0.6), roll + _by(14, -1)]), 1.5, True


def _frog(points: Points) -> Iterator[Stroke]:
    apex, medial, lateral = (points[f"frog_{name}"][0] for name in ("apex", *SIDES))
    base = (medial + lateral) / 2
    for corner in (medial, lateral):
        middle = apex * 0.5 + corner * 0.5 + (base - corner) * 0.12
        yield _curve(apex, middle, corner), 3, False
        yield _curve(corner, base + (corner - base) * 0.6 - _by(0, 6), base - _by(0, 1)), 2.5, False
    yield np.array([base + _by(0, 3), base + (apex - base) * 0.42]), 3, False


def _side(shape: SideFoot) -> Iterator[Stroke]:
    points = replace(shape, picks=31).points()
    wall, heel = points["dorsal_wall"], points["heel_wall"]
    top, back = wall[0], heel[0]
    hairline = _curve(top, (top + back) / 2 - _by(0, 7), back)
    bearing = np.linspace(wall[-1], heel[-1], len(hairline))
    yield wall, 3.5, False
    yield heel, 3.5, False
    yield bearing, 3, False
    yield hairline, 3, False
    for share in RINGS:
        yield hairline + (bearing - hairline) * share, 1, True
    along = points["pastern"][0] - top
    yield _curve(back, back + _by(-13, -7), back + (heel[-1] - back) * 0.5), 2, False
    yield _curve(top, top + along * 0.35 + _by(1.5, 0), top + along), 3, False
    yield _curve(back, back + along * 0.35 + _by(7, 0), back + along + _by(16, 0)), 3, False
    yield from _hair(hairline, along / np.hypot(*along))
    yield from _ground(points["ground"])
    yield points["breakover"] + np.array([[0.0, -4.0], [0.0, 4.0]]), 2, False


def _front(shape: FrontFoot) -> Iterator[Stroke]:
    points = replace(shape, picks=31).points()
    medial, lateral = (points[f"{side}_wall"] for side in SIDES)
    hairline = _curve(medial[0], (medial[0] + lateral[0]) / 2 + _by(0, 16), lateral[0])
    bearing = np.linspace(medial[-1], lateral[-1], len(hairline))
    yield from ((line, 3.5, False) for line in (medial, lateral, bearing))
    yield hairline, 3, False
    for share in RINGS:
        across = np.linspace(_at(medial, share), _at(lateral, share), len(hairline))
        yield across + (hairline - np.linspace(hairline[0], hairline[-1], len(hairline))) * (1 - share), 1, True
    for start, inward in ((medial[0], 1), (lateral[0], -1)):
        yield _curve(start, start + _by(inward * 4, 10), start + _by(inward * 17, 24)), 3, False
    yield from _hair(hairline, np.array([0.0, 1.0]))
    yield from _ground(points["ground"])


def _hair(hairline: Floats, along: Floats) -> Iterator[Stroke]:
    for number, root in enumerate(hairline[1:-1:2]):
        yield np.array([root + along * 1.5, root + along * (5.5 + number % 3)]), 1, True


def _ground(ends: Floats) -> Iterator[Stroke]:
    yield ends, 2, False
    for root in np.linspace(ends[0], ends[1], 30)[1:-1]:
        yield np.array([root - _by(0, 1), root - _by(2.5, 3.5)]), 1, True


def _lettering(pencil: ImageDraw.ImageDraw, one: Drawn, hand: Random) -> None:
    """The word, and the scale with its length."""
    sheet = SHEETS[one.view]
    (left, y), (right, _) = ends = scale_ends(sheet)
    _stroke(pencil, ends, 3, PENCIL, hand)
    for x in (left, right):
        _stroke(pencil, np.array([[x, y - 9], [x, y + 9]]), 3, PENCIL, hand)
    words = ImageFont.load_default(30 * FINER)
    pencil.text(((right + 16) * FINER, y * FINER), f"{SCALE_MM} mm", PENCIL, words, anchor="lm")
    pencil.text((left * FINER, 44 * FINER), WORD, PENCIL, words, anchor="lm")


def _stroke(
    pencil: ImageDraw.ImageDraw, line: Floats, width: float, colour: tuple[int, int, int], hand: Random
) -> None:
    """A line in px, gone over twice, as a pencil does."""
    for _ in range(2):
        shift = np.array([hand.uniform(-0.5, 0.5), hand.uniform(-0.5, 0.5)])
        spots = [(float(x), float(y)) for x, y in (line + shift) * FINER]
        pencil.line(spots, colour, max(1, round(width * FINER * 0.75)), joint="curve")


def _even(line: Floats, count: int) -> Floats:
    """A fine line with another number of points, at even distances."""
    return np.stack([np.interp(np.linspace(0, 1, count), np.linspace(0, 1, len(line)), axis) for axis in line.T], -1)


def _curve(start: Floats, middle: Floats, end: Floats, count: int = 24) -> Floats:
    """A smooth line from start to end that is drawn towards a point between them."""
    t = np.linspace(0, 1, count)[:, None]
    return np.asarray((1 - t) ** 2 * start + 2 * t * (1 - t) * middle + t**2 * end)


def _by(x: float, y: float) -> Floats:
    return np.array([x, y])


def _at(wall: Floats, share: float) -> Floats:
    """The place of a wall at a share of its height, counted from the hairline."""
    return np.asarray(wall[round(share * (len(wall) - 1))])

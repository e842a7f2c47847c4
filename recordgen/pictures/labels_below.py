"""How much room words take, and words under a line, each joined to its place, never touching."""

from __future__ import annotations

import unicodedata
from collections.abc import Sequence
from dataclasses import dataclass

from recordgen.pictures.canvas import Canvas, printable
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, Shape, joined_pieces

ELLIPSIS = "…"

# Widths as shares of the font size, those of a wide font, so that most others take less.
NARROW, SLIM, USUAL, TALL, WIDE = 0.33, 0.42, 0.64, 0.8, 1.0
LETTERS = {
    **dict.fromkeys("ijlIJ.,:;'!| ", NARROW),
    **dict.fromkeys("frt()[]-/*", SLIM),
    **dict.fromkeys("mwMW@%&…—", WIDE),
}


def width_of(words: str, font_size: float) -> float:
    """About how wide the words stand, in picture units; rather too much than too little."""
    return font_size * sum(_share(letter) for letter in printable(words))


def _share(letter: str) -> float:
    if unicodedata.combining(letter):
        return 0.0
    if unicodedata.east_asian_width(letter) in "WF":
        return WIDE
    return LETTERS.get(letter, TALL if letter.isupper() else USUAL)


def shortened(words: str, room: float, font_size: float) -> str:
    """The words, or their beginning with an ellipsis where they take more than the room."""
    if width_of(words, font_size) <= room:
        return words
    kept = words
    while kept and width_of(kept.rstrip() + ELLIPSIS, font_size) > room:
        kept = kept[:-1]
    return kept.rstrip() + ELLIPSIS


FIRST_LINE, LINES_APART = 22.0, 20.0
ASCENT, DESCENT = 11.0, 4.0
GAP, LEADER_ROOM = 5.0, 3.0
# How far inside the words' ends a leader stops at the least.
INSIDE = 8.0
# How far words may be pushed aside before one more line is the better choice.
A_LINE_COSTS = 14.0

LEADER = Pen("quiet", 0.8)


@dataclass(frozen=True)
class Placed:
    """Words with the places their leader passes on its way down, one a line; they stand about the last one.

    ends: where the words begin and end.
    """

    words: str
    start: float
    middles: tuple[float, ...]
    ends: tuple[float, float]


def room_below(placed: Sequence[Placed]) -> float:
    """How far below the line the words reach, picture units; nothing without words."""
    lines = max((len(label.middles) for label in placed), default=0)
    return FIRST_LINE + LINES_APART * (lines - 1) + DESCENT + 1 if lines else 0.0


def placed_below(labels: Sequence[tuple[float, str]], room: tuple[float, float], font_size: float) -> list[Placed]:
    """Where words stand whose places on the line are given, from left to right.

    room: the leftmost and the rightmost place for words; what is wider than that is shortened.
    """
    ordered = sorted((x, shortened(words, room[1] - room[0], font_size)) for x, words in labels if words)
    widths = [width_of(words, font_size) for _, words in ordered]
    starts = [x for x, _ in ordered]
    ways = [_staggered(starts, widths, lines, room) for lines in range(1, len(ordered) + 1)]
    if not ways:
        return []
    best = min((way for way in ways if way), key=lambda way: _cost(starts, way))
    return [
        Placed(words, x, middles, (middles[-1] - width / 2, middles[-1] + width / 2))
        for (x, words), width, middles in zip(ordered, widths, best, strict=True)
    ]


def _cost(starts: Sequence[float], way: Sequence[tuple[float, ...]]) -> float:
    moved = max(abs(middles[-1] - x) for x, middles in zip(starts, way, strict=True))
    return moved + A_LINE_COSTS * max(len(middles) for middles in way)


def _staggered(
    starts: Sequence[float], widths: Sequence[float], lines: int, room: tuple[float, float]
) -> list[tuple[float, ...]]:
    """The middles of each label on every line down to its own; nothing where they do not fit in so many lines.

    The labels take the lines in turn, so that between two on one line there is room for what goes further down.
    """
    ways: list[tuple[float, ...]] = [() for _ in starts]
    for number in range(lines):
        going = [index for index in range(len(starts)) if index % lines >= number]
        needed = [widths[index] if index % lines == number else LEADER_ROOM for index in going]
        wanted = [ways[index][-1] if number else starts[index] for index in going]
        if sum(needed) + GAP * (len(needed) - 1) > room[1] - room[0]:
            return []
        for index, middle in zip(going, spread(wanted, needed, room), strict=True):
            ways[index] = (*ways[index], middle)
    return ways


def spread(wanted: Sequence[float], widths: Sequence[float], room: tuple[float, float]) -> list[float]:
    """Middles near the wanted ones, in their order, so that nothing of these widths touches or leaves the room."""
    from_left = _pushed(wanted, widths, *room)
    mirrored = _pushed([-x for x in reversed(wanted)], list(reversed(widths)), -room[1], -room[0])
    return [(a - b) / 2 for a, b in zip(from_left, reversed(mirrored), strict=True)]


def _pushed(wanted: Sequence[float], widths: Sequence[float], least: float, most: float) -> list[float]:
    """Each pushed right by what stands before it, then all pushed back left into the room."""
    found: list[float] = []
    edge = least - GAP
    for x, width in zip(wanted, widths, strict=True):
        found.append(max(x, edge + GAP + width / 2))
        edge = found[-1] + width / 2
    edge = most + GAP
    for index in reversed(range(len(found))):
        found[index] = min(found[index], edge - GAP - widths[index] / 2)
        edge = found[index] - widths[index] / 2
    return found


def draw_below(canvas: Canvas, placed: Sequence[Placed], base: float) -> None:
    """The words under a line at a height, each with a thin line leading to it."""
    for label in placed:
        canvas.draw(leader_form(label, base), LEADER)
        canvas.write(label.words, (label.middles[-1], _baseline(base, len(label.middles) - 1)), "middle", "ink")


def _baseline(base: float, number: int) -> float:
    return base + FIRST_LINE + LINES_APART * number


def leader_form(label: Placed, base: float) -> Shape:
    """The line from the place on the base to the words: upright beside other words, swinging between the lines."""
    *passed, _ = label.middles
    last = passed[-1] if passed else label.start
    left, right = label.ends
    target = min(max(last, min(left + INSIDE, label.middles[-1])), max(right - INSIDE, label.middles[-1]))
    pieces = []
    at = (label.start, base + 2)
    for number, x in enumerate([*passed, target]):
        top = (x, _baseline(base, number) - ASCENT)
        pieces.append(_swing(at, top))
        at = (x, _baseline(base, number) + DESCENT)
        if number < len(passed):
            pieces.append((top, at, at))
    return joined_pieces(pieces, (label.start, base + 2), closed=False)


def _swing(start: Point, end: Point) -> tuple[Point, Point, Point]:
    half = (start[1] + end[1]) / 2
    return (start[0], half), (end[0], half), end

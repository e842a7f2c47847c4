"""Words about a foot seen from the side or the front, placed so that none covers another or leaves the sheet."""

from __future__ import annotations

from collections.abc import Iterator, Sequence

from recordgen.pictures.canvas import Anchor, Canvas
from recordgen.pictures.labels_below import spread
from recordgen.pictures.lettering import width_of
from recordgen.pictures.scale_bar import BAR_ROOM
from recordgen.pictures.shapes import Point
from recordgen.pictures.upright_place import FONT_SIZE

UNDER_LINE, ROWS_APART, AWAY, EDGE = 16.0, 15.0, 9.0, 2.0

# The middle of a line, its words, and above 0 where the hoof lies to the right of it.
Aside = tuple[Point, str, float]


def row_below(low: float, height: float) -> float:
    """The height of the row of words under a line, above the bar of the scale."""
    return min(low + UNDER_LINE, height - BAR_ROOM)


def below(canvas: Canvas, told: Sequence[tuple[float, str]], row: float, width: float) -> None:
    """Words in one row, each near its place across the sheet."""
    ordered = sorted(told)
    widths = [width_of(words, FONT_SIZE) for _, words in ordered]
    middles = spread([x for x, _ in ordered], widths, (EDGE, width - EDGE))
    for (_, words), middle in zip(ordered, middles, strict=True):
        canvas.write(words, (middle, row), "middle", "ink")


def beside(told: Sequence[Aside], lowest: float) -> Iterator[Aside]:
    """Where words beside lines begin or end: away from the hoof, on the same side one above the other.

    lowest: the row of words that stands below them all.
    """
    last = {True: lowest, False: lowest}
    for (x, y), words, inward in sorted(told, key=lambda one: -one[0][1]):
        side = inward > 0
        row = min(y + 4, last[side] - ROWS_APART)
        last[side] = row
        yield (x - AWAY if side else x + AWAY, row), words, inward


def write_inside(canvas: Canvas, words: str, at: Point, anchor: Anchor, width: float) -> None:
    """Words on the sheet, moved inward where they would leave it."""
    wide = width_of(words, FONT_SIZE)
    start = at[0] - (wide if anchor == "end" else 0)
    moved = max(min(start, width - EDGE - wide), EDGE)
    canvas.write(words, (moved + (wide if anchor == "end" else 0), at[1]), anchor, "ink")

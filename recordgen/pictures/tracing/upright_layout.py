"""Tell where a foot from the side or the front stands on its sheet, and words about it that cover nothing."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from recordgen.pictures.canvas import Anchor, Canvas
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, line, segments

# At 310 CSS px wide, what a phone gives it, 12 of these units are still 11 px.
WIDTH, FONT_SIZE = 336.0, 12.0
MOST_HEIGHT = 260.0
# However small the foot, a millimetre is no larger than this.
MOST_UNIT = 2.6
# Beside the foot there is room for words, below it for the angles.
ASIDE, ABOVE, BELOW = 76.0, 10.0, 26.0


@dataclass(frozen=True)
class PlacedFoot:
    """A sheet, and how points of a tracing come onto it."""

    width: float
    height: float
    unit: float
    shift: Point

    def at(self, point: Point) -> Point:
        """The place where a point stands."""
        return point[0] * self.unit + self.shift[0], point[1] * self.unit + self.shift[1]

    def all(self, points: Sequence[Point]) -> list[Point]:
        """The place where points stand."""
        return [self.at(point) for point in points]

    def across(self, ground: Sequence[Point]) -> list[Point]:
        """A line through two points, from the left edge of the sheet to the right one."""
        (x, y), (end_x, end_y) = (self.at(point) for point in ground)
        if abs(end_x - x) < 1:
            return [(x, y), (end_x, end_y)]
        slope = (end_y - y) / (end_x - x)
        return [(0.0, y - x * slope), (self.width, y + (self.width - x) * slope)]


def place_foot(points: Sequence[Point], image: tuple[float, float] | None) -> PlacedFoot:
    """The place for points, y downwards. image: width and height of the picture behind them; else they are fitted in.

    Raises ValueError without a point.
    """
    if not points:
        raise ValueError("no foot to draw")
    if image:
        unit = WIDTH / image[0]
        return PlacedFoot(WIDTH, image[1] * unit, unit, (0.0, 0.0))
    across, down = zip(*points, strict=True)
    wide, high = max(across) - min(across), max(down) - min(down)
    unit = min((WIDTH - 2 * ASIDE) / max(wide, 1.0), MOST_HEIGHT / max(high, 1.0), MOST_UNIT)
    left = (WIDTH - wide * unit) / 2
    return PlacedFoot(
        WIDTH, ABOVE + high * unit + BELOW + BAR_ROOM, unit, (left - min(across) * unit, ABOVE - min(down) * unit)
    )


UNDER_LINE, ROWS_APART, AWAY, EDGE, GAP = 16.0, 15.0, 9.0, 2.0, 5.0

# The middle of a line, its words, and above 0 where the hoof lies to the right of it.
Aside = tuple[Point, str, float]


def row_below(low: float, height: float) -> float:
    """The height of the row of words under a line, above the bar of the scale."""
    return min(low + UNDER_LINE, height - BAR_ROOM)


def below(canvas: Canvas, told: Sequence[tuple[float, str]], row: float, width: float) -> None:
    """Words in one row, each near its place across the sheet."""
    ordered = sorted(told)
    widths = [canvas.width_of(words) for _, words in ordered]
    middles = spread_out([x for x, _ in ordered], widths, (EDGE, width - EDGE))
    for (_, words), middle in zip(ordered, middles, strict=True):
        canvas.write(words, (middle, row), "middle", "ink")


def spread_out(wanted: Sequence[float], widths: Sequence[float], room: tuple[float, float]) -> list[float]:
    """Middles near the wanted ones, in their order, so that nothing of these widths touches or leaves the room."""
    from_left = _push_right(wanted, widths, *room)
    mirrored = _push_right([-x for x in reversed(wanted)], list(reversed(widths)), -room[1], -room[0])
    return [(a - b) / 2 for a, b in zip(from_left, reversed(mirrored), strict=True)]


def _push_right(wanted: Sequence[float], widths: Sequence[float], least: float, most: float) -> list[float]:
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


def beside(told: Sequence[Aside], lowest: float) -> Iterator[Aside]:
    """The place where words beside lines begin or end: away from the hoof, on the same side one above the other.

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
    wide = canvas.width_of(words)
    start = at[0] - (wide if anchor == "end" else 0)
    moved = max(min(start, width - EDGE - wide), EDGE)
    canvas.write(words, (moved + (wide if anchor == "end" else 0), at[1]), anchor, "ink")


BAR_MM = 20.0
BAR_ROOM, ABOVE_EDGE, BAR_LEFT, BAR_END = 20.0, 7.0, 3.0, 3.0

BAR = Pen("ink", 1.6)


def draw_scale_bar(canvas: Canvas, words: str, unit: float, height: float, bar_mm: float = BAR_MM) -> None:
    """The bar at the lower left of a sheet of that height, its words beside it.

    unit: picture units for a mm. bar_mm: its true length, which the words tell.
    """
    y, right = height - ABOVE_EDGE, BAR_LEFT + bar_mm * unit
    canvas.draw(line([(BAR_LEFT, y), (right, y)]), BAR)
    canvas.draw(segments(((x, y - BAR_END), (x, y + BAR_END)) for x in (BAR_LEFT, right)), BAR)
    canvas.write(words, (right + 6, y + 4))

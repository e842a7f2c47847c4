"""Where a foot seen from the side or the front stands on its sheet: fitted in, or as it lies in its photograph."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

from recordgen.pictures.scale_bar import BAR_ROOM
from recordgen.pictures.shapes import Point

# At 310 CSS px wide, what a phone gives it, 12 of these units are still 11 px.
WIDTH, FONT_SIZE = 336.0, 12.0
MOST_HEIGHT = 260.0
# However small the foot, a millimetre is no larger than this.
MOST_UNIT = 2.6
# Beside the foot there is room for words, below it for the angles.
ASIDE, ABOVE, BELOW = 76.0, 10.0, 26.0


@dataclass(frozen=True)
class Placed:
    """A sheet, and how points of a tracing come onto it."""

    width: float
    height: float
    unit: float
    shift: Point

    def at(self, point: Point) -> Point:
        """Where a point stands."""
        return point[0] * self.unit + self.shift[0], point[1] * self.unit + self.shift[1]

    def all(self, points: Sequence[Point]) -> list[Point]:
        """Where points stand."""
        return [self.at(point) for point in points]

    def across(self, ground: Sequence[Point]) -> list[Point]:
        """A line through two points, from the left edge of the sheet to the right one."""
        (x, y), (end_x, end_y) = (self.at(point) for point in ground)
        if abs(end_x - x) < 1:
            return [(x, y), (end_x, end_y)]
        slope = (end_y - y) / (end_x - x)
        return [(0.0, y - x * slope), (self.width, y + (self.width - x) * slope)]


def placed(points: Sequence[Point], image: tuple[float, float] | None) -> Placed:
    """The place for points, y downwards. image: width and height of the picture behind them; else they are fitted in.

    Raises ValueError without a point.
    """
    if not points:
        raise ValueError("no foot to draw")
    if image:
        unit = WIDTH / image[0]
        return Placed(WIDTH, image[1] * unit, unit, (0.0, 0.0))
    across, down = zip(*points, strict=True)
    wide, high = max(across) - min(across), max(down) - min(down)
    unit = min((WIDTH - 2 * ASIDE) / max(wide, 1.0), MOST_HEIGHT / max(high, 1.0), MOST_UNIT)
    left = (WIDTH - wide * unit) / 2
    return Placed(
        WIDTH, ABOVE + high * unit + BELOW + BAR_ROOM, unit, (left - min(across) * unit, ABOVE - min(down) * unit)
    )

"""A bar of 20 mm in the corner of a picture that is drawn to scale."""

from __future__ import annotations

from recordgen.pictures.canvas import Canvas, Pen
from recordgen.pictures.shapes import line, segments

BAR_MM = 20.0
BAR_ROOM, ABOVE_EDGE, BAR_LEFT, BAR_END = 20.0, 7.0, 3.0, 3.0

BAR = Pen("ink", 1.6)


def draw_scale_bar(canvas: Canvas, words: str, unit: float, height: float) -> None:
    """The bar at the lower left of a sheet of that height, its words beside it; unit: picture units for a mm."""
    y, right = height - ABOVE_EDGE, BAR_LEFT + BAR_MM * unit
    canvas.draw(line([(BAR_LEFT, y), (right, y)]), BAR)
    canvas.draw(segments(((x, y - BAR_END), (x, y + BAR_END)) for x in (BAR_LEFT, right)), BAR)
    canvas.write(words, (right + 6, y + 4))

"""The course of a length alone: a line as small as a word, to stand beside the figure it leads to."""

from __future__ import annotations

from collections.abc import Sequence

from recordgen.hoof.measures.readings import Reading
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.charts.limits import Scale, Span, day_number, values_of
from recordgen.pictures.charts.strokes import bridges, climbs, draw_strokes, drops, pen_of, place, readings_with_values
from recordgen.pictures.pen import FOOT_COLOUR, Pen
from recordgen.pictures.shapes import dots
from recordgen.records.models.names import Foot, is_fore

WIDTH, HEIGHT = 80.0, 26.0
# Room for the point at the end, picture units.
ROOM = 3.5


def course_line(foot: Foot, readings: Sequence[Reading], span: Span, scale: Scale, title: str) -> str:
    """The wall growing and trimmed as one line without axes, ending in the foot's own point at the last value.

    readings: in the unit of the scale. span, scale: what all feet of a horse share.
    Raises ValueError where nothing was measured.
    """
    visits = readings_with_values(readings)
    # Loaded with the first picture really drawn: a build whose pictures are all kept never waits for matplotlib.
    from recordgen.pictures.axes import bare

    across = (day_number(span[0]), day_number(span[1]))
    canvas = Canvas(WIDTH, HEIGHT, view=bare(across, scale, (WIDTH, HEIGHT), ROOM))
    draw_strokes(canvas, [*climbs(visits), *bridges(visits)], pen_of(foot, 1.2))
    draw_strokes(canvas, drops(visits), Pen(FOOT_COLOUR[foot], 0.8))
    last = visits[-1]
    end = dots([place(last, values_of([last])[-1])])
    canvas.draw(end, Pen(FOOT_COLOUR[foot], 5, round_ends=True))
    if not is_fore(foot):
        canvas.draw(end, Pen("card", 2.4, round_ends=True))
    return canvas.picture(title, "course")

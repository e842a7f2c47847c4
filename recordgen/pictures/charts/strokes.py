"""The strokes and points of a foot's readings: what climbs, what drops, and what was not measured."""

from __future__ import annotations

from collections.abc import Sequence
from itertools import pairwise

from recordgen.hoof.measures.readings import Reading
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.charts.limits import Span, day_number, values_of
from recordgen.pictures.pen import FOOT_COLOUR, Pen
from recordgen.pictures.shapes import Point, dots, line, segments
from recordgen.records.models.names import Foot, is_fore, is_left

DASH = (3.4, 1.8)
NOT_MEASURED = Pen("quiet", 1.1, dash=(1.0, 2.6))
# Days a panel may span for each visit before its strokes have to be finer.
DENSE_VISITS = 16

Stroke = tuple[Point, Point]


def readings_with_values(readings: Sequence[Reading]) -> list[Reading]:
    """The visits with a value, in order of their days.

    Raises ValueError where there is none.
    """
    visits = sorted((r for r in readings if values_of([r])), key=lambda r: r.day)
    if not visits:
        raise ValueError("no reading to draw")
    return visits


def weight_of(visits: Sequence[Reading], span: Span) -> float:
    """Tell how bold to draw, 1 where visits stand well apart: years of them close together would run into one blot."""
    if len(visits) < 2:
        return 1.0
    apart = (visits[-1].day - visits[0].day).days / (len(visits) - 1) / max((span[1] - span[0]).days, 1)
    return min(1.0, max(0.4, apart * DENSE_VISITS))


def pen_of(foot: Foot, width: float) -> Pen:
    """The pen of a foot: left feet solid, right feet dashed."""
    return Pen(FOOT_COLOUR[foot], width, dash=() if is_left(foot) else DASH)


def place(reading: Reading, value: float) -> Point:
    """The place where a value of a reading stands on axes of days and values."""
    return day_number(reading.day), value


def climbs(visits: Sequence[Reading]) -> list[Stroke]:
    """From after one trim to before the next, where both were measured: the wall as it grew."""
    return [
        (place(last, last.after), place(now, now.before))
        for last, now in pairwise(visits)
        if last.after is not None and now.before is not None
    ]


def drops(visits: Sequence[Reading]) -> list[Stroke]:
    """From before to after a trim, where both were measured: what was taken off."""
    return [
        (place(visit, visit.before), place(visit, visit.after))
        for visit in visits
        if visit.before is not None and visit.after is not None
    ]


def bridges(visits: Sequence[Reading]) -> list[Stroke]:
    """Between two visits where no growing can be told, from the last value to the next one."""
    return [
        (place(last, values_of([last])[-1]), place(now, values_of([now])[0]))
        for last, now in pairwise(visits)
        if last.after is None or now.before is None
    ]


def draw_strokes(canvas: Canvas, strokes: Sequence[Stroke], pen: Pen) -> None:
    """Put strokes on the sheet in one path; none are fine."""
    if strokes:
        canvas.draw(segments(strokes), pen)


def draw_joined(canvas: Canvas, foot: Foot, visits: Sequence[Reading], weight: float) -> None:
    """The readings after each trim joined, those before it as level ticks."""
    after = [place(visit, visit.after) for visit in visits if visit.after is not None]
    draw_ticks(canvas, foot, visits, weight)
    if len(after) > 1:
        canvas.draw(line(after), pen_of(foot, 1.7 * weight))
    draw_points(canvas, foot, visits, weight)


def draw_ticks(canvas: Canvas, foot: Foot, visits: Sequence[Reading], weight: float) -> None:
    """A short level stroke at each reading before a trim."""
    places = [place(visit, visit.before) for visit in visits if visit.before is not None]
    if places:
        canvas.mark(places, "_", 6.4 * weight, Pen(FOOT_COLOUR[foot], 1.3))


def draw_points(canvas: Canvas, foot: Foot, visits: Sequence[Reading], weight: float) -> None:
    """A point at each reading after a trim: filled for a fore foot, hollow for a hind foot."""
    after = dots(place(visit, visit.after) for visit in visits if visit.after is not None)
    if not after.points:
        return
    canvas.draw(after, Pen(FOOT_COLOUR[foot], 5.4 * weight, round_ends=True))
    if not is_fore(foot):
        canvas.draw(after, Pen("card", 2.8 * weight, round_ends=True))

"""One foot through time: a small panel a foot, four of them on the same axes.

Left feet are drawn solid and right feet dashed, fore feet with filled and hind feet with hollow points; colour only
repeats it.
"""

from __future__ import annotations

from collections.abc import Sequence

from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.observations import Event
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.charts.axes import (
    FONT_SIZE,
    FOOT_OF_AXIS,
    HEIGHT,
    LEFT,
    RIGHT,
    WIDTH,
    Axes,
    Scale,
    Span,
    draw_frame,
)
from recordgen.pictures.charts.events import draw_events, room_for
from recordgen.pictures.charts.forecast import ForecastCone, draw_forecast
from recordgen.pictures.charts.strokes import (
    NOT_MEASURED,
    bridges,
    climbs,
    draw_joined,
    draw_points,
    draw_strokes,
    draw_ticks,
    drops,
    measured,
    pen_of,
    weight_of,
)
from recordgen.pictures.pen import FOOT_COLOUR, Pen
from recordgen.pictures.shapes import line
from recordgen.records.models.names import Foot

ROOM_FOR_WORDS = 15.0


def toe_length_panel(
    foot: Foot,
    readings: Sequence[Reading],
    events: Sequence[Event],
    span: Span,
    scale: Scale,
    title: str,
    unit: str = "mm",
    forecast: ForecastCone | None = None,
) -> str:
    """The wall growing from trim to trim: a full stroke climbs as it grows, a thin one drops where it was trimmed.

    readings: toe length, in the unit shown. Where a visit lacks a value, a dotted line only joins what was measured.
    forecast: the growth still to come as a light cone; span and scale should hold its last day and its reach.
    Raises ValueError where nothing was measured.
    """
    visits = measured(readings)
    frame = _frame(events, span, scale)
    canvas = _begun(frame, unit)
    weight = weight_of(visits, frame)
    if forecast:
        draw_forecast(canvas, foot, forecast, frame, weight)
    draw_strokes(canvas, bridges(visits, frame), NOT_MEASURED)
    draw_strokes(canvas, drops(visits, frame), Pen(FOOT_COLOUR[foot], 0.9 * weight, opacity=0.8))
    draw_strokes(canvas, climbs(visits, frame), pen_of(foot, 1.9 * weight))
    draw_ticks(canvas, foot, [v for v in visits if v.after is None], frame, weight)
    draw_points(canvas, foot, visits, frame, weight)
    draw_events(canvas, events, frame)
    return canvas.picture(title)


def angle_panel(
    foot: Foot,
    readings: Sequence[Reading],
    events: Sequence[Event],
    span: Span,
    scale: Scale,
    title: str,
    unit: str = "°",
) -> str:
    """An angle through time: the readings after each trim joined, the readings before it as light ticks.

    Raises ValueError where nothing was measured.
    """
    visits = measured(readings)
    frame = _frame(events, span, scale)
    canvas = _begun(frame, unit)
    draw_joined(canvas, foot, visits, frame)
    draw_events(canvas, events, frame)
    return canvas.picture(title)


def difference_panel(
    foot: Foot,
    readings: Sequence[Reading],
    events: Sequence[Event],
    span: Span,
    scale: Scale,
    title: str,
    higher: tuple[str, str],
    error: float,
    unit: str = "mm",
) -> str:
    """The outer heel minus the inner one through time, about a line at zero.

    readings: lateral minus medial, in the unit shown. higher: the words at the top (the outer is higher) and at the
    bottom (the inner is). error: half the height of the shaded band, within which a difference may be none.
    Raises ValueError where nothing was measured.
    """
    visits = measured(readings)
    frame = _frame(events, span, scale, ROOM_FOR_WORDS)
    canvas = Canvas(WIDTH, HEIGHT, FONT_SIZE)
    _draw_band(canvas, frame, error)
    draw_frame(canvas, frame, unit, lambda value: f"{abs(value):g}")
    canvas.draw(line([(LEFT, frame.y(0)), (RIGHT, frame.y(0))]), Pen("quiet", 1.2))
    canvas.write(higher[0], (LEFT, 11))
    canvas.write(higher[1], (LEFT, frame.bottom + 13))
    draw_joined(canvas, foot, visits, frame)
    draw_events(canvas, events, frame)
    return canvas.picture(title)


def _frame(events: Sequence[Event], span: Span, scale: Scale, below: float = 0) -> Axes:
    room = room_for(events, Axes(span, scale))
    return Axes(span, scale, bottom=FOOT_OF_AXIS - room - below)


def _begun(frame: Axes, unit: str) -> Canvas:
    canvas = Canvas(WIDTH, HEIGHT, FONT_SIZE)
    draw_frame(canvas, frame, unit)
    return canvas


def _draw_band(canvas: Canvas, frame: Axes, error: float) -> None:
    top, bottom = frame.y(error), frame.y(-error)
    corners = [(LEFT, top), (RIGHT, top), (RIGHT, bottom), (LEFT, bottom)]
    canvas.draw(line(corners, closed=True), Pen(fill="moss", opacity=0.16))

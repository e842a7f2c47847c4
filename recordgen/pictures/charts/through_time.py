"""One foot through time: a small panel a foot, four of them on the same axes.

Left feet are drawn solid and right feet dashed, fore feet with filled and hind feet with hollow points; colour only
repeats it.
"""

from __future__ import annotations

from collections.abc import Sequence
from typing import TYPE_CHECKING

from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.observations import Event
from recordgen.language.quantities import IN_ENGLISH, Quantities
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.charts.events import band_for, draw_events
from recordgen.pictures.charts.forecast import ForecastCone, draw_forecast
from recordgen.pictures.charts.limits import Scale, Span
from recordgen.pictures.charts.panel_size import WIDTH
from recordgen.pictures.charts.strokes import (
    NOT_MEASURED,
    bridges,
    climbs,
    draw_joined,
    draw_points,
    draw_strokes,
    draw_ticks,
    drops,
    pen_of,
    readings_with_values,
    weight_of,
)
from recordgen.pictures.pen import FOOT_COLOUR, Pen
from recordgen.pictures.shapes import line, segments
from recordgen.records.models.names import Foot

if TYPE_CHECKING:
    from recordgen.pictures.charts.panel import Frame

# The class by which the page knows how large it may stand.
KIND = "panel"


def toe_length_panel(
    foot: Foot,
    readings: Sequence[Reading],
    events: Sequence[Event],
    span: Span,
    scale: Scale,
    title: str,
    forecast: ForecastCone | None = None,
    low: bool = False,
    written: Quantities = IN_ENGLISH,
) -> str:
    """The wall growing from trim to trim: a full stroke climbs as it grows, a thin one drops where it was trimmed.

    readings: toe length, mm. Where a visit lacks a value, a dotted line only joins what was measured. forecast: the
    growth still to come as a light cone; span and scale should hold its last day and its reach. low: less high than the
    other panels, and without its unit, which the page tells. written: how they are labelled.
    Raises ValueError where nothing was measured.
    """
    visits, weight = _visits(readings, span)
    canvas, frame = _begun(events, span, scale, "" if low else written.unit("mm"), low=low, written=written)
    if forecast:
        draw_forecast(canvas, foot, forecast, weight, frame.up[0])
    draw_strokes(canvas, bridges(visits), NOT_MEASURED)
    draw_strokes(canvas, drops(visits), Pen(FOOT_COLOUR[foot], 0.9 * weight))
    draw_strokes(canvas, climbs(visits), pen_of(foot, 1.7 * weight))
    draw_ticks(canvas, foot, [v for v in visits if v.after is None], weight)
    draw_points(canvas, foot, visits, weight)
    draw_events(canvas, events, span, frame.above_days, written.language)
    return canvas.picture(title, KIND)


def angle_panel(
    foot: Foot,
    readings: Sequence[Reading],
    events: Sequence[Event],
    span: Span,
    scale: Scale,
    title: str,
    unit: str = "°",
    low: bool = False,
    written: Quantities = IN_ENGLISH,
) -> str:
    """An angle through time: the readings after each trim joined, the readings before it as level ticks.

    low: less high than the other panels, and without its unit, which the page tells. written: the language of months
    and numbers.
    Raises ValueError where nothing was measured.
    """
    visits, weight = _visits(readings, span)
    degrees = Quantities(written.language)
    canvas, frame = _begun(events, span, scale, "" if low else unit, low=low, written=degrees)
    draw_joined(canvas, foot, visits, weight)
    draw_events(canvas, events, span, frame.above_days, written.language)
    return canvas.picture(title, KIND)


def difference_panel(
    foot: Foot,
    readings: Sequence[Reading],
    events: Sequence[Event],
    span: Span,
    scale: Scale,
    title: str,
    higher: tuple[str, str],
    error: float,
    written: Quantities = IN_ENGLISH,
) -> str:
    """The outer heel minus the inner one through time, about a line at zero.

    readings: lateral minus medial, mm. higher: the words at the side of the upper half (the outer is higher) and of
    the lower one (the inner is). error: half the height of the shaded band between two thin lines, within which a
    difference may be none. written: how lengths are labelled.
    Raises ValueError where nothing was measured.
    """
    visits, weight = _visits(readings, span)
    canvas, frame = _begun(events, span, scale, written.unit("mm"), sides=higher, written=written)
    _draw_band(canvas, frame, error)
    draw_joined(canvas, foot, visits, weight)
    draw_events(canvas, events, span, frame.above_days, written.language)
    return canvas.picture(title, KIND)


def _visits(readings: Sequence[Reading], span: Span) -> tuple[list[Reading], float]:
    visits = readings_with_values(readings)
    return visits, weight_of(visits, span)


def _begun(
    events: Sequence[Event],
    span: Span,
    scale: Scale,
    unit: str,
    sides: tuple[str, str] | None = None,
    low: bool = False,
    written: Quantities = IN_ENGLISH,
) -> tuple[Canvas, Frame]:
    """A sheet with the frame that all feet of a horse share."""
    # Loaded with the first picture really drawn: a build whose pictures are all kept never waits for matplotlib.
    from recordgen.pictures.charts.panel import Frame, panel_view

    frame = Frame(span, scale, unit, band_for(events, span), sides, low, written)
    return Canvas(WIDTH, frame.height, view=panel_view(frame)), frame


def _draw_band(canvas: Canvas, frame: Frame, error: float) -> None:
    first, last = frame.across
    corners = [(first, error), (last, error), (last, -error), (first, -error)]
    canvas.draw(line(corners, closed=True), Pen(fill="moss", opacity=0.16))
    edges = [((first, height), (last, height)) for height in (error, -error)]
    canvas.draw(segments(edges), Pen("moss", 0.7, dash=(1.4, 1.6)))

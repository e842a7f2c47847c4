"""Events as marks above the days: one form for each kind, told apart without colour."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from recordgen.hoof.observations import Event, EventKind
from recordgen.language.spoken import ENGLISH, Language
from recordgen.pictures.canvas import Canvas, legend
from recordgen.pictures.charts.limits import Span, day_number
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point

ROW = 10.0
# The share of a panel's width within which two marks would cover each other.
CLOSE_TOGETHER = 0.07
MOST_ROWS = 4

Mark = tuple[int, EventKind, tuple[Event, ...]]

# matplotlib's marker for each kind, how wide it is, and its pen.
FORMS: dict[EventKind, tuple[str, float, Pen]] = {
    "feed": ("^", 8.0, Pen(fill="ink")),
    "boots": ("s", 6.0, Pen("ink", 1.5, "card")),
    "vet": ("P", 8.4, Pen(fill="ink")),
}


def marks_of(events: Sequence[Event], span: Span) -> list[Mark]:
    """The marks to draw by their day numbers; events of one kind that would cover each other share one mark."""
    marks: list[Mark] = []
    for kind in FORMS:
        marks += _marks_of_kind(kind, sorted((e for e in events if e.kind == kind), key=lambda e: e.day), span)
    return sorted(marks, key=lambda mark: mark[0])


def _close(span: Span) -> float:
    return CLOSE_TOGETHER * (span[1] - span[0]).days


def _marks_of_kind(kind: EventKind, events: Iterable[Event], span: Span) -> list[Mark]:
    marks: list[Mark] = []
    for event in events:
        day = day_number(event.day)
        if marks and day - marks[-1][0] < _close(span):
            marks[-1] = (marks[-1][0], kind, (*marks[-1][2], event))
        else:
            marks.append((day, kind, (event,)))
    return marks


def rows_of(marks: Sequence[Mark], span: Span) -> list[int]:
    """For each mark the row above the days where it stands clear of the others, the lowest possible."""
    rows: list[int] = []
    ends = [float("-inf")] * MOST_ROWS
    for day, _, _ in marks:
        row = next((row for row, end in enumerate(ends) if day - end >= _close(span)), MOST_ROWS - 1)
        ends[row] = day
        rows.append(row)
    return rows


def band_for(events: Sequence[Event], span: Span) -> float:
    """Tell how high above the days the marks reach, picture units; nothing without events."""
    rows = rows_of(marks_of(events, span), span)
    return (max(rows) + 1) * ROW + 2 if rows else 0.0


def draw_events(
    canvas: Canvas,
    events: Sequence[Event],
    span: Span,
    height: Callable[[float], float],
    language: Language = ENGLISH,
) -> None:
    """The marks above the days, each telling its days and texts to whoever points at it.

    height: the value that stands so many picture units above the days.
    """
    marks = marks_of(events, span)
    for (day, kind, shared), row in zip(marks, rows_of(marks, span), strict=True):
        with canvas.group("\n".join(f"{language.short_day(event.day)}: {event.text}" for event in shared)):
            draw_mark(canvas, kind, (day, height((row + 0.5) * ROW + 1)))


def draw_mark(canvas: Canvas, kind: EventKind, at: Point) -> None:
    """The form of one kind of event."""
    form, size, pen = FORMS[kind]
    canvas.mark([at], form, size, pen)


def event_key(kinds: Mapping[EventKind, str]) -> dict[EventKind, str]:
    """A small picture of each kind's form that has words, named by them."""
    return legend({kind: _key(kind) for kind in FORMS}, kinds)


def _key(kind: EventKind) -> Callable[[Canvas, Point], None]:
    return lambda canvas, at: draw_mark(canvas, kind, at)

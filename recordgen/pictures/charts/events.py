"""Events as marks on the time axis: one form for each kind, told apart without colour."""

from __future__ import annotations

from collections.abc import Callable, Iterable, Mapping, Sequence

from recordgen.days import short_day
from recordgen.hoof.observations import Event, EventKind
from recordgen.pictures.canvas import Canvas
from recordgen.pictures.charts.axes import FOOT_OF_AXIS, Axes
from recordgen.pictures.pen import Pen
from recordgen.pictures.shapes import Point, Shape, line, segments

ROW = 11.0
CLOSE_TOGETHER = 10.0
MOST_ROWS = 4
KEY_SIZE = 16.0

Mark = tuple[float, EventKind, tuple[Event, ...]]

SOLID = Pen(fill="ink")
OPEN = Pen("ink", 1.6, "card")
BROAD = Pen("ink", 2.6)


def _triangle(x: float, y: float) -> Shape:
    return line([(x, y - 4.4), (x + 4.6, y + 3.6), (x - 4.6, y + 3.6)], closed=True)


def _square(x: float, y: float) -> Shape:
    return line([(x - 3.4, y - 3.4), (x + 3.4, y - 3.4), (x + 3.4, y + 3.4), (x - 3.4, y + 3.4)], closed=True)


def _plus(x: float, y: float) -> Shape:
    return segments([((x - 4.4, y), (x + 4.4, y)), ((x, y - 4.4), (x, y + 4.4))])


FORMS: dict[EventKind, tuple[Callable[[float, float], Shape], Pen]] = {
    "feed": (_triangle, SOLID),
    "boots": (_square, OPEN),
    "vet": (_plus, BROAD),
}


def marks_of(events: Sequence[Event], frame: Axes) -> list[Mark]:
    """The marks to draw, left to right; events of one kind that would cover each other share one mark."""
    marks: list[Mark] = []
    for kind in FORMS:
        marks += _marks_of_kind(kind, sorted((e for e in events if e.kind == kind), key=lambda e: e.day), frame)
    return sorted(marks, key=lambda mark: mark[0])


def _marks_of_kind(kind: EventKind, events: Iterable[Event], frame: Axes) -> list[Mark]:
    marks: list[Mark] = []
    for event in events:
        x = frame.x(event.day)
        if marks and x - marks[-1][0] < CLOSE_TOGETHER:
            marks[-1] = (marks[-1][0], kind, (*marks[-1][2], event))
        else:
            marks.append((x, kind, (event,)))
    return marks


def rows_of(marks: Sequence[Mark]) -> list[int]:
    """For each mark the row above the axis where it stands clear of the others, the lowest possible."""
    rows: list[int] = []
    ends = [float("-inf")] * MOST_ROWS
    for x, _, _ in marks:
        row = next((row for row, end in enumerate(ends) if x - end >= CLOSE_TOGETHER), MOST_ROWS - 1)
        ends[row] = x
        rows.append(row)
    return rows


def room_for(events: Sequence[Event], frame: Axes) -> float:
    """How high above the axis the marks reach, picture units; nothing without events."""
    rows = rows_of(marks_of(events, frame))
    return (max(rows) + 1) * ROW + 3 if rows else 0.0


def draw_events(canvas: Canvas, events: Sequence[Event], frame: Axes) -> None:
    """The marks on the time axis, each telling its days and texts to whoever points at it."""
    marks = marks_of(events, frame)
    for (x, kind, shared), row in zip(marks, rows_of(marks), strict=True):
        with canvas.told("\n".join(f"{short_day(event.day)}: {event.text}" for event in shared)):
            draw_mark(canvas, kind, (x, FOOT_OF_AXIS - 8 - row * ROW))


def draw_mark(canvas: Canvas, kind: EventKind, at: Point) -> None:
    """The form of one kind of event."""
    form, pen = FORMS[kind]
    canvas.draw(form(*at), pen)


def event_key(kinds: Mapping[EventKind, str]) -> dict[EventKind, str]:
    """A small picture of each kind's form, for a legend that the page lays out; each is named by the kind's words."""
    return {kind: _key(kind, words) for kind, words in kinds.items()}


def _key(kind: EventKind, words: str) -> str:
    canvas = Canvas(KEY_SIZE, KEY_SIZE)
    draw_mark(canvas, kind, (KEY_SIZE / 2, KEY_SIZE / 2))
    return canvas.picture(words)

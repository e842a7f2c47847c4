"""Tell how fast each foot grows: its estimate with its interval, the single cycles behind it, and what is usual."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import TYPE_CHECKING, Literal

from recordgen.language.quantities import IN_ENGLISH, Quantities
from recordgen.pictures.canvas import Canvas, legend
from recordgen.pictures.charts.strokes import pen_of
from recordgen.pictures.pen import FOOT_COLOUR, Pen
from recordgen.pictures.shapes import Point, dots, finite, in_order, line
from recordgen.records.models.names import Foot, is_fore

if TYPE_CHECKING:
    from recordgen.pictures.charts.rate_axes import RateFrame

Interval = tuple[float, float, float]

# Shares of a row from its top: its words, the single cycles, the estimate, growth by a mark.
WORDS, CYCLES, NET, TRUE = 0.32, 0.5, 0.7, 0.9
HALF_RAIL = 0.045
# Single cycles are dots: how wide, how many above each other, and how close they may come, as a share of the scale.
DOT, LEVELS, LEVEL, CLOSE_TOGETHER = 3.6, 3, 0.085, 0.014
ESTIMATE, HOLE, CAP, LOZENGE, CROSS = 8.0, 4.2, 7.0, 6.6, 6.4
USUAL, USUAL_EDGE = Pen(fill="moss", opacity=0.16), Pen("moss", 0.7, dash=(1.4, 1.6))
LEFT_OUT = Pen("quiet", 0.9, "card")


@dataclass(frozen=True)
class RateRow:
    """The growth of one foot, mm a month.

    low, middle, high: the estimate of net growth with its interval. cycles: each cycle it rests on. left_out: those
    that it does not. true: growth by a mark on the wall, low, middle and high, where one was followed.
    """

    foot: Foot
    label: str
    low: float
    middle: float
    high: float
    cycles: tuple[float, ...]
    left_out: tuple[float, ...]
    true: Interval | None = None

    @property
    def values(self) -> tuple[float, ...]:
        """Everything that is drawn of it."""
        return (self.low, self.middle, self.high, *self.cycles, *self.left_out, *(self.true or ()))


def growth_rates(
    rows: Sequence[RateRow],
    usual: tuple[float, float],
    unit: str,
    title: str,
    written: Quantities = IN_ENGLISH,
) -> str:
    """The growth of each foot on one scale, a row a foot in the order given.

    rows, usual: rates, mm a month; usual is the range of the horse's class. unit: the words below the axis. written:
    how they are labelled.
    Raises ValueError where there is no row, an interval is out of order or a value is no number.
    """
    _check(rows, usual)
    # Loaded with the first picture really drawn: a build whose pictures are all kept never waits for matplotlib.
    from recordgen.pictures.charts.rate_axes import WIDTH, rate_frame, rate_view

    frame = rate_frame([*usual, *(value for row in rows for value in row.values)], len(rows), unit, written)
    canvas = Canvas(WIDTH, frame.height, view=rate_view(frame))
    _draw_usual(canvas, len(rows), usual)
    for index, row in enumerate(rows):
        _draw_row(canvas, frame, index, row)
    return canvas.picture(title, "wide")


def _check(rows: Sequence[RateRow], usual: tuple[float, float]) -> None:
    if not rows:
        raise ValueError("no rate to draw")
    in_order("usual range", *usual)
    for row in rows:
        in_order("interval", row.low, row.middle, row.high)
        in_order("interval of true growth", *(row.true or ()))
        finite("cycles", *row.cycles, *row.left_out)


def _draw_usual(canvas: Canvas, rows: int, usual: tuple[float, float]) -> None:
    low, high = usual
    canvas.draw(line([(low, 0), (high, 0), (high, rows), (low, rows)], closed=True), USUAL)
    for edge in usual:
        canvas.draw(line([(edge, 0), (edge, rows)]), USUAL_EDGE)


def _draw_row(canvas: Canvas, frame: RateFrame, index: int, row: RateRow) -> None:
    with canvas.group(row.label):
        canvas.write(row.label, (frame.across[0], index + WORDS), colour="ink")
        _draw_cycles(canvas, row, frame.across, index + CYCLES)
        draw_net(canvas, row.foot, (row.low, row.middle, row.high), index + NET)
        if row.true:
            draw_true(canvas, row.foot, row.true, index + TRUE, HALF_RAIL)


def _draw_cycles(canvas: Canvas, row: RateRow, across: tuple[float, float], down: float) -> None:
    if row.cycles:
        apart = CLOSE_TOGETHER * (across[1] - across[0])
        light = Pen(FOOT_COLOUR[row.foot], DOT, round_ends=True)
        canvas.draw(dots((rate, down - level * LEVEL) for rate, level in stack_levels(row.cycles, apart)), light)
    if row.left_out:
        canvas.mark([(rate, down) for rate in sorted(row.left_out)], "X", CROSS, LEFT_OUT)


def stack_levels(places: Sequence[float], apart: float) -> list[tuple[float, int]]:
    """Each place from left to right with the lowest level on which it does not cover another, the topmost at worst.

    apart: how far places stand clear of each other.
    """
    ends = [float("-inf")] * LEVELS
    found = []
    for x in sorted(places):
        level = next((level for level, end in enumerate(ends) if x - end >= apart), LEVELS - 1)
        ends[level] = x
        found.append((x, level))
    return found


def draw_net(canvas: Canvas, foot: Foot, bar: Interval, y: float) -> None:
    """A line with an end stroke at both ends and the foot's own point on it; bar: its three places."""
    low, middle, high = bar
    canvas.draw(line([(low, y), (high, y)]), pen_of(foot, 2.0))
    canvas.mark([(low, y), (high, y)], "|", CAP, Pen(FOOT_COLOUR[foot], 1.5))
    canvas.draw(dots([(middle, y)]), Pen(FOOT_COLOUR[foot], ESTIMATE, round_ends=True))
    if not is_fore(foot):
        canvas.draw(dots([(middle, y)]), Pen("card", HOLE, round_ends=True))


def draw_true(canvas: Canvas, foot: Foot, bar: Interval, y: float, half: float) -> None:
    """A narrow open box with a lozenge on it, so that growth by a mark is never taken for net growth.

    half: half the height of the box.
    """
    low, middle, high = bar
    box = [(low, y - half), (high, y - half), (high, y + half), (low, y + half)]
    canvas.draw(line(box, closed=True), pen_of(foot, 1.1))
    fill = FOOT_COLOUR[foot] if is_fore(foot) else "card"
    canvas.mark([(middle, y)], "D", LOZENGE, Pen(FOOT_COLOUR[foot], 1.5, fill))


RateForm = Literal["net", "true", "usual", "cycle", "left out"]
KEY_FOOT: Foot = "left_fore"


def _key_usual(canvas: Canvas, at: Point) -> None:
    x, y = at
    canvas.draw(line([(x - 7, y - 6), (x + 7, y - 6), (x + 7, y + 6), (x - 7, y + 6)], closed=True), USUAL)
    for edge in (x - 7, x + 7):
        canvas.draw(line([(edge, y - 6), (edge, y + 6)]), USUAL_EDGE)


KEY_FORMS: dict[RateForm, Callable[[Canvas, Point], None]] = {
    "net": lambda canvas, at: draw_net(canvas, KEY_FOOT, (at[0] - 7, at[0], at[0] + 7), at[1]),
    "true": lambda canvas, at: draw_true(canvas, KEY_FOOT, (at[0] - 7, at[0], at[0] + 7), at[1], 2.1),
    "usual": _key_usual,
    "cycle": lambda canvas, at: canvas.draw(dots([at]), Pen(FOOT_COLOUR[KEY_FOOT], DOT * 1.4, round_ends=True)),
    "left out": lambda canvas, at: canvas.mark([at], "X", CROSS * 1.2, LEFT_OUT),
}


def rate_key(words: Mapping[RateForm, str]) -> dict[RateForm, str]:
    """A small picture of each form in `growth_rates` that has words, named by them."""
    return legend(KEY_FORMS, words)

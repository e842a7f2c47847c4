"""How fast each foot grows: its estimate with its interval, the single cycles behind it, and what is usual."""

from __future__ import annotations

from collections.abc import Callable, Mapping, Sequence
from dataclasses import dataclass
from typing import Literal

from recordgen.pictures.canvas import Canvas, legend
from recordgen.pictures.charts.axes import AXIS, GRID, Scale, number_words, round_scale, value_ticks
from recordgen.pictures.charts.strokes import pen_of
from recordgen.pictures.labels_below import shortened, width_of
from recordgen.pictures.pen import FOOT_COLOUR, Pen
from recordgen.pictures.shapes import Point, Shape, dots, finite, in_order, line, segments
from recordgen.records.models.names import Foot, is_fore

Interval = tuple[float, float, float]

# At 260 CSS px wide, the narrowest it stands, 12 of these units are still more than 11 px.
WIDTH, FONT_SIZE = 280.0, 12.0
LEAST_LEFT, MOST_LEFT, RIGHT, TOP = 30.0, 100.0, 272.0, 4.0
ROW, ROW_WITH_TRUE = 34.0, 45.0
CYCLES_DOWN, BAR_DOWN, TRUE_DOWN = 12.5, 22.5, 35.0
BELOW = 36.0
LEAST_SCALE, MOST_STEPS = 3.0, 7

DOT, DOTS_APART, LEVELS = 3.6, 3.8, 3
CAP, CROSS, LOZENGE, RAIL = 3.6, 4.2, 4.6, 2.1
ESTIMATE, HOLE = 8.6, 4.4
USUAL = Pen(fill="moss", opacity=0.16)
LEFT_OUT = Pen("quiet", 0.9, "card")


@dataclass(frozen=True)
class RateRow:
    """How fast one foot grows, in the unit shown.

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


@dataclass(frozen=True)
class Plot:
    """The plot's place on the sheet: its rates from left to right and its rows from top to bottom."""

    scale: Scale
    left: float
    row: float
    rows: int

    @property
    def bottom(self) -> float:
        """Where the axis of rates stands."""
        return TOP + self.row * self.rows

    def x(self, rate: float) -> float:
        """Where a rate stands, left to right."""
        low, high = self.scale
        return self.left + (RIGHT - self.left) * (rate - low) / (high - low)

    def top(self, index: int) -> float:
        """Where a row begins."""
        return TOP + self.row * index


def growth_rates(rows: Sequence[RateRow], usual: tuple[float, float], unit: str, title: str) -> str:
    """The growth of each foot on one scale, a row a foot in the order given.

    rows, usual: rates in the unit shown, such as mm a month; usual is the range of the horse's class.
    Raises ValueError where there is no row, an interval is out of order or a value is no number.
    """
    plot = _plot(rows, usual)
    canvas = Canvas(WIDTH, plot.bottom + BELOW, FONT_SIZE)
    _draw_usual(canvas, plot, usual)
    _draw_scale(canvas, plot, unit)
    for index, row in enumerate(rows):
        _draw_row(canvas, plot, index, row)
    return canvas.picture(title)


def _plot(rows: Sequence[RateRow], usual: tuple[float, float]) -> Plot:
    if not rows:
        raise ValueError("no rate to draw")
    in_order("usual range", *usual)
    for row in rows:
        in_order("interval", row.low, row.middle, row.high)
        in_order("interval of true growth", *(row.true or ()))
        finite("cycles", *row.cycles, *row.left_out)
    scale = round_scale([*usual, *(value for row in rows for value in row.values)], LEAST_SCALE)
    widest = max(width_of(row.label, FONT_SIZE) for row in rows)
    left = min(max(widest + 8, LEAST_LEFT), MOST_LEFT)
    return Plot(scale, left, ROW_WITH_TRUE if any(row.true for row in rows) else ROW, len(rows))


def _draw_usual(canvas: Canvas, plot: Plot, usual: tuple[float, float]) -> None:
    low, high = plot.x(usual[0]), plot.x(usual[1])
    canvas.draw(line([(low, TOP), (high, TOP), (high, plot.bottom), (low, plot.bottom)], closed=True), USUAL)


def _draw_scale(canvas: Canvas, plot: Plot, unit: str) -> None:
    ticks = value_ticks(plot.scale, MOST_STEPS)
    canvas.draw(segments([((plot.x(tick), TOP), (plot.x(tick), plot.bottom)) for tick in ticks]), GRID)
    between = [((0.0, plot.top(index)), (RIGHT, plot.top(index))) for index in range(1, plot.rows)]
    if between:
        canvas.draw(segments(between), GRID)
    canvas.draw(line([(plot.left, plot.bottom), (RIGHT, plot.bottom)]), AXIS)
    for tick in ticks:
        canvas.write(number_words(tick), (plot.x(tick), plot.bottom + 15), "middle")
    canvas.write(unit, ((plot.left + RIGHT) / 2, plot.bottom + 31), "middle")


def _draw_row(canvas: Canvas, plot: Plot, index: int, row: RateRow) -> None:
    top = plot.top(index)
    with canvas.told(row.label):
        label_down = (BAR_DOWN + TRUE_DOWN) / 2 if row.true else BAR_DOWN
        canvas.write(shortened(row.label, plot.left - 8, FONT_SIZE), (0, top + label_down + 4), colour="ink")
        _draw_cycles(canvas, row, plot, top + CYCLES_DOWN)
        bar = (plot.x(row.low), plot.x(row.middle), plot.x(row.high))
        draw_net(canvas, row.foot, bar, top + BAR_DOWN)
        if row.true:
            low, middle, high = row.true
            draw_true(canvas, row.foot, (plot.x(low), plot.x(middle), plot.x(high)), top + TRUE_DOWN)


def _draw_cycles(canvas: Canvas, row: RateRow, plot: Plot, down: float) -> None:
    if row.cycles:
        places = stacked([plot.x(cycle) for cycle in row.cycles])
        light = Pen(FOOT_COLOUR[row.foot], DOT, opacity=0.55, round_ends=True)
        canvas.draw(dots((x, down - level * DOTS_APART) for x, level in places), light)
    for cycle in sorted(row.left_out):
        canvas.draw(cross_form((plot.x(cycle), down)), LEFT_OUT)


def stacked(places: Sequence[float]) -> list[tuple[float, int]]:
    """Each place from left to right with the lowest level on which it does not cover another, the topmost at worst."""
    ends = [float("-inf")] * LEVELS
    found = []
    for x in sorted(places):
        level = next((level for level, end in enumerate(ends) if x - end >= DOTS_APART), LEVELS - 1)
        ends[level] = x
        found.append((x, level))
    return found


def draw_net(canvas: Canvas, foot: Foot, bar: Interval, y: float) -> None:
    """A line with an end stroke at both ends and the foot's own point on it; bar: its three places, picture units."""
    low, middle, high = bar
    canvas.draw(line([(low, y), (high, y)]), pen_of(foot, 2.0))
    canvas.draw(segments([((x, y - CAP), (x, y + CAP)) for x in (low, high)]), Pen(FOOT_COLOUR[foot], 1.5))
    canvas.draw(dots([(middle, y)]), Pen(FOOT_COLOUR[foot], ESTIMATE, round_ends=True))
    if not is_fore(foot):
        canvas.draw(dots([(middle, y)]), Pen("card", HOLE, round_ends=True))


def draw_true(canvas: Canvas, foot: Foot, bar: Interval, y: float) -> None:
    """A narrow open box with a lozenge on it, so that growth by a mark is never taken for net growth."""
    low, middle, high = bar
    box = [(low, y - RAIL), (high, y - RAIL), (high, y + RAIL), (low, y + RAIL)]
    canvas.draw(line(box, closed=True), pen_of(foot, 1.1))
    lozenge = [(middle, y - LOZENGE), (middle + LOZENGE, y), (middle, y + LOZENGE), (middle - LOZENGE, y)]
    fill = FOOT_COLOUR[foot] if is_fore(foot) else "card"
    canvas.draw(line(lozenge, closed=True), Pen(FOOT_COLOUR[foot], 1.6, fill))


def cross_form(at: Point) -> Shape:
    """The outline of a small slanting cross."""
    x, y = at
    arm, waist = CROSS * 0.75, CROSS * 0.35
    quarter = [(0.0, -waist), (arm - waist, -arm), (arm, -arm + waist)]
    turned = []
    for _ in range(4):
        turned += quarter
        quarter = [(-down, across) for across, down in quarter]
    return line([(x + across, y + down) for across, down in turned], closed=True)


RateForm = Literal["net", "true", "usual", "cycle", "left out"]
KEY_FOOT: Foot = "left_fore"
KEY_FORMS: dict[RateForm, Callable[[Canvas, Point], None]] = {
    "net": lambda canvas, at: draw_net(canvas, KEY_FOOT, (at[0] - 7, at[0], at[0] + 7), at[1]),
    "true": lambda canvas, at: draw_true(canvas, KEY_FOOT, (at[0] - 7, at[0], at[0] + 7), at[1]),
    "usual": lambda canvas, at: canvas.draw(
        line([(at[0] - 7, at[1] - 6), (at[0] + 7, at[1] - 6), (at[0] + 7, at[1] + 6), (at[0] - 7, at[1] + 6)], True),
        USUAL,
    ),
    "cycle": lambda canvas, at: canvas.draw(dots([at]), Pen(FOOT_COLOUR[KEY_FOOT], DOT * 1.4, round_ends=True)),
    "left out": lambda canvas, at: canvas.draw(cross_form(at), LEFT_OUT),
}


def rate_key(words: Mapping[RateForm, str]) -> dict[RateForm, str]:
    """A small picture of each form in `growth_rates` that has words, named by them."""
    return legend(KEY_FORMS, words)

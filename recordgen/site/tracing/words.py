"""Figures of tracings in words: with their error, what lacks and why, what changed, and what differs."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass

from recordgen.hoof.context import Context
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.naming import Naming
from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.hoof.tracing.figures import Traced
from recordgen.records.models.names import ZONES

# 95 % of a normal error lie within so many standard deviations.
WITHIN = 1.96
# Of what cannot be told so many names are given.
MOST_LACKING = 6
DASH, MINUS = "–", "\N{MINUS SIGN}"
# Units that stand for a share of one, and need not be said.
BARE_UNITS = ("of 1", "to 1")
# Measures that a record computes from two others, and that a tracing tells at once, with its own error.
ALSO_TRACED = {
    "toe_heel_difference": "toe_heel_difference_deg",
    "axis_difference": "hoof_pastern_axis_deg",
    "sole_ratio": "width_to_length",
    "frog_ratio": "frog_width_to_length",
}
# Told first beside the measures whose changes are told.
TOLD_FIRST = ("heel_angle", "axis_difference")


@dataclass(frozen=True)
class TracedRow:
    """One figure: a cell for each tracing. first: told in the short table. detail: told by tracings alone."""

    name: str
    unit: str
    cells: tuple[str, ...]
    first: bool
    detail: bool


class TracedWords:
    """The words of one practice.

    measures: by the name of the figure that gives them, in the order of the table; told: with those that are computed.
    """

    def __init__(self, ways: Context) -> None:
        """The measures that tracings give, and their words."""
        self.naming = ways.naming
        figures = [(measure.traced or ALSO_TRACED.get(measure.key, ""), measure) for measure in ways.measures]
        self.told = {figure: measure for figure, measure in figures if figure}
        self.measures = {figure: measure for figure, measure in self.told.items() if measure.traced}

    def rows(self, traced: Sequence[Traced]) -> Iterator[TracedRow]:
        """A row for every figure that one of some tracings gives, but those of a zone."""
        for figure, measure in self.told.items():
            found = [one.figures.get(figure) for one in traced]
            if measure.zone is None and any(found):
                cells, words = tuple(with_error(self.naming, measure, one) for one in found), measure.words
                first = words.headline or measure.key in TOLD_FIRST
                yield TracedRow(words.name, _unit(measure, self.naming), cells, first, words.detail)

    def zones(self, one: Traced) -> Iterator[tuple[str, tuple[str, ...]]]:
        """The name of each zone, how thick the wall is there, and what stands above the baseline."""
        for zone in ZONES:
            mine = [(figure, one) for figure, one in self.measures.items() if one.zone == zone]
            found = [(measure, one.figures.get(figure)) for figure, measure in mine]
            if any(figure for _, figure in found):
                yield self.naming.place(zone), tuple(with_error(self.naming, *cell) for cell in found)

    def lacking(self, one: Traced) -> Iterator[str]:
        """For each set of landmarks that were not traced, which measures are not told for it."""
        by_marks: dict[tuple[str, ...], dict[str, None]] = {}
        lacking = [(self.told[figure], marks) for figure, marks in one.lacking.items() if figure in self.told]
        for measure, marks in sorted(lacking, key=lambda pair: _rank(pair[0])):
            by_marks.setdefault(marks, {})[measure.words.name] = None
        for marks, names in by_marks.items():
            told = self._some(list(names))
            if not marks:
                yield self.naming.phrase("tracing_lacking_short", figures=told)
            else:
                listed = self.naming.listed([self.naming.phrase(f"tracing_mark_{mark}") for mark in marks])
                yield self.naming.phrase("tracing_lacking", marks=listed, figures=told)

    def _some(self, names: Sequence[str]) -> str:
        more = len(names) - MOST_LACKING
        if more <= 1:
            return "; ".join(names)
        kept = "; ".join(names[:MOST_LACKING])
        return self.naming.phrase("tracing_and_more", names=kept, count=str(more))


def with_error(naming: Naming, measure: Measure, figure: Figure | None) -> str:
    """A figure in the digits of its measure, with 95 % of its error; a dash without one."""
    if figure is None:
        return DASH
    return with_hand_error(naming, figure, _digits(measure), measure.unit)


def with_hand_error(naming: Naming, figure: Figure, digits: int, unit: str = "mm") -> str:
    """A figure with 95 % of its error, both as they are shown. unit: its own, in which it has so many digits."""
    units, shown_digits = naming.units, naming.quantities.digits(unit, digits)
    value, sd = units.shown(figure.value, unit), units.shown(figure.sd, unit)
    error = max(WITHIN * sd, 10.0**-shown_digits)
    return naming.figures(f"{_number(value, shown_digits)} ± {error:.{shown_digits}f}")


def _unit(measure: Measure, naming: Naming) -> str:
    if measure.unit in BARE_UNITS:
        return ""
    return "°" if measure.unit == "degrees" else naming.quantities.unit(measure.unit)


def _rank(measure: Measure) -> tuple[bool, bool]:
    """First what tracings alone tell, and of that what is told among the changes."""
    return not measure.words.detail, not measure.words.headline


def _digits(measure: Measure) -> int:
    return max(measure.words.decimals, 1)


def _number(value: float, digits: int) -> str:
    """With a true minus sign, and none before nought."""
    text = f"{value:.{digits}f}"
    return text.lstrip("-") if float(text) == 0 else text.replace("-", MINUS)

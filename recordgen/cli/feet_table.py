"""The figures of a horse's feet as a table for a terminal: a row a measure, a column a foot."""

from __future__ import annotations

import textwrap
from collections.abc import Iterator, Mapping, Sequence
from typing import TYPE_CHECKING

from recordgen.cli.columns import columns

if TYPE_CHECKING:
    from recordgen.hoof.growth.growth import FootGrowth
    from recordgen.hoof.measures.change import MeasureSummary
    from recordgen.hoof.measures.look import Look
    from recordgen.hoof.naming import Naming
    from recordgen.hoof.summary import FootSummary, HorseSummary
    from recordgen.records.models.names import Foot

# Half of an interval that holds 95 of 100 readings, by their standard deviation. Source: normal distribution tables.
HALF_OF_95 = 1.96
# Of a ratio the table of measures tells "0.6 to 1".
NO_UNIT = "to 1"
NARROWEST_NAME = 12
Row = tuple[str, ...]


def feet_table(summary: HorseSummary, naming: Naming, most: int | None) -> Iterator[str]:
    """The lines of the table; where the terminal is too narrow for four feet, the fores first and the hinds below.

    most: signs to a line; all where None. Beside a figure traced on a picture stands its error.
    """
    feet = list(summary.feet)
    if not feet:
        return
    rows = _rows(summary, feet, naming)
    if most is not None and len(feet) > 2 and _wide(rows) > most:
        for pair in (feet[:2], feet[2:]):
            yield from columns(list(_fold_names(_rows(summary, pair, naming), most)), most, "  ")
    else:
        yield from columns(rows, most, "  ")


def _fold_names(rows: Sequence[Row], most: int) -> Iterator[Row]:
    """The rows, with a name that leaves no room for the figures folded over several lines."""
    cells = [max(map(len, column)) for column in list(zip(*rows, strict=True))[1:]]
    room = max(NARROWEST_NAME, most - sum(cells) - 2 * len(cells) - 2)
    for label, *figures in rows:
        *first, last = textwrap.wrap(label, room, subsequent_indent="  ") or [""]
        yield from ((line, *("" for _ in figures)) for line in first)
        yield (last, *figures)


def _wide(rows: Sequence[Row]) -> int:
    return max(map(len, columns(rows, None, "  ")))


def _rows(summary: HorseSummary, feet: Sequence[Foot], naming: Naming) -> list[Row]:
    """The head with the feet, how they grow, and each measure that was taken of any of them."""
    here = [summary.feet[foot] for foot in feet]
    rows = [("", *map(naming.foot, feet))]
    rows += [_growth("net", [one.growth for one in here], naming)]
    rows += [_growth("true", [one.growth for one in here], naming)]
    looks = {foot: [at.feet[foot].look for at in summary.history if foot in at.feet] for foot in feet}
    keys = dict.fromkeys(key for one in here for key in one.measures)
    rows += [_measure(key, here, looks, naming) for key in keys]
    return [rows[0], *(row for row in rows[1:] if any(row[1:]))]


def _growth(kind: str, growths: Sequence[FootGrowth], naming: Naming) -> Row:
    from recordgen.hoof.naming import MONTH_DAYS

    found = [getattr(growth, kind) for growth in growths]
    written = naming.quantities
    monthly = [
        {name: written.span_figure(getattr(one, name) * MONTH_DAYS, 1) for name in ("mean", "low", "high")}
        if one
        else None
        for one in found
    ]
    cells = ("" if one is None else naming.phrase("summary_interval", **one) for one in monthly)
    return (naming.phrase(f"summary_{kind}", unit=written.unit_in_words("mm")), *cells)


def _measure(key: str, feet: Sequence[FootSummary], looks: Mapping[Foot, Sequence[Look]], naming: Naming) -> Row:
    measure = next(one.measures[key].measure for one in feet if key in one.measures)
    label = naming.measure(measure.words.name, measure.zone)
    cells = [_cell(one.measures[key], looks[one.foot], naming) if key in one.measures else "" for one in feet]
    return (f"{label}, {naming.unit(measure.unit)}" if measure.unit not in ("", NO_UNIT) else label, *cells)


def _cell(one: MeasureSummary, looks: Sequence[Look], naming: Naming) -> str:
    """Before and after the trim, to what their error carries; the error beside what was traced."""
    from recordgen.records.models.reference import TRACING

    look = next(look for look in looks if look.day == one.day and one.measure.key in look.readings)
    way = look.way(one.measure, one.moment)
    sd = look.sd(one.measure, one.moment)
    typed = TRACING not in way and not one.measure.parts
    taken = [value for value in (one.before, one.after) if value is not None]
    unit, written = one.measure.unit, naming.quantities
    if naming.units.of(unit) != unit:
        by_rule = unit == "mm" and TRACING not in way
        values = [written.length_figure(value) if by_rule else written.figure(value, unit, 1) for value in taken]
        error = written.figure(HALF_OF_95 * sd, unit, 1)
    else:
        values = [naming.figures(figure_text(value, sd, typed)) for value in taken]
        error = naming.figures(figure_text(HALF_OF_95 * sd, sd))
    return " → ".join(values) + (f" ± {error}" if TRACING in way else "")


def figure_text(value: float, sd: float, typed: bool = False) -> str:
    """A figure with the digits that its error carries: the last one is not much smaller than the standard deviation.

    typed: what somebody wrote down keeps its own digits, one after the point at the most.
    """
    if typed:
        return f"{round(value, 1):g}"
    digits = 0 if sd >= 0.5 else 1 if sd >= 0.05 else 2
    return f"{round(value, digits) + 0.0:.{digits}f}"

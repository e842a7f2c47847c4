"""Every reading of a horse as a row of plain values."""

from __future__ import annotations

from collections.abc import Iterator
from typing import get_args

from recordgen.csv_text import PlainRow, plain_number
from recordgen.hoof.export.sheet import Sheet, VisitLine
from recordgen.hoof.export.sheet_errors import reading_method
from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.measures.readings import Moment
from recordgen.hoof.measures.rounding import significant
from recordgen.hoof.summary import VisitSummary
from recordgen.records.models.names import Foot

COLUMNS = (
    *("stable", "horse", "name", "visit_day", "visit_number", "trimmed", "recorded_by"),
    *("foot", "measure", "zone", "moment", "value", "unit", "method", "sd", "error", "source"),
)


def reading_rows(sheet: Sheet) -> Iterator[PlainRow]:
    """One row for each visit, foot, measure and moment, in the order of `COLUMNS`; oldest first."""
    lines = sheet.visits[::-1]
    for line, at in zip(lines, sheet.summary.history[::-1], strict=True):
        yield from _rows_of_visit(sheet, line, at)


def _rows_of_visit(sheet: Sheet, line: VisitLine, at: VisitSummary) -> Iterator[PlainRow]:
    measures = {row.measure.key: row.measure for row in sheet.rows}
    visit: PlainRow = {
        "stable": sheet.summary.stable,
        "horse": sheet.summary.slug,
        "name": sheet.summary.horse.name,
        "visit_day": line.day.isoformat(),
        "visit_number": line.number,
        "trimmed": "yes" if line.trimmed else "no",
        "recorded_by": line.by,
    }
    for foot, one in at.feet.items():
        for key in one.look.readings:
            found = _moments(measures[key], foot, one.look, sheet.own_source)
            yield from ({**visit, **values} for values in found)


def _moments(measure: Measure, foot: Foot, look: Look, own_source: str) -> Iterator[PlainRow]:
    moments: tuple[Moment, ...] = get_args(Moment)
    for moment in moments:
        value = getattr(look.readings[measure.key], moment)
        if value is None:
            continue
        taken = reading_method(measure, look, moment, own_source)
        yield {
            "foot": foot,
            "measure": measure.name,
            "zone": measure.zone or "",
            "moment": "as found" if measure.as_found else moment,
            "value": plain_number(value),
            "unit": measure.unit,
            "method": taken.way,
            "sd": significant(taken.sd),
            "error": taken.error,
            "source": taken.source,
        }

"""Rows of the tables on a horse's page, arranged from its summary."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from recordgen.hoof.measures.change import MeasureSummary
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.names import Foot
from recordgen.site.drawings.pictures import readings_of


@dataclass(frozen=True)
class TableRow:
    """One measure, and its summary on each foot that has it."""

    measure: Measure
    by_foot: dict[Foot, MeasureSummary]


def side_by_side(summary: HorseSummary, measures: tuple[Measure, ...]) -> list[TableRow]:
    """The measures of whole feet in the order of the table, each with the feet on which it was taken.

    Those that stand with the tracings alone are left out.
    """
    rows = []
    for measure in measures:
        found = {foot: one.measures[measure.key] for foot, one in summary.feet.items() if measure.key in one.measures}
        if found and measure.zone is None and not measure.words.detail:
            rows.append(TableRow(measure, found))
    return rows


def figures(summary: HorseSummary, measure: str) -> list[tuple[date, dict[Foot, Reading]]]:
    """The readings of a measure by visit, newest first: what a picture through time shows, as a table."""
    by_day: dict[date, dict[Foot, Reading]] = {}
    for foot, readings in readings_of(summary, measure).items():
        for reading in readings:
            by_day.setdefault(reading.day, {})[foot] = reading
    return sorted(by_day.items(), reverse=True, key=lambda pair: pair[0])

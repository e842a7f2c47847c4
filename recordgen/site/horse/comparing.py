"""The figures of all visits, for setting two days side by side without asking a server."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date

from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.naming import Naming
from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.names import FEET, Foot
from recordgen.site.templates import number

# Of the parts of a computed measure, and of what stands with the tracings alone, an owner compares the whole.
FEWEST_VISITS = 2


@dataclass(frozen=True)
class ComparedRow:
    """A measure, and its figure on each foot, by day as the page writes it; none where it was not taken."""

    name: str
    unit: str
    by_day: dict[date, dict[Foot, str]]


@dataclass(frozen=True)
class Comparison:
    """The days of a horse, the newest first, and the rows that can be compared."""

    days: tuple[date, ...]
    rows: tuple[ComparedRow, ...]

    def on_both(self, first: date, last: date) -> list[ComparedRow]:
        """The rows that were taken on both days on one foot at least."""
        return [one for one in self.rows if set(one.by_day.get(first, {})) & set(one.by_day.get(last, {}))]

    @property
    def data(self) -> list[dict[str, object]]:
        """The rows as the page's script reads them: by day in ISO form a list in the order of the feet."""
        return [
            {
                "name": row.name,
                "unit": row.unit,
                "days": {day.isoformat(): [held.get(foot, "") for foot in FEET] for day, held in row.by_day.items()},
            }
            for row in self.rows
        ]


def comparison_of(summary: HorseSummary, measures: tuple[Measure, ...], naming: Naming) -> Comparison | None:
    """The measures of whole feet that were taken on two days at least; None of a horse with fewer than two visits."""
    days = tuple(dict.fromkeys(one.visit.date for one in summary.history))
    if len(days) < FEWEST_VISITS:
        return None
    rows = [_row(summary, one, naming) for one in measures if one.zone is None and not one.words.detail]
    return Comparison(days, tuple(row for row in rows if len(row.by_day) >= FEWEST_VISITS))


def _row(summary: HorseSummary, measure: Measure, naming: Naming) -> ComparedRow:
    by_day: dict[date, dict[Foot, str]] = {}
    for visit in summary.history:
        for foot, at in visit.feet.items():
            reading = at.look.readings.get(measure.key)
            if reading:
                by_day.setdefault(visit.visit.date, {})[foot] = str(number(naming, measure, _latest(reading)))
    return ComparedRow(measure.words.name, naming.unit(measure.unit), by_day)


def _latest(reading: Reading) -> float | None:
    return reading.before if reading.after is None else reading.after

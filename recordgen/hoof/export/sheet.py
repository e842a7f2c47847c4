"""The vet's sheet of one horse: what of its summary stands there in rows, how it was measured, and what was not."""

from __future__ import annotations

import itertools
import statistics
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet_changes import SheetChange, group_changes
from recordgen.hoof.export.sheet_errors import ErrorBasis, ReadingMethod, own_source_pattern, reading_method
from recordgen.hoof.measures.change import MeasureSummary
from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.reference import TRACING
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Keeping, VetEntry, Visit


@dataclass(frozen=True)
class SheetRow:
    """One measure: by foot its summary, how the latest reading was taken, and whether a change is told of any foot.

    otherwise: by foot the days of readings that were taken in another way than the latest one.
    """

    measure: Measure
    by_foot: dict[Foot, MeasureSummary]
    taken: dict[Foot, ReadingMethod]
    changed: bool
    otherwise: dict[Foot, frozenset[date]]

    @property
    def ways(self) -> tuple[str, ...]:
        """The ways in which the latest readings were taken, each once."""
        return tuple(dict.fromkeys(one.way for one in self.taken.values()))

    @property
    def with_tracings(self) -> bool:
        """Tell whether it stands with the tracings: a detail of theirs, or last known from them alone on every foot."""
        return self.measure.words.detail or all(TRACING in way for way in self.ways)

    @property
    def on_paper(self) -> bool:
        """Tell whether it has a line of the sheet.

        Of the details of tracings the headline ones have; of zones that were only traced, those of them beyond their
        error. Whatever is told to have changed has one, such as a flare that is no more.
        """
        words, zone = self.measure.words, self.measure.zone
        if self.changed or not self.with_tracings or (zone is None and not words.detail):
            return True
        beyond = (abs(one.latest) >= one.smallest_real_size for one in self.by_foot.values())
        return words.headline and (zone is None or any(beyond))

    @property
    def in_table(self) -> bool:
        """Tell whether it has a row of the table: of the wall's zones, only what is told to have changed."""
        return self.changed or self.measure.zone is None

    @property
    def errors(self) -> tuple[ErrorBasis, ...]:
        """The place where the errors of the latest readings come from, each once."""
        return tuple(dict.fromkeys(one.error for one in self.taken.values()))

    @property
    def sd(self) -> tuple[float, float]:
        """The least and the largest sd of one reading over the feet."""
        found = [one.sd for one in self.taken.values()]
        return min(found), max(found)

    @property
    def real_from(self) -> tuple[float, float]:
        """The least and the largest of the smallest real changes over the feet."""
        found = [one.smallest_real_change for one in self.by_foot.values()]
        return min(found), max(found)


@dataclass(frozen=True)
class VisitLine:
    """One visit: its number from the first on, its day, the days since the one before, and who recorded it."""

    number: int
    day: date
    days: int | None
    trimmed: bool
    by: str


@dataclass(frozen=True)
class Intervals:
    """The days between visits: their median, the fewest and the most."""

    middle: float
    least: int
    most: int


@dataclass(frozen=True)
class MeasuredFoot:
    """One respect in which the horse is kept (a field of `Keeping`), as last told, and on which day."""

    what: str
    words: str
    day: date


@dataclass(frozen=True)
class NotMeasured:
    """Parts that were not looked at.

    feet: at the last visit. not_after: the feet measured before its trim alone. last_time: the measures that were taken
    before and not at the last visit, each with those feet that were looked at then. never: the names of the measures
    that were never taken on any foot; computed ones are left out.
    """

    feet: tuple[Foot, ...]
    not_after: tuple[Foot, ...]
    last_time: tuple[tuple[Measure, tuple[Foot, ...]], ...]
    never: tuple[str, ...]


@dataclass(frozen=True)
class SheetPicture:
    """A photograph or a tracing for the sheet: its day, its words, and its address, which may be a data: one."""

    day: date
    words: str
    address: str


@dataclass(frozen=True)
class Sheet:
    """All that stands on the sheet of one horse. visits: newest first. vet: the entries, newest first.

    changed: what is known to have changed. found: by foot the latest record of it. amendments: day of the visit and
    what was amended later, None where nobody looked. pictures: photographs and tracings to show. own_source: a pattern
    of the source of a practice's own errors. why: why it is sent, in the sender's words; None where nobody said.
    """

    summary: HorseSummary
    stable: str
    practice: PracticeFile
    visits: tuple[VisitLine, ...]
    intervals: Intervals | None
    rows: tuple[SheetRow, ...]
    changed: tuple[SheetChange, ...]
    found: dict[Foot, FootVisit]
    vet: tuple[VetEntry, ...]
    keeping: tuple[MeasuredFoot, ...]
    not_measured: NotMeasured
    own_source: str
    amendments: tuple[tuple[date, str], ...] | None = None
    pictures: tuple[SheetPicture, ...] = ()
    why: str | None = None


def sheet_of(
    summary: HorseSummary,
    stable: Stable,
    ways: Context,
    amendments: Sequence[tuple[date, str]] | None = None,
    pictures: Sequence[SheetPicture] = (),
    why: str | None = None,
) -> Sheet:
    """The sheet of a horse.

    amendments: day of the visit and what was amended later, as the history of the records tells; None where that was
    not looked up, which the sheet says.
    """
    visits = [one.visit for one in summary.history[::-1]]
    ways, own = ways.with_rounding_of(visits), own_source_pattern(ways)
    lines = tuple(_lines(visits, ways.practice.trimmer))
    rows = tuple(_rows(summary, ways.measures, own))
    return Sheet(
        summary=summary,
        stable=stable.name,
        practice=ways.practice,
        visits=lines[::-1],
        intervals=_intervals([line.days for line in lines if line.days is not None]),
        rows=rows,
        changed=group_changes(summary, {row.measure.key: row.taken for row in rows}),
        found={foot: _looks(summary, foot)[0].found for foot in summary.feet},
        vet=tuple(sorted((entry for visit in visits for entry in visit.vet), key=lambda entry: entry.date))[::-1],
        keeping=tuple(_keeping(visits)),
        not_measured=_not_measured(summary, ways),
        own_source=own,
        amendments=None if amendments is None else tuple(amendments),
        pictures=tuple(pictures),
        why=why,
    )


def may_be_shared(horse: Horse) -> bool:
    """Tell whether somebody agreed, as the record says, that a vet may have it."""
    return bool(horse.consent and horse.consent.vet)


def _rows(summary: HorseSummary, measures: Sequence[Measure], own: str) -> Iterator[SheetRow]:
    changed = {one.of.measure.key for one in summary.changes.real}
    for measure in measures:
        found = {foot: one.measures[measure.key] for foot, one in summary.feet.items() if measure.key in one.measures}
        if found:
            looks = {foot: _look_of(summary, foot, one) for foot, one in found.items()}
            taken = {foot: reading_method(measure, looks[foot], one.moment, own) for foot, one in found.items()}
            otherwise = {foot: _otherwise(_looks(summary, foot), one) for foot, one in found.items()}
            yield SheetRow(measure, found, taken, measure.key in changed, otherwise)


def _otherwise(looks: Sequence[Look], one: MeasureSummary) -> frozenset[date]:
    """The days on which a measure was taken in another way than last. looks: at its foot, newest first."""
    ways = {look.day: look.way(one.measure, one.moment) for look in looks if look.has(one.measure, one.moment)}
    return frozenset(day for day, way in ways.items() if way != ways[max(ways)])


def _looks(summary: HorseSummary, foot: Foot) -> list[Look]:
    """The looks at a foot, newest first."""
    return [one.feet[foot].look for one in summary.history if foot in one.feet]


def _look_of(summary: HorseSummary, foot: Foot, one: MeasureSummary) -> Look:
    """The look at which a measure was last taken."""
    return next(look for look in _looks(summary, foot) if one.measure.key in look.readings)


def _lines(visits: Sequence[Visit], trimmer: str) -> Iterator[VisitLine]:
    before = itertools.chain([None], (visit.date for visit in visits))
    for number, (visit, then) in enumerate(zip(visits, before, strict=False), start=1):
        days = (visit.date - then).days if then else None
        yield VisitLine(number, visit.date, days, visit.trimmed, visit.by or trimmer)


def _intervals(days: Sequence[int]) -> Intervals | None:
    return Intervals(statistics.median(days), min(days), max(days)) if days else None


def _keeping(visits: Sequence[Visit]) -> Iterator[MeasuredFoot]:
    """Each respect as it was last told."""
    for what in Keeping.model_fields:
        told = (MeasuredFoot(what, getattr(visit.keeping, what, None) or "", visit.date) for visit in reversed(visits))
        yield from itertools.islice((one for one in told if one.words), 1)


def _not_measured(summary: HorseSummary, ways: Context) -> NotMeasured:
    feet = {gap.kind: gap.feet for gap in summary.gaps}
    taken = {measure.name for one in summary.feet.values() for measure in (s.measure for s in one.measures.values())}
    return NotMeasured(
        feet.get("feet_unseen", ()),
        feet.get("no_after", ()),
        tuple(_last_time(summary, ways.measures)),
        tuple(key for key, words in ways.reference.measures.items() if words.path and key not in taken),
    )


def _last_time(summary: HorseSummary, measures: Sequence[Measure]) -> Iterator[tuple[Measure, tuple[Foot, ...]]]:
    seen = [foot for foot in FEET if foot in summary.feet and summary.feet[foot].last_seen == summary.last_visit]
    for measure in measures:
        known = ((foot, summary.feet[foot].measures.get(measure.key)) for foot in seen)
        feet = tuple(foot for foot, one in known if one and one.day != summary.last_visit)
        if feet and not measure.parts:
            yield measure, feet

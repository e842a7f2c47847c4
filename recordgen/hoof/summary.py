"""One `HorseSummary` per horse: every computed number and sentence. Pages, pictures and commands read it."""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.age import CareClass, care_class, months_old
from recordgen.hoof.balance import PAIRS, PairDifference, pair_differences
from recordgen.hoof.care import Job, jobs_in_force
from recordgen.hoof.cautions import Caution, cautions
from recordgen.hoof.change import Look, MeasureSummary, Step, measure_summary
from recordgen.hoof.due import Due, due
from recordgen.hoof.findings import findings_of
from recordgen.hoof.gaps import Gap, gaps_of
from recordgen.hoof.growth import Growth, growth, growth_readings
from recordgen.hoof.measures import Measure, measures_of, readings_at
from recordgen.hoof.naming import Naming
from recordgen.hoof.series import Event, Finding, Reading
from recordgen.hoof.weight import weight_kg
from recordgen.records.foot import Landing
from recordgen.records.horse import Horse, PracticeFile, Stable
from recordgen.records.names import FEET, Foot
from recordgen.records.practice import HorseRecord, StableRecord
from recordgen.records.reference import Reference
from recordgen.records.visit import Visit


@dataclass(frozen=True)
class FootAtVisit:
    """One foot at one visit: what was recorded with its readings, and its findings."""

    look: Look
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class VisitSummary:
    """One visit, and each foot that was looked at."""

    visit: Visit
    feet: dict[Foot, FootAtVisit]


@dataclass(frozen=True)
class FootSummary:
    """One foot: its growth, its measures by key, and what was found when it was last looked at, on `last_seen`."""

    foot: Foot
    last_seen: date
    growth: Growth | None
    measures: dict[str, MeasureSummary]
    landing: Landing | None
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class Change:
    """A change that is worth telling; `step` holds since when, its size and whether it is real."""

    foot: Foot
    summary: MeasureSummary
    step: Step


@dataclass(frozen=True)
class HorseSummary:
    """Everything known and computed of one horse on the day `as_of`."""

    stable: str
    slug: str
    horse: Horse
    as_of: date
    age_months: int | None
    care_class: CareClass
    due: Due | None
    cautions: tuple[Caution, ...]
    jobs: tuple[Job, ...]
    feet: dict[Foot, FootSummary]
    pairs: tuple[PairDifference, ...]
    changes: tuple[Change, ...]
    long_changes: tuple[Change, ...]
    events: tuple[Event, ...]
    history: tuple[VisitSummary, ...]
    weight_kg: float | None
    gaps: tuple[Gap, ...]

    @property
    def last_visit(self) -> date | None:
        """The day of the last visit; None before the first."""
        return self.history[0].visit.date if self.history else None

    @property
    def days_since(self) -> int | None:
        """Days since the last visit."""
        return (self.as_of - self.last_visit).days if self.last_visit else None


@dataclass(frozen=True)
class StableSummary:
    """One stable and the summaries of its horses, by name."""

    slug: str
    stable: Stable
    horses: tuple[HorseSummary, ...]

    @property
    def present(self) -> tuple[HorseSummary, ...]:
        """The horses that have not left."""
        return tuple(horse for horse in self.horses if not horse.horse.left)


@dataclass(frozen=True)
class Ways:
    """What summaries are made with: the practice's file, the tables, the measures and the naming."""

    practice: PracticeFile
    reference: Reference
    measures: tuple[Measure, ...]
    naming: Naming

    @classmethod
    def of(cls, practice: PracticeFile, reference: Reference) -> Ways:
        """The ways of a practice."""
        return cls(practice, reference, measures_of(reference), Naming.of(practice, reference.phrases))


def summarise_stable(record: StableRecord, ways: Ways, today: date) -> StableSummary:
    """The summaries of a stable's horses on a day."""
    return StableSummary(record.slug, record.stable, tuple(summarise(horse, ways, today) for horse in record.horses))


def summarise(record: HorseRecord, ways: Ways, today: date) -> HorseSummary:
    """The summary of one horse on a day."""
    visits = record.visits
    window = due(record.horse, visits, ways.practice, ways.naming, today)
    history = tuple(_visit(visit, ways) for visit in visits)
    feet = _feet(history, ways)
    return HorseSummary(
        stable=record.stable,
        slug=record.slug,
        horse=record.horse,
        as_of=today,
        age_months=months_old(record.horse.born, today) if record.horse.born else None,
        care_class=care_class(record.horse, today),
        due=window,
        cautions=cautions(record.horse, visits, window, ways.reference.cautions, ways.naming, today),
        jobs=jobs_in_force(visits, ways.reference.care),
        feet=feet,
        pairs=_pairs(feet),
        changes=_changes(feet, visits),
        long_changes=_long_changes(feet, visits),
        events=_events(visits),
        history=history[::-1],
        weight_kg=_weight(record.horse, visits),
        gaps=gaps_of(record.horse, visits),
    )


def _visit(visit: Visit, ways: Ways) -> VisitSummary:
    methods = {**ways.practice.methods, **visit.methods}
    return VisitSummary(visit, {foot: _foot_at(foot, visit, methods, ways) for foot in FEET if foot in visit.feet})


def _foot_at(foot: Foot, visit: Visit, methods: dict[str, str], ways: Ways) -> FootAtVisit:
    found = visit.feet[foot]
    look = Look(visit.date, found, readings_at(ways.measures, found, visit.date), methods)
    return FootAtVisit(look, findings_of(foot, found, ways.naming))


def _feet(history: Sequence[VisitSummary], ways: Ways) -> dict[Foot, FootSummary]:
    seen = {foot: [one.feet[foot] for one in history if foot in one.feet] for foot in FEET}
    visits = [one.visit for one in history]
    return {foot: _foot(foot, times, growth_readings(foot, visits), ways) for foot, times in seen.items() if times}


def _foot(foot: Foot, times: Sequence[FootAtVisit], lengths: Sequence[Reading], ways: Ways) -> FootSummary:
    looks = [one.look for one in times]
    found = {measure.key: measure_summary(measure, looks) for measure in ways.measures}
    measures = {key: summary for key, summary in found.items() if summary}
    return FootSummary(foot, looks[-1].day, growth(lengths), measures, looks[-1].found.landing, times[-1].findings)


def _pairs(feet: dict[Foot, FootSummary]) -> tuple[PairDifference, ...]:
    latest: dict[Foot, dict[str, float]] = {foot: {} for foot in feet}
    for left, right in PAIRS.values():
        for key in _measured_together(feet, left, right):
            latest[left][key], latest[right][key] = feet[left].measures[key].latest, feet[right].measures[key].latest
    least: dict[str, float] = {}
    for one in feet.values():
        for key, summary in one.measures.items():
            least[key] = max(least.get(key, 0), summary.smallest_real_change)
    return pair_differences(latest, least)


def _measured_together(feet: dict[Foot, FootSummary], left: Foot, right: Foot) -> list[str]:
    if left not in feet or right not in feet:
        return []
    ours, theirs = feet[left].measures, feet[right].measures
    both = [key for key in ours if key in theirs]
    return [key for key in both if (ours[key].day, ours[key].moment) == (theirs[key].day, theirs[key].moment)]


def _changes(feet: dict[Foot, FootSummary], visits: Sequence[Visit]) -> tuple[Change, ...]:
    """What was measured at the last visit against the visit before, real or not; the largest against error first."""
    told = [Change(foot, summary, summary.last) for foot, summary in _told(feet, visits) if summary.last]
    return tuple(sorted(told, key=_by_size))


def _long_changes(feet: dict[Foot, FootSummary], visits: Sequence[Visit]) -> tuple[Change, ...]:
    """The same against half a year ago or the first visit, whichever shows the larger change; real ones alone."""
    found = []
    for foot, summary in _told(feet, visits):
        steps = [step for step in (summary.half_year, summary.first) if step and step.real]
        if steps:
            found.append(Change(foot, summary, max(steps, key=lambda step: step.against_error)))
    return tuple(sorted(found, key=_by_size))


def _told(feet: dict[Foot, FootSummary], visits: Sequence[Visit]) -> Iterator[tuple[Foot, MeasureSummary]]:
    for foot, one in feet.items():
        for summary in one.measures.values():
            if summary.measure.words.headline and summary.day == visits[-1].date:
                yield foot, summary


def _by_size(change: Change) -> float:
    return -change.step.against_error


def _events(visits: Sequence[Visit]) -> tuple[Event, ...]:
    found: list[Event] = []
    boots = None
    for visit in visits:
        if visit.keeping and visit.keeping.feed_change:
            found.append(Event(visit.date, "feed", visit.keeping.feed_change))
        if visit.keeping and visit.keeping.boots and visit.keeping.boots != boots:
            boots = visit.keeping.boots
            found.append(Event(visit.date, "boots", boots))
        found += [Event(entry.date, "vet", entry.words or entry.by) for entry in visit.vet if entry.kind == "seen"]
    return tuple(sorted(found, key=lambda event: (event.day, event.kind, event.text)))


def _weight(horse: Horse, visits: Sequence[Visit]) -> float | None:
    """From the last girth and length; None for donkeys, mules and foals, whom the formula does not fit."""
    for visit in reversed(visits):
        fits = horse.kind in ("horse", "pony") and care_class(horse, visit.date) == "adult"
        if fits and visit.condition and visit.condition.girth and visit.condition.length:
            return weight_kg(visit.condition.girth, visit.condition.length)
    return None

"""One `HorseSummary` per horse: every computed number and sentence. Pages, pictures and commands read it."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.age_class import care_class, months_old
from recordgen.hoof.care.advice import care_advice
from recordgen.hoof.care.checks import care_checks
from recordgen.hoof.care.jobs import Job, jobs_in_force
from recordgen.hoof.care.withheld import Withheld, withheld_of
from recordgen.hoof.cautions.cautions import Caution, ClosedCaution, compute_caution_book
from recordgen.hoof.cautions.checks import resolved_before_raised, resolved_never_raised, resolved_without_a_vet
from recordgen.hoof.cautions.timeline import Timeline
from recordgen.hoof.claims.claims import Claim
from recordgen.hoof.context import Context
from recordgen.hoof.due import Due, due
from recordgen.hoof.growth.forecasts import Forecast, PastForecasts
from recordgen.hoof.growth.growing_out import GrowingOut, growing_out
from recordgen.hoof.growth.growth import Cycles, FootGrowth, HorseGrowth, cycles_of, grown_mm
from recordgen.hoof.measures.aims import AimAtFoot, aims_at_feet
from recordgen.hoof.measures.balance import PAIRS, PairDifference
from recordgen.hoof.measures.change import MeasureSummary, measure_summary
from recordgen.hoof.measures.changes import Changes, FootMeasure, changes_of, pairs_of
from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.measures import readings_at
from recordgen.hoof.measures.published_classes import ClassFindings, published_classes
from recordgen.hoof.missing import Gap, gaps_of
from recordgen.hoof.observations import Event, Finding, events_of, findings_of
from recordgen.hoof.remarks import Remark, care_remarks, growth_remarks, next_remarks, tracing_remarks
from recordgen.hoof.scales import Grade, grades_by_scale
from recordgen.hoof.tracing.figures import Traced, traced
from recordgen.hoof.tracing.readings import fill_readings
from recordgen.hoof.trim_held import held_by
from recordgen.hoof.weight import Weight, sole_area_cm2, weight_of, weight_over_area
from recordgen.records.models.foot import Landing
from recordgen.records.models.horse import Horse, Shared
from recordgen.records.models.names import FEET, CareClass, Foot
from recordgen.records.models.practice import HorseRecord, StableRecord
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit

# Forecasts of about a year are looked back at.
LAST_FORECASTS = 8


@dataclass(frozen=True)
class FootAtVisit:
    """One foot at one visit: what was recorded with its readings, its findings, and what was traced."""

    look: Look
    findings: tuple[Finding, ...]
    traced: tuple[Traced, ...]


@dataclass(frozen=True)
class VisitSummary:
    """One visit, and each foot that was looked at."""

    visit: Visit
    feet: dict[Foot, FootAtVisit]


@dataclass(frozen=True)
class FootSummary:
    """One foot: its growth, marks on their way down, its measures by key, and what was found on the day `last_seen`."""

    foot: Foot
    last_seen: date
    growth: FootGrowth
    growing_out: tuple[GrowingOut, ...]
    measures: dict[str, MeasureSummary]
    landing: Landing | None
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class HorseSummary:
    """Everything known and computed of one horse on the day `as_of`.

    held: the open cautions because of which nothing is trimmed. jobs: those in force that may be done. withheld: those
    that may not stand beside an open caution.
    """

    stable: str
    slug: str
    horse: Horse
    as_of: date
    age_months: int | None
    care_class: CareClass
    due: Due | None
    growth: HorseGrowth
    past_forecasts: PastForecasts
    aims: tuple[AimAtFoot, ...]
    cautions: tuple[Caution, ...]
    held: tuple[Caution, ...]
    closed_cautions: tuple[ClosedCaution, ...]
    jobs: tuple[Job, ...]
    withheld: tuple[Withheld, ...]
    feet: dict[Foot, FootSummary]
    pairs: tuple[PairDifference, ...]
    changes: Changes
    events: tuple[Event, ...]
    history: tuple[VisitSummary, ...]
    weight: Weight | None
    load_kg_per_cm2: float | None
    published: tuple[ClassFindings, ...]
    grades: dict[str, tuple[Grade, ...]]
    gaps: tuple[Gap, ...]
    remarks: tuple[Remark, ...]
    shared: tuple[Shared, ...]

    def change_of(self, foot: Foot, key: str) -> Claim[FootMeasure] | None:
        """The claim or remark of the page of one measure of a foot; None where nothing."""
        claims = (*self.changes.real, *self.changes.maybe)
        return next((one for one in claims if (one.of.foot, one.of.measure.key) == (foot, key)), None)

    @property
    def visit_days(self) -> tuple[date, ...]:
        """The days of all visits, the last one first."""
        return tuple(one.visit.date for one in self.history)

    @property
    def last_visit(self) -> date | None:
        """The day of the last visit; None before the first."""
        return self.visit_days[0] if self.visit_days else None

    @property
    def last_findings(self) -> tuple[Finding, ...]:
        """The findings of the last visit."""
        last = [foot for foot in self.feet.values() if foot.last_seen == self.last_visit]
        return tuple(one for foot in last for one in foot.findings)

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


def last_visits(horses: Iterable[HorseSummary]) -> dict[tuple[str, str], date]:
    """The day of each horse's last visit, by the folders of its stable and of the horse."""
    return {(horse.stable, horse.slug): horse.last_visit for horse in horses if horse.last_visit}


def summarise_stable(record: StableRecord, ways: Context, today: date) -> StableSummary:
    """The summaries of a stable's horses on a day."""
    return StableSummary(record.slug, record.stable, tuple(summarise(horse, ways, today) for horse in record.horses))


def summarise(record: HorseRecord, ways: Context, today: date) -> HorseSummary:
    """The summary of one horse on a day."""
    horse, visits = record.horse, tuple(record.visits)
    ways = ways.with_rounding_of(visits)
    history = tuple(_visit(visit, ways) for visit in visits)
    past = _Past(horse, visits, history, ways)
    growth = _growth(horse, past.cycles, ways, today)
    window = due(horse, visits, past.findings_at(len(visits) - 1), growth, ways, today)
    feet = _feet(past, growth, today)
    weight = weight_of(horse, visits)
    measures = {foot: one.measures for foot, one in feet.items()}
    looks = {foot: [one.feet[foot].look for one in history if foot in one.feet] for foot in feet}
    load, pairs = _load(weight, feet), pairs_of(looks, ways.measures)
    timeline = Timeline(horse, visits, ways)
    book = compute_caution_book(timeline, window, today)
    in_force = jobs_in_force(visits, ways.reference.care)
    withheld = withheld_of(in_force, book.open)
    return HorseSummary(
        stable=record.stable,
        slug=record.slug,
        horse=horse,
        as_of=today,
        age_months=months_old(horse.born.first, today) if horse.born else None,
        care_class=care_class(horse, today),
        due=window,
        growth=growth,
        past_forecasts=past.past_forecasts(),
        aims=aims_at_feet(horse.aims, measures, looks),
        cautions=book.open,
        held=held_by(horse, visits, book.open, today),
        closed_cautions=book.closed,
        jobs=tuple(job for job in in_force if job not in [one.job for one in withheld]),
        withheld=withheld,
        feet=feet,
        pairs=pairs,
        changes=changes_of(looks, ways.measures),
        events=events_of(visits),
        history=history[::-1],
        weight=weight,
        load_kg_per_cm2=load,
        published=published_classes(ways.reference.published, horse.kind, measures, pairs, load),
        grades=grades_by_scale(visits),
        gaps=gaps_of(record, ways.reference.classes),
        shared=record.shared,
        remarks=tuple(_remarks(timeline, growth, in_force, withheld, book.open, today)),
    )


def compute_remarks(record: HorseRecord, ways: Context, today: date) -> tuple[Remark, ...]:
    """The remarks of one horse's summary, without computing the rest of it."""
    horse, visits = record.horse, tuple(record.visits)
    ways = ways.with_rounding_of(visits)
    growth = _growth(horse, cycles_of(visits), ways, today)
    timeline = Timeline(horse, visits, ways)
    opened = compute_caution_book(timeline, None, today).open
    in_force = jobs_in_force(visits, ways.reference.care)
    return tuple(_remarks(timeline, growth, in_force, withheld_of(in_force, opened), opened, today))


def _remarks(
    timeline: Timeline,
    growth: HorseGrowth,
    in_force: Sequence[Job],
    withheld: Sequence[Withheld],
    opened: Sequence[Caution],
    today: date,
) -> Iterator[Remark]:
    horse, visits, ways = timeline.horse, timeline.visits, timeline.ways
    yield from growth_remarks(growth, visits, ways.naming)
    yield from tracing_remarks(visits, ways)
    yield from resolved_before_raised(timeline)
    yield from resolved_never_raised(timeline)
    yield from resolved_without_a_vet(timeline)
    yield from next_remarks(horse, visits, ways)
    yield from care_remarks(care_advice(horse, visits, ways, opened, today), visits)
    yield from care_checks(horse, visits, in_force, withheld, opened, ways)


def _growth(horse: Horse, cycles: Cycles, ways: Context, day: date) -> HorseGrowth:
    """Knowledge of a horse's growth on a day."""
    known = {foot: one.until(day) for foot, one in cycles.items()}
    return HorseGrowth.of(known, ways.group(care_class(horse, day)), ways.toe_reading_sd_mm)


class _Past:
    """Knowledge of a horse on the days of its visits."""

    def __init__(self, horse: Horse, visits: Sequence[Visit], history: Sequence[VisitSummary], ways: Context) -> None:
        self.horse = horse
        self.visits = visits
        self.history = history
        self.ways = ways
        self.cycles = cycles_of(visits)
        self._growths: dict[date, HorseGrowth] = {}

    def growth(self, day: date) -> HorseGrowth:
        """Knowledge of its growth on the day of a visit."""
        if day not in self._growths:
            self._growths[day] = _growth(self.horse, self.cycles, self.ways, day)
        return self._growths[day]

    def findings_at(self, count: int) -> list[Finding]:
        """Findings of the visit of that number; nothing before the first."""
        return [one for at in self.history[count].feet.values() for one in at.findings] if count >= 0 else []

    def past_forecasts(self) -> PastForecasts:
        """Forecasts of the visits of about the last year, and what came."""
        there = self.horse.model_copy(update={"left": None})
        made = []
        for count in range(max(0, len(self.visits) - 1 - LAST_FORECASTS), len(self.visits) - 1):
            day, came = self.visits[count].date, self.visits[count + 1].date
            growth = self.growth(day)
            told = due(there, self.visits[: count + 1], self.findings_at(count), growth, self.ways, day)
            if told and came > day:
                grown = grown_mm(self.cycles, day, came)
                made.append(Forecast(day, told.best, came, growth.expected_mm(day, came), grown))
        return PastForecasts(tuple(made))


def _visit(visit: Visit, ways: Context) -> VisitSummary:
    methods = {**ways.practice.methods, **visit.methods}
    return VisitSummary(visit, {foot: _foot_at(foot, visit, methods, ways) for foot in FEET if foot in visit.feet})


def _foot_at(foot: Foot, visit: Visit, methods: dict[str, str], ways: Context) -> FootAtVisit:
    found = visit.feet[foot]
    pictures = traced(found, ways.hand_error, ways.reckon, ways.hand_times)
    also = fill_readings(ways.measures, found, pictures)
    readings = readings_at(ways.measures, found, visit.date, also.values)
    return FootAtVisit(
        Look(visit.date, found, readings, methods, also.sds), findings_of(foot, found, ways.naming), pictures
    )


def _feet(past: _Past, growth: HorseGrowth, today: date) -> dict[Foot, FootSummary]:
    seen = {foot: [one.feet[foot] for one in past.history if foot in one.feet] for foot in FEET}
    return {foot: _foot(foot, times, past, growth, today) for foot, times in seen.items() if times}


def _foot(foot: Foot, times: Sequence[FootAtVisit], past: _Past, growth: HorseGrowth, today: date) -> FootSummary:
    looks = [one.look for one in times]
    found = {measure.key: measure_summary(measure, looks) for measure in past.ways.measures}
    measures = {key: summary for key, summary in found.items() if summary}
    out = growing_out(foot, past.visits, growth.by_mark(foot), lambda day: past.growth(day).by_mark(foot), today)
    return FootSummary(
        foot, looks[-1].day, growth.feet[foot], out, measures, looks[-1].found.landing, times[-1].findings
    )


def _load(weight: Weight | None, feet: dict[Foot, FootSummary]) -> float | None:
    """The whole weight over the area of the smallest fore foot whose sole was measured, kg to the cm2."""
    soles = [feet[foot].measures for foot in PAIRS["fore"] if foot in feet]
    areas = [
        sole_area_cm2(sole["sole_length"].latest, sole["sole_width"].latest)
        for sole in soles
        if {"sole_length", "sole_width"} <= set(sole)
    ]
    return weight_over_area(weight.kg, min(areas)) if weight and areas else None

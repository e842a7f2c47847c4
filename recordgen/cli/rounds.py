"""recordgen rounds."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.options import DayType, exit_on_trouble, json_option, print_json, records_option, today_option
from recordgen.cli.places import stable_option
from recordgen.cli.terminal import echo
from recordgen.sentences import say, sentences

if TYPE_CHECKING:
    from recordgen.hoof.cautions.cautions import Caution
    from recordgen.hoof.context import Context
    from recordgen.hoof.naming import Naming
    from recordgen.hoof.rounds.rounds import Calendar, Plan, Wish
    from recordgen.hoof.summary import HorseSummary, StableSummary

_DAY = DayType()


class _DaysType(click.ParamType):  # type: ignore[type-arg]
    """A day, or days from one to another: 2026-12-24 to 2027-01-02."""

    name = "days"

    def convert(self, value: Any, param: click.Parameter | None, ctx: click.Context | None) -> list[dt.date]:
        """Each of the days a text means."""
        first, to, last = (part.strip() for part in str(value).partition(" to "))
        begin, end = (_DAY.convert(part, param, ctx) for part in (first, last if to else first))
        if end < begin:
            self.fail(say("'{value}' ends before it begins; write the earlier day first", value=value), param, ctx)
        return [dt.date.fromordinal(day) for day in range(begin.toordinal(), end.toordinal() + 1)]


@dataclass(frozen=True)
class _Planned:
    """A plan, and what is needed to tell it: the stables it is for, their names, and what all is told with."""

    plan: Plan
    calendar: Calendar
    stables: Sequence[StableSummary]
    ways: Context
    records: Path

    @property
    def names(self) -> dict[str, str]:
        """The name of each stable, by its folder."""
        return {one.slug: one.stable.name for one in self.stables}

    @property
    def unvisited(self) -> list[HorseSummary]:
        """The horses that were never visited, so that nothing is due."""
        return [horse for one in self.stables for horse in one.present if horse.last_visit is None]

    @property
    def held(self) -> list[HorseSummary]:
        """The horses that are due and not planned, since nothing is trimmed until the vet agrees."""
        return [horse for one in self.stables for horse in one.present if horse.held and horse.due]

    @property
    def with_cautions(self) -> list[HorseSummary]:
        """The horses of which a caution is open."""
        return [horse for one in self.stables for horse in one.present if horse.cautions]


@click.command("rounds")
@records_option
@today_option
@json_option
@stable_option("Plan this stable alone, as if it had the calendar to itself.")
@click.option("--from", "start", type=_DAY, help="No round before this day; else from today on.")
@click.option(
    "--skip", type=_DaysType(), multiple=True, help="No round on this day, or 2026-12-01 to 2026-12-05. Again for more."
)
@click.option(
    "--calendar",
    "folder",
    type=click.Path(path_type=Path, file_okay=False),
    help="Write rounds.ics and a file for each stable here; with --stable, that stable's alone.",
)
def command(
    records: Path,
    today: dt.date,
    as_json: bool,
    stable: str | None,
    start: dt.date | None,
    skip: tuple[list[dt.date], ...],
    folder: Path | None,
) -> None:
    """Plan the fewest rounds: which day to go where, so that each horse is visited inside its window.

    \b
        recordgen rounds
        recordgen rounds --from 2026-12-01 --skip "2026-12-14 to 2026-12-18"
        recordgen rounds --calendar ../my-calendar

    A round is a day at one stable, or at stables near each other. What days hold stands in practice.yaml.
    """
    with exit_on_trouble():
        if folder:
            from recordgen.private.sharing.output_folder import fit_place

            fit_place(folder, records, "--calendar ../calendar")
        planned = _plan(records, today, stable, start or today, frozenset(day for days in skip for day in days))
        if as_json:
            print_json(_plain(planned))
        else:
            for line in _plan_lines(planned):
                echo(line)
        if folder:
            for line in _write_calendars(planned, folder, today, stable):
                echo(line, err=as_json)


def _plan(records: Path, today: dt.date, only: str | None, start: dt.date, skipped: frozenset[dt.date]) -> _Planned:
    from recordgen.hoof.rounds.rounds import Calendar, plan_of
    from recordgen.hoof.summary import summarise_stable
    from recordgen.records.load.everything import read_whole
    from recordgen.site.context import ways_of

    whole = read_whole(records, today, only)
    ways = ways_of(whole)
    stables = [summarise_stable(one, ways, today) for one in whole.practice.stables]
    calendar = Calendar.of(ways, start, skipped)
    return _Planned(plan_of(stables, calendar), calendar, stables, ways, records)


def _plan_lines(planned: _Planned) -> Iterator[str]:
    from recordgen.hoof.rounds.rounds import describe_plan, explain_unmet

    plan, naming, names = planned.plan, planned.ways.naming, planned.names
    yield from _table(planned)
    if plan.unmet:
        yield naming.phrase("rounds_unmet")
        for one in plan.unmet:
            horse = _horse_at(one.wish.name, names[one.wish.stable], naming)
            yield sentences(f"  {horse}: {explain_unmet(one, naming)}")
    yield from _held(planned)
    yield from _caution_lines(planned)
    if planned.unvisited:
        unvisited = [_horse_at(one.horse.name, names[one.stable], naming) for one in planned.unvisited]
        yield sentences(naming.phrase("rounds_unvisited", horses=naming.listed(unvisited)))
    yield sentences(describe_plan(plan, naming))


def _held(planned: _Planned) -> Iterator[str]:
    naming = planned.ways.naming
    if planned.held:
        yield naming.phrase("rounds_no_trim")
    for horse in planned.held:
        seen = " ".join(dict.fromkeys(caution.seen for caution in horse.held))
        yield f"  {_horse_at(horse.horse.name, planned.names[horse.stable], naming)}: {seen}"


def _caution_lines(planned: _Planned) -> Iterator[str]:
    from recordgen.hoof.cautions.typed_names import names_to_type

    naming = planned.ways.naming
    if planned.with_cautions:
        yield naming.phrase("rounds_open")
    for horse in planned.with_cautions:
        named = "; ".join(names_to_type(horse.cautions, naming))
        yield f"  {_horse_at(horse.horse.name, planned.names[horse.stable], naming)}: {named}"


def _horse_at(horse: str, stable: str, naming: Naming) -> str:
    return naming.phrase("rounds_horse_at", horse=horse, stable=stable)


def _table(planned: _Planned) -> Iterator[str]:
    naming, most = planned.ways.naming, str(planned.calendar.horses_a_day)
    rows = [
        (
            _describe_day(one.day, planned.ways),
            ", ".join(planned.names[stable] for stable in one.stables),
            naming.phrase("rounds_held", count=str(len(one.wishes)), most=most),
            ", ".join(wish.name for wish in one.wishes),
        )
        for one in planned.plan.rounds
    ]
    wide = [max(map(len, column)) for column in zip(*rows, strict=True)]
    for row in rows:
        yield "  ".join(text.ljust(width) for text, width in zip(row, wide, strict=True)).rstrip()


def _describe_day(day: dt.date, ways: Context) -> str:
    told, name = ways.naming.language.weekday_day(day), ways.public.name(day)
    return ways.naming.phrase("rounds_on_holiday", day=told, name=name) if name else told


def _plain(planned: _Planned) -> dict[str, Any]:
    plan = planned.plan
    return {
        "from": planned.calendar.start.isoformat(),
        "horses_a_day": planned.calendar.horses_a_day,
        "rounds": [
            {"day": one.day.isoformat(), "stables": list(one.stables), "horses": [_horse(wish) for wish in one.wishes]}
            for one in plan.rounds
        ],
        "unmet": [
            {**_horse(one.wish), "why": one.why, "placed": one.placed and one.placed.isoformat()} for one in plan.unmet
        ],
        "no_visit_yet": [_names_of(horse) for horse in planned.unvisited],
        "no_trim": [_with_cautions(horse, horse.held) for horse in planned.held],
        "cautions": [_with_cautions(horse, horse.cautions) for horse in planned.with_cautions],
        "fewest": plan.fewest,
        "gap": plan.gap,
    }


def _names_of(horse: HorseSummary) -> dict[str, str]:
    return {"stable": horse.stable, "horse": horse.slug, "name": horse.horse.name}


def _with_cautions(horse: HorseSummary, cautions: Sequence[Caution]) -> dict[str, Any]:
    told = [{"rule": one.rule, "level": one.level, "foot": one.foot, "seen": one.seen} for one in cautions]
    return {**_names_of(horse), "cautions": told}


def _horse(wish: Wish) -> dict[str, str]:
    days = {"earliest": wish.earliest, "best": wish.best, "latest": wish.latest}
    told = {name: day.isoformat() for name, day in days.items()}
    return {"stable": wish.stable, "horse": wish.horse, "name": wish.name, **told}


def _write_calendars(planned: _Planned, folder: Path, today: dt.date, only: str | None) -> Iterator[str]:
    from recordgen.files import refuse_other, write_whole, writing
    from recordgen.site.calendar import is_calendar

    files = {folder / f"{name}.ics": content for name, content in _calendars(planned, today, only).items()}
    for path in files:
        refuse_other(path, is_calendar, say("calendar"))
    for path, content in files.items():
        if content:
            with writing(path, say("The calendars before it are written")):
                folder.mkdir(parents=True, exist_ok=True)
                write_whole(path, content, mode=0o600)
            yield f"{path}"
        elif path.exists():
            path.unlink()
            yield sentences(planned.ways.naming.phrase("rounds_taken_away", file=str(path)))


def _calendars(planned: _Planned, today: dt.date, only: str | None) -> dict[str, bytes]:
    """The content of each calendar file by its name; empty where nothing is planned."""
    from recordgen.hoof.summary import last_visits
    from recordgen.records.history.earlier_names import find_first_places
    from recordgen.site.calendar import PlannedDays, rounds_calendar, stable_calendar

    visited = last_visits(horse for one in planned.stables for horse in one.present)
    first = find_first_places(planned.records, visited)
    days = PlannedDays(planned.plan, planned.names, planned.ways, today, visited, first)
    files = {slug: stable_calendar(days, slug) for slug in planned.names}
    if only:
        return files
    return {"rounds": rounds_calendar(days), **files}

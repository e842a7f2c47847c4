"""Checks that a single file cannot make from its own form: dates against the file's name, the day, and each other."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Sequence

from recordgen.problems import Problem, warning
from recordgen.records.checks.sizes import ANY, Animal
from recordgen.records.checks.tracings import tracing_problems
from recordgen.records.models.horse import Horse
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written
from recordgen.sentences import say

Check = Callable[[Written[Visit], dt.date], Iterator[Problem]]


def visit_problems(visit: Written[Visit], day_in_name: str, today: dt.date, animal: Animal = ANY) -> Iterator[Problem]:
    """Everything wrong or unlikely about one visit beyond the form of its values.

    day_in_name: the day its file is named by. today: no visit is later. animal: whose feet.
    """
    yield from _day(visit, day_in_name, today)
    yield from tracing_problems(visit, animal)
    for check in VISIT_CHECKS:
        yield from check(visit, today)


def horse_problems(horse: Written[Horse], visits: Sequence[Written[Visit]], today: dt.date) -> Iterator[Problem]:
    """Everything wrong or unlikely about a horse's file, and between it and the visits."""
    yield from _days_of_horse(horse, today)
    for visit in visits:
        yield from _visit_in_its_life(horse.record, visit)
    yield from _next_beyond_plan(horse, visits)


def _days_of_horse(horse: Written[Horse], today: dt.date) -> Iterator[Problem]:
    record = horse.record
    for name, day in (("born", record.born and record.born.first), *_dated(record)):
        if day and day > today:
            steps = (name,) if name == "born" else (name, "date")
            yield Problem(
                horse.place(*steps),
                "horse-date-future",
                say("{steps}: {day} is in the future", steps=", ".join(steps), day=day),
                say("Correct the date"),
            )
    if record.born and record.left and record.left.date < record.born.first:
        message = say("the horse left ({date}) before it was born ({born})", date=record.left.date, born=record.born)
        yield Problem(horse.place("left", "date"), "horse-left-before-birth", message, say("Correct one of the two"))


def _dated(record: Horse) -> Iterator[tuple[str, dt.date]]:
    parts = (("left", record.left), ("consent", record.consent), ("vet_plan", record.vet_plan))
    yield from ((name, part.date) for name, part in parts if part)


def _visit_in_its_life(horse: Horse, visit: Written[Visit]) -> Iterator[Problem]:
    day = visit.record.date
    if horse.born and day < horse.born.first:
        message = say("the visit is before the horse was born ({born})", born=horse.born)
        yield Problem(visit.place("date"), "visit-before-birth", message, say("Correct one of the two"))
    if horse.left and day > horse.left.date:
        message = say("the visit is after the horse left ({date})", date=horse.left.date)
        yield warning(visit.place("date"), "visit-after-leaving", message, say("Look at both dates"))


def _next_beyond_plan(horse: Written[Horse], visits: Sequence[Written[Visit]]) -> Iterator[Problem]:
    plan = horse.record.vet_plan
    last = max(visits, key=lambda visit: visit.record.date, default=None)
    if plan is None or plan.weeks is None or last is None or last.record.next is None:
        return
    if last.record.date < plan.date or (plan.until and plan.until < last.record.date):
        return
    weeks = last.record.next.weeks
    if weeks and weeks > plan.weeks:
        message = say(
            "next visit in {weeks:g} weeks, but the vet's plan says {most:g} at the most",
            weeks=weeks,
            most=plan.weeks,
        )
        yield warning(last.place("next", "weeks"), "next-beyond-vet-plan", message, say("Ask the vet, or shorten it"))


def _day(visit: Written[Visit], day_in_name: str, today: dt.date) -> Iterator[Problem]:
    day = visit.record.date
    if day.isoformat() != day_in_name:
        message = say("the date is {day}, but the file is named {day_in_name}", day=day, day_in_name=day_in_name)
        yield Problem(visit.place("date"), "visit-date-not-file-name", message, say("Correct one of the two"))
    if day > today:
        message = say("the date {day} is in the future", day=day)
        yield Problem(visit.place("date"), "visit-date-future", message, say("Correct the date, or wait for the visit"))


def _after_without_trim(visit: Written[Visit], today: dt.date) -> Iterator[Problem]:
    for foot, found in visit.record.feet.items():
        if found.after and not visit.record.trimmed:
            message = say("{foot} has measures after a trim, but the visit says trimmed: no", foot=foot)
            yield Problem(
                visit.place("feet", foot, "after"),
                "after-without-trim",
                message,
                say("Take out trimmed: no, or the measures after"),
            )


def _days_inside(visit: Written[Visit], today: dt.date) -> Iterator[Problem]:
    days = [(("vet", index, "date"), entry.date) for index, entry in enumerate(visit.record.vet)]
    days += [(("resolved", index, "date"), entry.date) for index, entry in enumerate(visit.record.resolved)]
    for steps, day in days:
        if day > today:
            yield Problem(
                visit.place(*steps),
                "entry-date-future",
                say("the date {day} is in the future", day=day),
                say("Correct the date"),
            )


def _next_day(visit: Written[Visit], today: dt.date) -> Iterator[Problem]:
    planned = visit.record.next.date if visit.record.next else None
    if planned is None:
        return
    if planned <= visit.record.date:
        message = say("the next visit ({planned}) is not after this one", planned=planned)
        yield Problem(visit.place("next", "date"), "next-not-after-visit", message, say("Correct the date"))
    elif planned - visit.record.date > dt.timedelta(weeks=52):
        message = say("the next visit ({planned}) is more than 52 weeks after this one", planned=planned)
        yield Problem(visit.place("next", "date"), "next-too-far", message, say("Correct the date, or leave next out"))


def _nothing_recorded(visit: Written[Visit], today: dt.date) -> Iterator[Problem]:
    if not visit.whole or visit.record.feet:
        return
    if visit.record.is_blank:
        message = say("nothing is filled in yet, so this is not counted as a visit")
        yield warning(visit.place("date"), "visit-not-filled-in", message, say("Fill it in, or delete the file"))
    else:
        message = say("no foot is recorded in this visit")
        yield warning(
            visit.place("date"), "visit-without-feet", message, say("Add feet:, or leave it if none was looked at")
        )


VISIT_CHECKS: tuple[Check, ...] = (
    _after_without_trim,
    _days_inside,
    _next_day,
    _nothing_recorded,
)

"""Calendar files: their words and days, updated by a newer file, and silent about other stables."""

from __future__ import annotations

import hashlib
from dataclasses import replace
from datetime import date, timedelta

import pytest
from icalendar.cal import Component

from recordgen.hoof.context import Context
from recordgen.hoof.rounds.rounds import Plan, Round, Wish
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.site.calendar import PlannedDays, due_calendar, rounds_calendar, stable_calendar
from tests.conftest import TODAY
from tests.support.calendars import (
    FIRST,
    LAST,
    NAMES,
    PLAN,
    SECOND,
    WEEK,
    A,
    B,
    C,
    D,
    components,
    content_lines,
    demo,
    events,
    said,
    wish,
)


@pytest.fixture
def ways() -> Context:
    """The ways of the demo practice."""
    return demo().ways


@pytest.fixture
def willowmere() -> StableSummary:
    """A stable of the demo practice."""
    return demo().stables[0]


def test_same_input_same_bytes(ways: Context) -> None:
    """Nothing in a file comes from a clock or from chance."""
    first, second = (rounds_calendar(PlannedDays(PLAN, NAMES, ways, TODAY, LAST)) for _ in range(2))

    assert first == second


def test_an_event_is_known_again_by_later_versions(ways: Context) -> None:
    """A UID is what it always was; another way of making it would double every event in people's calendars."""
    visit = events(stable_calendar(PlannedDays(PLAN, NAMES, ways, TODAY, LAST), "yard"))[0]
    told = "visit\0yard\0a\x002026-10-20"

    assert visit["uid"] == hashlib.sha256(told.encode()).hexdigest()[:32] + "@recordgen.invalid"


def test_an_event_stays_the_same_though_its_folders_are_renamed(ways: Context, willowmere: StableSummary) -> None:
    """By where the horse's folder lay first, so that nobody's calendar holds the visit twice."""
    before = due_calendar(willowmere, ways, TODAY)
    renamed = tuple(replace(horse, stable="mere", slug=f"old-{horse.slug}") for horse in willowmere.horses)
    first = {("mere", f"old-{horse.slug}"): f"willowmere/{horse.slug}" for horse in willowmere.horses}
    after = due_calendar(replace(willowmere, slug="mere", horses=renamed), ways, TODAY, first)

    assert [event["uid"] for event in events(after)] == [event["uid"] for event in events(before)]


def test_the_name_of_the_calendar(ways: Context) -> None:
    """The trimmer's is named by the practice. Source: RFC 7986, section 5.1."""
    calendar = dict(components(rounds_calendar(PlannedDays(PLAN, NAMES, ways, TODAY, LAST)))[0])

    assert calendar["NAME"] == calendar["X-WR-CALNAME"] == f"Rounds of {ways.practice.name}"


def test_a_round_tells_stables_horses_and_windows(ways: Context) -> None:
    """The day is named by its stables; under each stand its horses, with a word where the day is outside the window."""
    late = wish("barn", "a", "Otter", date(2026, 11, 17))
    exact = Wish("mill", "a", "Moss", date(2026, 12, 1), date(2026, 12, 1), date(2026, 12, 1))
    early = wish("mill", "b", "Pim", date(2026, 12, 9))
    one = Round(date(2026, 12, 1), ("barn", "mill"), (late, exact, early))
    file = rounds_calendar(PlannedDays(Plan((one,), (), 1), {"barn": "Barn", "mill": "Mill"}, ways, TODAY, LAST))

    assert said(file, "SUMMARY") == ["Barn and Mill"]
    assert said(file, "DESCRIPTION")[0].split("\n") == [
        "Barn",
        "Otter: 10 November to 24 November 2026, best on 17 November; this day is later",
        "",
        "Mill",
        "Moss: 1 December 2026",
        "Pim: 2 December to 16 December 2026, best on 9 December; this day is earlier",
    ]


def test_a_planned_visit_tells_its_window(ways: Context) -> None:
    """The owner reads that the day is a proposal, and the window it was chosen from."""
    file = stable_calendar(PlannedDays(PLAN, {"yard": "Yard"}, ways, TODAY, LAST), "yard")

    assert [event.decoded("dtstart") for event in events(file)] == [date(2026, 12, 8)]
    assert said(file, "DESCRIPTION")[0].split("\n") == [
        f"A proposal, not yet agreed with {ways.practice.trimmer}.",
        "The window for this visit: 1 December to 15 December 2026, best on 8 December.",
    ]


@pytest.mark.parametrize(("days", "how"), [(-8, "earlier"), (8, "later")])
def test_a_day_outside_the_window_is_told(ways: Context, days: int, how: str) -> None:
    """Where no day inside was to be had, the owner reads on which side of the window the day lies."""
    plan = Plan((Round(D.best + timedelta(days=days), ("yard",), (D,)),), (), 1)
    file = stable_calendar(PlannedDays(plan, NAMES, ways, TODAY, LAST), "yard")

    assert said(file, "DESCRIPTION")[0].endswith(f"\nThis day is {how} than the window.")


def test_a_stables_file_holds_no_word_of_another(ways: Context) -> None:
    """Neither names nor folders of others stand in it; the trimmer's file holds the names, so the search can find."""
    names = {"mill": "Mill", "barn": "Oldbarn", "yard": "Farmyard"}
    rounds = [
        replace(FIRST, wishes=(replace(C, name="Dunlin"), A)),
        replace(SECOND, wishes=(B, replace(D, name="Pim"))),
    ]
    planned = PlannedDays(Plan(tuple(rounds), (), 2), names, ways, TODAY, LAST)
    own = "".join(content_lines(stable_calendar(planned, "mill")))
    all_of_them = "".join(content_lines(rounds_calendar(planned)))
    foreign = ["Oldbarn", "Farmyard", "Dunlin", "Pim"]

    assert [word for word in [*foreign, "barn", "yard"] if word in own] == []
    assert [word for word in foreign if word not in all_of_them] == []


def take_in(calendar: dict[str, Component], file: bytes) -> None:
    """Take a file in as a calendar program does: by UID, a lower sequence number never replacing a higher one.

    Source: RFC 5546, section 2.1.5.
    """
    for event in events(file):
        known = calendar.get(str(event["uid"]))
        if known is None or int(event.decoded("sequence")) >= int(known.decoded("sequence")):
            calendar[str(event["uid"])] = event


def moved(plan: Plan, by: timedelta) -> Plan:
    """The plan with every round and window later."""
    wishes = [
        [replace(w, earliest=w.earliest + by, best=w.best + by, latest=w.latest + by) for w in one.wishes]
        for one in plan.rounds
    ]
    days = [replace(one, day=one.day + by, wishes=tuple(w)) for one, w in zip(plan.rounds, wishes, strict=True)]
    return replace(plan, rounds=tuple(days))


@pytest.mark.parametrize("order", [(0, 1), (1, 0)], ids=["in order", "the older one last"])
def test_a_newer_file_moves_the_events(ways: Context, order: tuple[int, int]) -> None:
    """Two files a week apart leave one event for each horse, on the later day, in whatever order they came."""
    older = stable_calendar(PlannedDays(PLAN, NAMES, ways, TODAY, LAST), "mill")
    newer = stable_calendar(PlannedDays(moved(PLAN, timedelta(days=3)), NAMES, ways, TODAY + WEEK, LAST), "mill")
    calendar: dict[str, Component] = {}
    for which in order:
        take_in(calendar, (older, newer)[which])

    assert sorted(event.decoded("dtstart") for event in calendar.values()) == [date(2026, 12, 4), date(2026, 12, 11)]


def test_a_newer_file_moves_the_rounds(ways: Context) -> None:
    """A round stays the same event on another day and with one more horse, as long as the same horse leads it."""
    joined = moved(replace(PLAN, rounds=(replace(FIRST, wishes=(C, A, B)), replace(SECOND, wishes=(D,)))), WEEK)
    calendar: dict[str, Component] = {}
    take_in(calendar, rounds_calendar(PlannedDays(PLAN, NAMES, ways, TODAY, LAST)))
    take_in(calendar, rounds_calendar(PlannedDays(joined, NAMES, ways, TODAY + WEEK, LAST)))

    assert date(2026, 12, 8) in {event.decoded("dtstart") for event in calendar.values()}
    assert date(2026, 12, 1) not in {event.decoded("dtstart") for event in calendar.values()}


def test_the_horse_whose_window_ends_first_leads_a_round(ways: Context) -> None:
    """Others may join and leave it, be their best day or their stable's name the first, and it stays the same."""
    joining = Wish("ash", "c", "Sedge", date(2026, 11, 16), date(2026, 11, 20), date(2026, 12, 24))
    wider = replace(FIRST, stables=("ash", *FIRST.stables), wishes=(joining, C, A))
    last = LAST | {("ash", "c"): date(2026, 10, 6)}
    plans = [Plan((one,), (), 1) for one in (FIRST, replace(FIRST, stables=("barn",), wishes=(C,)), wider)]
    files = [rounds_calendar(PlannedDays(plan, NAMES | {"ash": "Ash"}, ways, TODAY, last)) for plan in plans]

    assert len({str(event["uid"]) for file in files for event in events(file)}) == 1


@pytest.mark.parametrize(("days", "number"), [(-1, 0), (0, 0), (1, 1), (60, 60)])
def test_the_sequence_number_never_falls(ways: Context, days: int, number: int) -> None:
    """It counts the days since the last visit, and nothing is below 0. Source: RFC 5545, section 3.8.7.4."""
    file = stable_calendar(PlannedDays(PLAN, NAMES, ways, LAST["yard", "a"] + timedelta(days=days), LAST), "yard")

    assert [event["sequence"] for event in events(file)] == [number]


def test_the_next_visit_is_another_event(ways: Context) -> None:
    """Once a horse was visited, its next visit is an event of its own, and the past one stays in the calendar."""
    visited = LAST | {("yard", "a"): date(2026, 12, 8)}
    before, after = (
        events(stable_calendar(PlannedDays(PLAN, NAMES, ways, TODAY, last), "yard"))[0] for last in (LAST, visited)
    )

    assert before["uid"] != after["uid"]


def test_without_an_event_there_is_no_file(ways: Context, willowmere: StableSummary) -> None:
    """A calendar without a component is not one. Source: RFC 5545, section 3.6."""
    assert rounds_calendar(PlannedDays(Plan((), (), 0), NAMES, ways, TODAY, LAST)) == b""
    assert stable_calendar(PlannedDays(PLAN, {"fold": "Fold"}, ways, TODAY, LAST), "fold") == b""
    assert due_calendar(replace(willowmere, horses=()), ways, TODAY) == b""


def due_horse(stable: StableSummary, best: date, overdue: int = 0) -> HorseSummary:
    """A horse of the stable whose window is a week before and after its best day."""
    one = stable.present[0]
    assert one.due is not None
    due = replace(one.due, earliest=best - WEEK, best=best, latest=best + WEEK)
    return replace(one, due=replace(due, reason="The dry summer.", overdue_days=overdue))


def test_a_due_horse_stands_on_its_best_day(ways: Context, willowmere: StableSummary) -> None:
    """With its window and the reason, closed by one full stop."""
    file = due_calendar(replace(willowmere, horses=(due_horse(willowmere, date(2027, 1, 2)),)), ways, TODAY)

    assert [event.decoded("dtstart") for event in events(file)] == [date(2027, 1, 2)]
    assert said(file, "DESCRIPTION")[0].split("\n") == [
        "The window for this visit: 26 December to 9 January 2027, best on 2 January.",
        "Why: The dry summer.",
    ]


def test_due_horses_stand_by_day(ways: Context, willowmere: StableSummary) -> None:
    """The file is in the order of the days, whatever the names."""
    days = [date(2026, 12, 20), date(2026, 12, 1), date(2026, 12, 9)]
    horses = tuple(replace(due_horse(willowmere, day), slug=f"h{number}") for number, day in enumerate(days))
    file = due_calendar(replace(willowmere, horses=horses), ways, TODAY)

    assert [event.decoded("dtstart") for event in events(file)] == sorted(days)


def test_an_overdue_horse_stays_on_its_day(ways: Context, willowmere: StableSummary) -> None:
    """The day is not moved to today; the words tell by when it was due."""
    horse = due_horse(willowmere, date(2026, 11, 10), overdue=8)
    file = due_calendar(replace(willowmere, horses=(horse,)), ways, TODAY)

    assert [event.decoded("dtstart") for event in events(file)] == [date(2026, 11, 10)]
    assert said(file, "DESCRIPTION")[0].endswith("\nIt was due by 17 November 2026.")


def test_only_present_horses_with_a_window_are_due(ways: Context, willowmere: StableSummary) -> None:
    """A horse that was never visited or has left is in no file."""
    horse = due_horse(willowmere, date(2026, 12, 1))
    left = horse.horse.model_copy(update={"left": horse.horse.left or "sold"})
    horses = (replace(horse, due=None), replace(horse, horse=left), horse)

    assert len(events(due_calendar(replace(willowmere, horses=horses), ways, TODAY))) == 1


def test_a_planned_visit_is_the_same_event_as_the_due_one(ways: Context, willowmere: StableSummary) -> None:
    """Owners who took in the site's file see the event move to the planned day."""
    horse = due_horse(willowmere, date(2026, 12, 1))
    asked = wish(horse.stable, horse.slug, "Bramble", date(2026, 12, 1))
    plan = Plan((Round(date(2026, 12, 3), (horse.stable,), (asked,)),), (), 1)
    assert horse.last_visit is not None
    last = {(horse.stable, horse.slug): horse.last_visit}
    calendar: dict[str, Component] = {}
    take_in(calendar, due_calendar(replace(willowmere, horses=(horse,)), ways, TODAY))
    take_in(calendar, stable_calendar(PlannedDays(plan, {horse.stable: "x"}, ways, TODAY, last), horse.stable))

    assert [event.decoded("dtstart") for event in calendar.values()] == [date(2026, 12, 3)]

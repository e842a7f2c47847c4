"""Days for a calendar program, as iCalendar: the trimmer's rounds, a stable's planned visits, and when visits are due.

Every event is a proposal for a whole day and keeps its UID while its day moves, so that taking in a newer file moves
it. The files carry no METHOD: they are snapshots, and nobody is invited to anything. METHOD:PUBLISH would need an
organizer's address in each event, which a practice need not have.
Sources: RFC 5545, sections 3.6.1 and 3.7.2; RFC 5546, section 3.2.1.
"""

from __future__ import annotations

import hashlib
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import UTC, date, datetime, time, timedelta
from typing import TYPE_CHECKING, Literal

from icalendar import Calendar, Event, vText

from recordgen.hoof.context import Context
from recordgen.hoof.due import Due
from recordgen.hoof.naming import Naming
from recordgen.hoof.rounds.rounds import explain_held
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.sentences import sentences

if TYPE_CHECKING:
    from recordgen.hoof.rounds.rounds import Plan, Round, Wish

# The day of each horse's last visit, by the folders of its stable and of the horse.
LastVisits = Mapping[tuple[str, str], date]
# Where the folder of each horse lay first, as stable/horse, by the folders of today: what it is known by for good.
FirstPlaces = Mapping[tuple[str, str], str]
# Each horse is known by its folder of today.
NONE_MOVED: FirstPlaces = {}

PRODUCT = "-//recordgen//Days of visits//EN"
# A name that no host will ever have. Source: RFC 2606, section 2.
DOMAIN = "recordgen.invalid"
# What no value may hold: controls but the tab and the line's end, which is escaped (RFC 5545, section 3.1). The
# controls above ASCII and lone surrogates mean nothing in a calendar either.
_CONTROLS = dict.fromkeys([*(set(range(32)) - {9, 10}), *range(0x7F, 0xA0), *range(0xD800, 0xE000)])


@dataclass(frozen=True)
class _Anchor:
    """The identity of an event, wherever its day moves: a horse's next visit, or the round that this horse leads."""

    what: Literal["visit", "round"]
    first_place: str
    last_visit: date

    @classmethod
    def of(
        cls, what: Literal["visit", "round"], stable: str, horse: str, last_visit: date, first: FirstPlaces
    ) -> _Anchor:
        """The identity of an event of a horse by the folders of today."""
        return cls(what, first.get((stable, horse), f"{stable}/{horse}"), last_visit)

    def uid(self) -> str:
        """One for each event, with nothing to read in it. Source: RFC 7986, section 5.3."""
        told = "\0".join((self.what, *self.first_place.split("/"), self.last_visit.isoformat()))
        return f"{hashlib.sha256(told.encode()).hexdigest()[:32]}@{DOMAIN}"


@dataclass(frozen=True)
class _Day:
    """One event: what it is, on which day, and its words."""

    anchor: _Anchor
    day: date
    summary: str
    lines: Sequence[str]


@dataclass(frozen=True)
class PlannedDays:
    """A plan, and what its files tell of it.

    names: of the stables, by folder. first: by it an event stays the same though a folder is renamed.
    """

    plan: Plan
    names: Mapping[str, str]
    ways: Context
    today: date
    last_visits: LastVisits
    first: FirstPlaces = field(default_factory=dict)

    def anchor(self, what: Literal["visit", "round"], wish: Wish) -> _Anchor:
        """The identity of the visit that a horse waits for, or of the round that it leads."""
        return _Anchor.of(what, wish.stable, wish.horse, self.last_visits[wish.stable, wish.horse], self.first)


def rounds_calendar(planned: PlannedDays) -> bytes:
    """The trimmer's file: a day for each round with its stables, their horses and windows; b"" without a round.

    The horse whose window ends first leads a round: as long as it leads one and waits for the same visit, the event
    stays the same on another day.
    Raises KeyError for a stable without a name or a horse without a last visit.
    """
    days = [_round(one, planned) for one in planned.plan.rounds]
    ways = planned.ways
    return _file(ways.naming.phrase("calendar_rounds", practice=ways.practice.name), days, planned.today)


def stable_calendar(planned: PlannedDays, slug: str) -> bytes:
    """The owners' file of one stable: for each horse the day its visit is planned; b"" without one.

    It holds no word of another stable. Errors as with `rounds_calendar`.
    """
    rounds = planned.plan.rounds
    days = [_planned_day(one.day, wish, planned) for one in rounds for wish in one.wishes if wish.stable == slug]
    return _file(planned.ways.naming.phrase("calendar_stable", stable=planned.names[slug]), days, planned.today)


def due_calendar(stable: StableSummary, ways: Context, today: date, first: FirstPlaces = NONE_MOVED) -> bytes:
    """The file on a stable's own site: for each present horse the best day of its window; b"" without one.

    An overdue horse stays on its best day, and its words say by when it was due: a day that moved on with every build
    would look like an appointment. A horse's event is the same as in `stable_calendar`.
    """
    days = [day for horse in stable.present if (day := _due(horse, ways.naming, first))]
    in_order = sorted(days, key=lambda one: (one.day, one.summary))
    return _file(ways.naming.phrase("calendar_stable", stable=stable.stable.name), in_order, today)


def horse_calendar(horse: HorseSummary, ways: Context, today: date, first: FirstPlaces = NONE_MOVED) -> bytes:
    """The file of one horse, b"" without a day; its event is that of `due_calendar`, so that both double none."""
    day = _due(horse, ways.naming, first)
    return _file(ways.naming.phrase("calendar_due", horse=horse.horse.name), [day] if day else [], today)


def is_calendar(content: bytes) -> bool:
    """Tell whether a file is a calendar that was written here."""
    return f"PRODID:{PRODUCT}".encode() in content[:1000]


def _round(one: Round, planned: PlannedDays) -> _Day:
    names, naming = planned.names, planned.ways.naming
    leader = min(one.wishes, key=lambda wish: (wish.latest, wish.stable, wish.horse))
    lines: list[str] = []
    for stable in one.stables:
        horses = [_horse(wish, one.day, naming) for wish in one.wishes if wish.stable == stable]
        lines += [*([""] if lines else []), names[stable], *horses]
    summary = naming.listed([names[stable] for stable in one.stables])
    return _Day(planned.anchor("round", leader), one.day, summary, lines)


def _horse(wish: Wish, day: date, naming: Naming) -> str:
    facts = {"horse": wish.name, "window": _window(wish, naming)}
    if how := _outside(wish, day, naming):
        return naming.phrase("calendar_horse_outside", how=how, **facts)
    return naming.phrase("calendar_horse", **facts)


def _outside(wish: Wish, day: date, naming: Naming) -> str:
    """Earlier or later, for a day that a plan gave for want of one inside the window; empty inside."""
    if wish.earliest <= day <= wish.latest:
        return ""
    return naming.phrase("calendar_early" if day < wish.earliest else "calendar_late")


def _planned_day(day: date, wish: Wish, planned: PlannedDays) -> _Day:
    naming = planned.ways.naming
    how = _outside(wish, day, naming)
    lines = [
        naming.phrase("calendar_proposed", trimmer=planned.ways.practice.trimmer),
        naming.phrase("calendar_window_of", window=_window(wish, naming)),
        *([naming.phrase("calendar_outside", how=how)] if how else []),
    ]
    summary = naming.phrase("calendar_planned", horse=wish.name)
    return _Day(planned.anchor("visit", wish), day, summary, [sentences(line) for line in lines])


def _due(horse: HorseSummary, naming: Naming, first: FirstPlaces) -> _Day | None:
    due, last = horse.due, horse.last_visit
    if due is None or last is None:
        return None
    lines = [
        naming.phrase("calendar_window_of", window=_window(due, naming)),
        naming.phrase("calendar_reason", reason=due.reason),
        *([naming.phrase("due_holiday", name=due.holiday)] if due.holiday else []),
        *([naming.phrase("calendar_overdue", latest=naming.day(due.latest))] if due.overdue_days else []),
        *([explain_held(horse, naming).rstrip(".")] if horse.held else []),
    ]
    anchor = _Anchor.of("visit", horse.stable, horse.slug, last, first)
    summary = naming.phrase("calendar_due", horse=horse.horse.name)
    return _Day(anchor, due.best, summary, [sentences(line) for line in lines])


def _window(span: Due | Wish, naming: Naming) -> str:
    if span.earliest == span.latest:
        return naming.day(span.best)
    near = naming.language.month_day
    days = {"earliest": near(span.earliest), "latest": naming.day(span.latest), "best": near(span.best)}
    return naming.phrase("calendar_window", **days)


def _file(name: str, days: Sequence[_Day], today: date) -> bytes:
    """The bytes of a calendar; none without an event, since a calendar holds one at least (RFC 5545, section 3.6)."""
    if not days:
        return b""
    calendar = Calendar()
    calendar.add("prodid", PRODUCT)
    calendar.add("version", "2.0")
    # The name of the standard (RFC 7986, section 5.1), and the one that programs older than it read.
    calendar.add("name", _text(name))
    calendar.add("x-wr-calname", _text(name))
    for day in days:
        calendar.add_component(_event(day, today))
    written: bytes = calendar.to_ical()
    return written


def _event(day: _Day, today: date) -> Event:
    """One whole day, which ends where the next begins.

    Its sequence number counts the days since the last visit: it rises from file to file without a memory of the last.
    """
    event = Event()
    event.add("uid", day.anchor.uid())
    event.add("dtstamp", datetime.combine(today, time(), UTC))
    event.add("sequence", max(0, (today - day.anchor.last_visit).days))
    event.add("dtstart", day.day)
    event.add("dtend", day.day + timedelta(days=1))
    event.add("summary", _text(day.summary))
    event.add("description", _text("\n".join(day.lines)))
    event.add("status", "TENTATIVE")
    event.add("transp", "TRANSPARENT")
    return event


def _text(words: str) -> vText:
    """Words to be escaped whatever the property; every end of a line becomes a plain one, other controls go."""
    return vText("\n".join(words.splitlines()).translate(_CONTROLS))

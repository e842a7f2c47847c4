"""Small practices to plan rounds for, made from days after a start."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

from recordgen.hoof.rounds.rounds import Calendar, Plan, Wish, plan_rounds

# A Monday; every day is a working day unless a test says otherwise.
START = date(2026, 12, 7)
EVERY_DAY = ("mon", "tue", "wed", "thu", "fri", "sat", "sun")
WORKING_DAYS = EVERY_DAY[:5]


def day(number: int) -> date:
    """The day so many days after the start."""
    return START + timedelta(days=number)


def wish(horse: str, first: int, last: int, best: int | None = None, stable: str = "mill") -> Wish:
    """A horse whose window is these days after the start; the best in the middle unless given."""
    best = (first + last) // 2 if best is None else best
    return Wish(stable, horse.lower(), horse, day(first), day(best), day(last))


def calendar(**values: Any) -> Calendar:
    """A calendar of every day from the start, with `values` over it."""
    usual = {"weekdays": EVERY_DAY, "holidays": (), "skipped": frozenset(), "horses_a_day": 8, "leeway_days": 7}
    return Calendar(**{**usual, "start": START, **values})


def plan(*wishes: Wish, near: dict[str, Sequence[str]] | None = None, **values: Any) -> Plan:
    """The plan for these horses."""
    return plan_rounds(wishes, near or {}, calendar(**values))


def days_of(found: Plan) -> dict[int, str]:
    """The horses of each round, by days after the start, as one text."""
    return {(one.day - START).days: " ".join(wish.name for wish in one.wishes) for one in found.rounds}


def unmet(found: Plan) -> list[tuple[str, str, int | None]]:
    """Tell who cannot be met: name, why, and the day instead."""
    return [(one.wish.name, one.why, (one.placed - START).days if one.placed else None) for one in found.unmet]

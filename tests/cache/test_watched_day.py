"""A watched day answers as the plain one does, and what was asked of it is the same on all the days it names."""

from __future__ import annotations

import copy
import pickle
from collections.abc import Callable
from datetime import date, timedelta

import pytest

from recordgen.cache.watched_day import AlikeDays, WatchedDay, plain_day

DAY = date(2026, 11, 25)
OTHER_DAYS = [DAY + timedelta(days=days) for days in range(-400, 400)]
# Made of the class, or the same for every day.
ASKS_NOTHING = {"__new__", "__doc__", "__getattribute__", "max", "min", "resolution", "today"}
ASKS_NOTHING |= {"fromisocalendar", "fromisoformat", "fromordinal", "fromtimestamp"}

QUESTIONS: dict[str, Callable[[date], object]] = {
    "before": lambda day: day < date(2026, 12, 3),
    "not before": lambda day: day < date(2026, 11, 3),
    "by": lambda day: day <= DAY,
    "after": lambda day: day > date(2026, 10, 1),
    "from": lambda day: day >= DAY,
    "the same": lambda day: day == DAY,
    "another": lambda day: day != date(2026, 12, 1),
    "held by the other day": lambda day: date(2026, 12, 3) > day,
    "equal to it": lambda day: date(2026, 12, 3) == day,
    "the later of two": lambda day: max(day, date(2026, 12, 3)),
    "as one of some": lambda day: day in (date(2026, 12, 1), date(2026, 12, 2)),
    "in a pair": lambda day: (day, 1) < (date(2026, 12, 3), 0),
    "year": lambda day: day.year,
    "month": lambda day: (day.year, day.month),
    "day": lambda day: day.day,
    "days since": lambda day: day - date(2026, 10, 1),
    "days until": lambda day: (date(2026, 12, 24) - day).days,
    "a week on": lambda day: day + timedelta(days=7),
    "a week on, said first": lambda day: timedelta(days=7) + day,
    "as text": lambda day: f"{day}",
    "as a key": lambda day: {DAY: "here"}.get(day),
    "packed": lambda day: pickle.loads(pickle.dumps(day)),
    "copied": copy.copy,
    "weekday": lambda day: day.weekday(),
}


@pytest.mark.parametrize("question", QUESTIONS)
def test_the_answer_is_the_same_on_all_days_named(question: str) -> None:
    """The very one of a plain day, on the day and on each of those; nothing is said of the others."""
    ask, watched = QUESTIONS[question], WatchedDay.of(DAY)
    answer = ask(watched)

    assert answer == ask(DAY)
    assert DAY in watched.alike
    assert {day for day in OTHER_DAYS if day in watched.alike and ask(day) != answer} == set()


def test_comparisons_let_it_stand() -> None:
    """Until the first of them turns."""
    watched = WatchedDay.of(DAY)
    assert (watched > date(2026, 10, 1), watched < date(2026, 12, 3), watched == date(2026, 12, 2)) == (1, 1, 0)

    assert watched.alike == AlikeDays(date(2026, 10, 2), date(2026, 12, 1))


def test_every_way_to_look_at_a_day_is_noticed() -> None:
    """Whatever a day of Python's has and this class does not define would tell the day unseen."""
    assert set(vars(date)) - set(vars(WatchedDay)) == ASKS_NOTHING - set(vars(WatchedDay))


def test_nothing_asked_stands_always() -> None:
    """A look at the plain day is not noted: it is for what is not kept."""
    watched = WatchedDay.of(DAY)

    assert (plain_day(watched), type(plain_day(watched)), plain_day(DAY)) == (DAY, date, DAY)
    assert watched.alike == AlikeDays()

"""Plans to write calendar files from, and a reader of those files that knows the standard and not the library."""

from __future__ import annotations

import re
from datetime import date, timedelta
from functools import cache

from icalendar import Calendar
from icalendar.cal import Component

from recordgen.hoof.rounds.rounds import Plan, Round, Wish
from recordgen.records.load.everything import read_whole
from recordgen.site.build_context import BuildContext
from tests.conftest import RECORDS, TODAY

TRICKY = "Ruth; Tobias, \\ and\nBramble"
LONG = "Grünes Øre på 小川 ☃ 🐴" * 12
HOSTILE = "Otter\r\nBEGIN:VALARM\x00\x07\x0bATTACH:a\x85ATTACH:b\u2028ATTACH:c\x7f\ud800"
NAMES = {"mill": TRICKY, "barn": LONG, "yard": HOSTILE}
WEEK = timedelta(days=7)
LAST = {("mill", "a"): date(2026, 10, 20), ("mill", "b"): date(2026, 10, 27), ("barn", "a"): date(2026, 10, 13)}
LAST |= {("yard", "a"): date(2026, 10, 20)}


def wish(stable: str, horse: str, name: str, best: date) -> Wish:
    """A wish whose window is a week before and after its best day."""
    return Wish(stable, horse, name, best - WEEK, best, best + WEEK)


A = wish("mill", "a", TRICKY, date(2026, 12, 1))
B = wish("mill", "b", LONG, date(2026, 12, 8))
C = wish("barn", "a", HOSTILE, date(2026, 11, 24))
D = wish("yard", "a", "Pim", date(2026, 12, 8))
FIRST, SECOND = Round(date(2026, 12, 1), ("barn", "mill"), (C, A)), Round(date(2026, 12, 8), ("mill", "yard"), (B, D))
PLAN = Plan((FIRST, SECOND), (), 2)


@cache
def demo() -> BuildContext:
    """One stable of the demo practice, read and summarised."""
    return BuildContext.of(read_whole(RECORDS, TODAY, "willowmere"), TODAY, None)


def content_lines(file: bytes) -> list[str]:
    """The unfolded lines. Source: RFC 5545, section 3.1."""
    return file.decode("utf-8").replace("\r\n ", "").removesuffix("\r\n").split("\r\n")


def components(file: bytes) -> list[list[tuple[str, str]]]:
    """The properties, name with parameters and raw value, of the calendar itself and then of each event."""
    found: list[list[tuple[str, str]]] = []
    for line in content_lines(file):
        name, _, value = line.partition(":")
        if name == "BEGIN":
            found.append([])
        elif name != "END":
            found[-1].append((name, value))
    return found


def events(file: bytes) -> list[Component]:
    """The events as the library reads them back."""
    return Calendar.from_ical(file).walk("VEVENT")


def said(file: bytes, name: str) -> list[str]:
    """A text of each event, unescaped in one pass. Source: RFC 5545, section 3.3.11."""
    raw = [dict(event)[name] for event in components(file)[1:]]
    return [re.sub(r"\\(.)", lambda found: "\n" if found[1] in "nN" else found[1], value) for value in raw]

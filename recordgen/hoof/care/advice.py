"""Suggestions to the trimmer: what the last visit recorded and no care note in force is about.

They are for the trimmer alone. Nothing is put before an owner that the trimmer did not choose.
"""

from __future__ import annotations

from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.age_class import care_class
from recordgen.hoof.care.climate import is_in_season, whose_months
from recordgen.hoof.care.signs import SIGNS, Sign, Stands
from recordgen.hoof.cautions.cautions import Caution
from recordgen.hoof.cautions.not_while import against
from recordgen.hoof.context import Context
from recordgen.hoof.naming import Naming
from recordgen.records.models.care_in_force import care_in_force
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import Foot
from recordgen.records.models.reference import CareReason, CareSeason
from recordgen.records.models.visit import Visit

YEAR = timedelta(days=365)
# What comes again with the months: the reason, the months, and the signs that were recorded within a year.
AGAIN: tuple[tuple[CareReason, CareSeason, tuple[CareReason, ...]], ...] = (
    ("wet months", "wet", ("infection of the frog", "deep groove")),
    ("dry months", "dry", ("crack", "chip")),
)


@dataclass(frozen=True)
class Advice:
    """A care note that the trimmer might consider, and what it may be a help with.

    note: its key in the library. day: of the visit that recorded the reason. foot: None for the whole horse. steps:
    where it stands in that visit's record, such as feet, left_fore, frog, central_groove_depth; none where it is not
    of the record. text: a line for the trimmer, without a full stop.
    """

    reason: CareReason
    note: str
    day: date
    foot: Foot | None
    steps: Stands
    text: str


@dataclass(frozen=True)
class _Reason:
    """A reason that holds, the visit and the sign that tell it, and the line for it, with {note} to be filled in."""

    reason: CareReason
    day: date
    sign: Sign
    phrase: str
    facts: dict[str, str]


def care_advice(
    horse: Horse, visits: Sequence[Visit], ways: Context, opened: Sequence[Caution], today: date
) -> tuple[Advice, ...]:
    """The care notes to consider after the last visit, one a reason; none for a horse that has left.

    visits: oldest first. opened: the open cautions. A reason is met by any note in force, or suggested already, that
    suits it. Words that were written for the horse may be about anything, so while they are in force nothing is
    suggested; nor is a note out of its months, or one that may not stand beside an open caution. Of several notes that
    suit, it is the first of the library.
    """
    library = ways.reference.care
    in_force = [one.note.what for one in care_in_force(visits, library)]
    if horse.left or not visits or any(note not in library for note in in_force):
        return ()
    met = {reason for note in in_force for reason in library[note].suits}
    found = []
    for one in _reasons(horse, visits, ways, today):
        note = None if one.reason in met else _first_that_suits(one.reason, ways, opened, today)
        if note:
            met |= {*library[note].suits}
            text = ways.naming.phrase(one.phrase, **one.facts, note=note)
            found.append(Advice(one.reason, note, one.day, one.sign.foot, one.sign.steps, text))
    return tuple(found)


def _first_that_suits(reason: CareReason, ways: Context, opened: Sequence[Caution], today: date) -> str | None:
    for key, words in ways.reference.care.items():
        timely = words.season is None or is_in_season(words.season, ways.practice, today)
        if reason in words.suits and timely and not against(words.not_while, opened):
            return key
    return None


def _reasons(horse: Horse, visits: Sequence[Visit], ways: Context, today: date) -> Iterator[_Reason]:
    last = visits[-1]
    for reason in SIGNS:
        sign = next(SIGNS[reason](last), None)
        if sign:
            facts = {"what": _what(reason, sign, ways.naming), "day": ways.naming.day(last.date)}
            yield _Reason(reason, last.date, sign, "care_advice", facts)
    if care_class(horse, today) == "foal":
        yield _Reason("foal", last.date, Sign(None, ()), "care_advice_foal", {})
    yield from _recurring(visits, ways, today)


def _recurring(visits: Sequence[Visit], ways: Context, today: date) -> Iterator[_Reason]:
    """Records of the year before the last visit that come again with the months."""
    for reason, season, signs in AGAIN:
        if not is_in_season(season, ways.practice, today):
            continue
        before = [visit for visit in visits[:-1] if today <= visit.date + YEAR]
        seen = ((one, visit, sign) for visit in reversed(before) for one in signs for sign in SIGNS[one](visit))
        found = next(seen, None)
        if found:
            one, visit, sign = found
            whose = ways.naming.phrase(f"care_months_{whose_months(season, ways.practice)}")
            facts = {"what": _what(one, sign, ways.naming), "day": ways.naming.day(visit.date), "whose": whose}
            yield _Reason(reason, visit.date, sign, f"care_advice_{season}", facts)


def _what(reason: CareReason, sign: Sign, naming: Naming) -> str:
    what = naming.phrase(f"care_reason_{reason.replace(' ', '_')}")
    return naming.phrase("care_reason_of", what=what, foot=naming.foot(sign.foot)) if sign.foot else what

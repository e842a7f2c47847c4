"""Tell which care notes are in force: each stays until a later visit names others, ends it, or was its last day."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass

from recordgen.records.models.reference import CareWords
from recordgen.records.models.visit import ALL, Care, Visit, alike

# How people write that a job ends at the next visit, whatever else may end it sooner.
_NEXT_VISIT = re.compile(r"(until )?((the|our|my|your) )?next visit\b", re.IGNORECASE)


@dataclass(frozen=True)
class CareInForce:
    """A care note in force, and the day since when it has been so without a break."""

    note: Care
    since: dt.date


def care_in_force(visits: Iterable[Visit], library: Mapping[str, CareWords]) -> tuple[CareInForce, ...]:
    """The care notes in force after the last visit, in the order the trimmer wrote them. visits: oldest first.

    A visit that names notes replaces the earlier ones; `care_ends` ends those it names, or all of them; a note that is
    until the next visit ends with the visit after it. A note that is named again goes on.
    """
    found: tuple[CareInForce, ...] = ()
    for visit in visits:
        found = tuple(one for one in found if not _ends(visit, one.note))
        if visit.care:
            since = {alike(one.note.what): one.since for one in found}
            found = tuple(CareInForce(note, since.get(alike(note.what), visit.date)) for note in visit.care)
        else:
            found = tuple(one for one in found if not until_next_visit(one.note, library))
    return found


def run_out(visits: Sequence[Visit], library: Mapping[str, CareWords]) -> tuple[CareInForce, ...]:
    """The care notes that ended with the last visit because they were until then, and nothing else was said of them."""
    if not visits or visits[-1].care:
        return ()
    before = care_in_force(visits[:-1], library)
    return tuple(one for one in before if until_next_visit(one.note, library) and not _ends(visits[-1], one.note))


def until_next_visit(note: Care, library: Mapping[str, CareWords]) -> bool:
    """Tell whether a note says, in its own words or the library's, that it ends at the next visit."""
    words = library.get(note.what)
    if words and not note.until and words.until_next_visit:
        return True
    until = note.until or (words.until if words else None)
    return bool(until and _NEXT_VISIT.match(until.strip()))


def _ends(visit: Visit, note: Care) -> bool:
    """Tell whether a visit says that a care note is over."""
    return bool({ALL, alike(note.what)} & {alike(name) for name in visit.care_ends})

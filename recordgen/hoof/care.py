"""Care notes in force: those of the latest visit that named any, from the library or written for the horse."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.records.reference import CareWords
from recordgen.records.visit import Care, Visit, care_giver


@dataclass(frozen=True)
class Job:
    """One thing to do until the next visit."""

    key: str
    what: str
    since: date
    why: str | None = None
    how_often: str | None = None
    until: str | None = None
    stop_if: str | None = None
    caution: str | None = None


def jobs_in_force(visits: Sequence[Visit], library: dict[str, CareWords]) -> tuple[Job, ...]:
    """The jobs in force after the last visit, in the order the trimmer wrote them.

    visits: oldest first.
    """
    giver = care_giver(visits)
    return tuple(_job(note, giver.date, library) for note in giver.care) if giver else ()


def _job(note: Care, since: date, library: dict[str, CareWords]) -> Job:
    words = library.get(note.what)
    if words is None:
        return Job("", note.what, since, note.why, note.how_often, note.until, note.stop_if)
    return Job(
        note.what,
        words.what,
        since,
        note.why or words.why,
        note.how_often or words.how_often,
        note.until or words.until,
        note.stop_if or words.stop_if,
        words.caution,
    )

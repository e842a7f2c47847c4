"""Care notes in force: those of the latest visit that named any, from the library or written for the horse."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.records.reference import CareWords
from recordgen.records.visit import Care, Visit


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

    visits: oldest first. A visit that names notes replaces the earlier ones; `care_ends` ends them all.
    """
    jobs: tuple[Job, ...] = ()
    for visit in visits:
        if visit.care_ends:
            jobs = ()
        if visit.care:
            jobs = tuple(_job(note, visit.date, library) for note in visit.care)
    return jobs


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

"""Care notes in force, from the library or written for the horse, and a week of them for the wall of the feed room."""

from __future__ import annotations

from collections.abc import Hashable, Iterable, Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Generic, TypeVar

from recordgen.records.models.care_in_force import CareInForce, care_in_force
from recordgen.records.models.reference import CareSeason, CareWords
from recordgen.records.models.visit import Visit

DAYS_A_WEEK = 7
# By how many times a week, the days that lie most evenly apart, 0 for Monday.
SPREAD = {
    1: (0,),
    2: (0, 3),
    3: (0, 2, 4),
    4: (0, 2, 4, 6),
    5: (0, 1, 3, 4, 6),
    6: (0, 1, 2, 3, 4, 5),
    7: (0, 1, 2, 3, 4, 5, 6),
}
# Stands in for whoever the jobs are for: a summary, a name.
Who = TypeVar("Who")


@dataclass(frozen=True)
class Job:
    """One thing to do until the next visit.

    key: of the library's note; empty where the trimmer's own words stand alone. since: the day from which it has been
    in force without a break. times_a_week: on how many days; None where that is not told. season: the months it is for.
    not_while: the cautions, by rule or level, beside which it may not stand.
    """

    key: str
    what: str
    since: date
    why: str | None = None
    how_often: str | None = None
    until: str | None = None
    stop_if: str | None = None
    caution: str | None = None
    times_a_week: int | None = None
    season: CareSeason | None = None
    not_while: tuple[str, ...] = ()

    @property
    def words(self) -> Hashable:
        """All that is told of it but since when: two horses with the same words have the same job."""
        return replace(self, since=date.min)


@dataclass(frozen=True)
class JobOfHorses(Generic[Who]):
    """One job and the horses it is for. days: on which days of a week it is done, Monday first; none where not told."""

    job: Job
    horses: tuple[Who, ...]
    days: tuple[int, ...] = ()


@dataclass(frozen=True)
class Week(Generic[Who]):
    """The jobs of a week: those with days of their own, and those that come up as their words say."""

    on_days: tuple[JobOfHorses[Who], ...]
    as_told: tuple[JobOfHorses[Who], ...]


def jobs_in_force(visits: Sequence[Visit], library: dict[str, CareWords]) -> tuple[Job, ...]:
    """The jobs in force after the last visit, in the order the trimmer wrote them.

    visits: oldest first. Each stays until a later visit names others, or ends it, or the visit until which it is.
    """
    return tuple(_job(one, library) for one in care_in_force(visits, library))


def _job(one: CareInForce, library: dict[str, CareWords]) -> Job:
    note, words = one.note, library.get(one.note.what)
    own = Job("", note.what, one.since, note.why, note.how_often, note.until, note.stop_if, None, note.times_a_week)
    if words is None:
        return own
    # The library's count of days goes with its words on how often.
    often = note.times_a_week if note.how_often else note.times_a_week or words.times_a_week
    return Job(
        key=note.what,
        what=words.what,
        since=one.since,
        why=note.why or words.why,
        how_often=note.how_often or words.how_often,
        until=note.until or words.until,
        stop_if=note.stop_if or words.stop_if,
        caution=words.caution,
        times_a_week=often,
        season=words.season,
        not_while=words.not_while,
    )


def jobs_of_horses(by_horse: Iterable[tuple[Who, Sequence[Job]]]) -> tuple[JobOfHorses[Who], ...]:
    """Each job once, with the horses it is for; those for most horses first, then by their words.

    by_horse: each horse with its jobs.
    """
    grouped: dict[Hashable, list[tuple[Job, Who]]] = {}
    for horse, jobs in by_horse:
        for job in dict.fromkeys(jobs):
            grouped.setdefault(job.words, []).append((job, horse))
    made = [JobOfHorses(pairs[0][0], tuple(horse for _, horse in pairs)) for pairs in grouped.values()]
    return tuple(sorted(made, key=lambda one: (-len(one.horses), one.job.what)))


def week_of_jobs(by_horse: Iterable[tuple[Who, Sequence[Job]]]) -> Week[Who]:
    """The jobs of a stable by the days of the week.

    A job has the same days for all its horses, spread as evenly as they go: three times a week is Monday, Wednesday and
    Friday. Where a day is full already, the whole job moves on to where the days are emptiest.
    """
    jobs = jobs_of_horses(by_horse)
    load = [0] * DAYS_A_WEEK
    placed = []
    for one in sorted(jobs, key=lambda one: -(one.job.times_a_week or 0)):
        if one.job.times_a_week:
            days = min(_ways_to_spread(one.job.times_a_week), key=lambda days: _fullest(load, days, len(one.horses)))
            for day in days:
                load[day] += len(one.horses)
            placed.append(replace(one, days=days))
    return Week(tuple(placed), tuple(one for one in jobs if not one.job.times_a_week))


def _ways_to_spread(times: int) -> list[tuple[int, ...]]:
    """The days of a job that is done so many times a week, beginning with each day in turn."""
    moved = ([(day + first) % DAYS_A_WEEK for day in SPREAD[times]] for first in range(DAYS_A_WEEK))
    return [tuple(sorted(days)) for days in moved]


def _fullest(load: Sequence[int], days: Sequence[int], more: int) -> tuple[int, int]:
    """Tell how full the fullest day and the job's own days would be."""
    after = [full + more if day in days else full for day, full in enumerate(load)]
    return max(after), sum(after[day] for day in days)

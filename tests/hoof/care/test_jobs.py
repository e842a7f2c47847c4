"""Which care notes are in force, and how they go into a week."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.care.jobs import Job, JobOfHorses, Week, jobs_in_force, jobs_of_horses, week_of_jobs
from tests.support.horse_records import REFERENCE, visit

DAY = date(2026, 10, 14)


def jobs(*visits: Any) -> tuple[Job, ...]:
    """The jobs after these visits, with our own library."""
    return jobs_in_force(visits, REFERENCE.care)


def test_no_visit_no_jobs() -> None:
    """Nothing is put before an owner that the trimmer did not choose."""
    assert jobs() == ()
    assert jobs(visit("2026-10-14")) == ()


def test_a_note_of_the_library_comes_with_all_its_words() -> None:
    """Every part of the library's entry stands in the job."""
    words = REFERENCE.care["daily-grooves"]

    assert jobs(visit("2026-10-14", care=["daily-grooves"])) == (
        Job(
            key="daily-grooves",
            what=words.what,
            since=date(2026, 10, 14),
            why=words.why,
            how_often=words.how_often,
            until=words.until,
            stop_if=words.stop_if,
            caution=words.caution,
            times_a_week=7,
            not_while=words.not_while,
        ),
    )


def test_what_is_written_for_the_horse_wins_over_the_library() -> None:
    """Each part that the trimmer wrote replaces the library's; the caution stays."""
    own = {"what": "daily-grooves", "how_often": "twice a day", "why": "wet", "until": "May", "stop_if": "it bleeds"}
    (job,) = jobs(visit("2026-10-14", care=[own]))

    assert (job.how_often, job.why, job.until, job.stop_if) == ("twice a day", "wet", "May", "it bleeds")
    assert (job.what, job.caution) == (REFERENCE.care["daily-grooves"].what, REFERENCE.care["daily-grooves"].caution)


def test_a_note_in_own_words() -> None:
    """A text that is no key of the library stands as it was typed."""
    (job,) = jobs(visit("2026-10-14", care=["Walk in hand on the lane"]))

    assert job == Job("", "Walk in hand on the lane", date(2026, 10, 14))


def test_later_notes_replace_earlier_ones() -> None:
    """The order is the trimmer's, not the library's."""
    found = jobs(visit("2026-09-01", care=["dry-bed"]), visit("2026-10-14", care=["pick-out-daily", "daily-grooves"]))

    assert [job.key for job in found] == ["pick-out-daily", "daily-grooves"]


def test_a_visit_without_notes_leaves_the_earlier_ones_in_force() -> None:
    """They keep the day on which they were given."""
    (job,) = jobs(visit("2026-09-01", care=["dry-bed"]), visit("2026-10-14"))

    assert (job.key, job.since) == ("dry-bed", date(2026, 9, 1))


@pytest.mark.parametrize(
    ("until", "lasts"),
    [
        ("the next visit", False),
        ("next visit", False),
        ("The next visit, or until the vet says otherwise", False),
        ("until our next visit", False),
        ("the vet has seen it", True),
        ("the next visitors come", True),
        (None, True),
    ],
)
def test_a_job_until_the_next_visit_ends_there(until: str | None, lasts: bool) -> None:
    """By its own words, which go before the library's; an unnamed note of any other kind goes on."""
    given = visit("2026-09-01", care=[{"what": "Walk in hand", **({"until": until} if until else {})}, "dry-bed"])
    found = jobs(given, visit("2026-10-14"))

    assert [job.key or job.what for job in jobs(given)] == ["Walk in hand", "dry-bed"]
    assert [job.key or job.what for job in found] == [*(["Walk in hand"] if lasts else []), "dry-bed"]


def test_a_note_of_the_library_until_the_next_visit_ends_there() -> None:
    """Named again at that visit, it goes on since its first day; own words may let it last longer."""
    given = visit("2026-09-01", care=["daily-grooves"])
    again = visit("2026-10-14", care=["daily-grooves"])
    longer = visit("2026-09-01", care=[{"what": "daily-grooves", "until": "spring"}])

    assert jobs(given, visit("2026-10-14")) == ()
    assert [job.since for job in jobs(given, again)] == [date(2026, 9, 1)]
    assert [job.key for job in jobs(longer, visit("2026-10-14"))] == ["daily-grooves"]


def test_notes_end_all_at_once() -> None:
    """`care_ends: yes` ends them all; notes of the same visit come after the end."""
    before = visit("2026-09-01", care=["dry-bed"])

    assert jobs(before, visit("2026-10-14", care_ends="yes")) == ()
    assert [job.key for job in jobs(before, visit("2026-10-14", care_ends=True, care=["boots-fit"]))] == ["boots-fit"]


@pytest.mark.parametrize(
    ("ends", "left"),
    [
        ("dry-bed", ["boots-fit", "Walk in hand"]),
        (["dry-bed", "boots-fit"], ["Walk in hand"]),
        (["walk  in hand", "DRY-BED"], ["boots-fit"]),
        ("no", ["dry-bed", "boots-fit", "Walk in hand"]),
        (["all"], []),
    ],
)
def test_notes_end_by_name_or_words(ends: Any, left: list[str]) -> None:
    """The others stay in force, since the day on which they were given."""
    before = visit("2026-09-01", care=["dry-bed", "boots-fit", "Walk in hand"])
    found = jobs(before, visit("2026-10-14", care_ends=ends))

    assert [job.key or job.what for job in found] == left
    assert {job.since for job in found} <= {date(2026, 9, 1)}


def test_a_note_that_is_named_again_goes_on_since_its_first_day() -> None:
    """Over several visits, those without notes included, by its name or by the same words."""
    first = visit("2026-07-01", care=["dry-bed", "Walk in hand"])
    later = visit("2026-09-01", care=["walk in hand", "dry-bed", "boots-fit"])

    found = jobs(first, visit("2026-08-01"), later)
    assert [job.since for job in found] == [date(2026, 7, 1), date(2026, 7, 1), date(2026, 9, 1)]


@pytest.mark.parametrize("between", [{"care": ["boots-fit"]}, {"care_ends": ["dry-bed"]}, {"care_ends": True}])
def test_a_note_that_was_out_of_force_begins_anew(between: dict[str, Any]) -> None:
    """A break is a break, whether it was replaced or ended."""
    first, last = visit("2026-07-01", care=["dry-bed"]), visit("2026-10-14", care=["dry-bed"])
    (job,) = jobs(first, visit("2026-09-01", **between), last)

    assert job.since == DAY


def test_own_words_on_how_often_put_the_days_of_the_library_aside() -> None:
    """A note is not ticked seven times that is asked for twice, unless the trimmer says how many."""
    twice = {"what": "daily-grooves", "how_often": "twice a week"}

    assert jobs(visit("2026-10-14", care=[twice]))[0].times_a_week is None
    assert jobs(visit("2026-10-14", care=[{**twice, "times_a_week": 2}]))[0].times_a_week == 2
    assert jobs(visit("2026-10-14", care=[{"what": "Own words", "times_a_week": 3}]))[0].times_a_week == 3


def test_a_note_for_some_months_says_so_all_year() -> None:
    """The trimmer chose it, so it stands there; the months are told."""
    assert jobs(visit("2026-06-01", care=["wet-season-frog"]))[0].season == "wet"


def job(what: str, times: int | None = None, since: date = DAY) -> Job:
    """A job in a trimmer's own words."""
    return Job("", what, since, times_a_week=times)


def test_a_job_of_several_horses_stands_once() -> None:
    """Since when does not part it; those for most horses come first."""
    found = jobs_of_horses([("Otter", [job("B"), job("A")]), ("Moss", [job("B", since=date(2026, 1, 1))])])

    assert found == (JobOfHorses(job("B"), ("Otter", "Moss")), JobOfHorses(job("A"), ("Otter",)))


def test_jobs_with_other_words_are_two_jobs() -> None:
    """The signs at which one horse's owner should stop are not another's."""
    found = jobs_of_horses([("Otter", [job("A")]), ("Moss", [Job("", "A", DAY, stop_if="it hurts")])])

    assert [one.horses for one in found] == [("Otter",), ("Moss",)]


@pytest.mark.parametrize(
    ("times", "days"),
    [
        (1, (0,)),
        (2, (0, 3)),
        (3, (0, 2, 4)),
        (4, (0, 2, 4, 6)),
        (5, (0, 1, 3, 4, 6)),
        (6, (0, 1, 2, 3, 4, 5)),
        (7, (0, 1, 2, 3, 4, 5, 6)),
    ],
)
def test_a_job_is_spread_over_the_week(times: int, days: tuple[int, ...]) -> None:
    """Daily is every day; three times is Monday, Wednesday and Friday."""
    assert week_of_jobs([("Moss", [job("A", times)])]).on_days == (JobOfHorses(job("A", times), ("Moss",), days),)


def test_jobs_keep_out_of_each_others_way() -> None:
    """Three times a week twice over, and three weekly ones: no day is left empty, none holds three."""
    week = week_of_jobs([("Moss", [job("A", 3), job("B", 3), *(job(f"weekly {one}", 1) for one in "abc")])])
    load = [sum(day in one.days for one in week.on_days) for day in range(7)]

    assert [one.days for one in week.on_days[:2]] == [(0, 2, 4), (1, 3, 5)]
    assert sorted(load) == [1, 1, 1, 1, 1, 2, 2]


def test_a_job_has_the_same_days_for_all_its_horses() -> None:
    """One walks through the stable once."""
    week = week_of_jobs([("Moss", [job("A", 1), job("B", 1)]), ("Otter", [job("A", 1)])])

    assert [(one.horses, one.days) for one in week.on_days] == [(("Moss", "Otter"), (0,)), (("Moss",), (1,))]


def test_jobs_without_days_stand_apart() -> None:
    """Their words say when they come up."""
    assert week_of_jobs([("Moss", [job("A")])]) == Week((), (JobOfHorses(job("A"), ("Moss",)),))
    assert week_of_jobs([]) == Week((), ())

"""Which care notes are in force."""

from datetime import date
from typing import Any

from recordgen.hoof.care import Job, jobs_in_force
from tests.hoof.building import REFERENCE, visit


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


def test_notes_end() -> None:
    """`care_ends` ends them all; notes of the same visit come after the end."""
    before = visit("2026-09-01", care=["dry-bed"])

    assert jobs(before, visit("2026-10-14", care_ends=True)) == ()
    assert [job.key for job in jobs(before, visit("2026-10-14", care_ends=True, care=["boots-fit"]))] == ["boots-fit"]

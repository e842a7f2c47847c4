"""Keys of ticked jobs."""

from __future__ import annotations

from dataclasses import replace
from datetime import date

from recordgen.hoof.care.jobs import Job
from recordgen.site.pages.ticks import tick_key

BRUSH = Job("pick-out-daily", "Pick out the feet", date(2026, 10, 14))


def test_a_job_of_a_horse_has_one_key() -> None:
    """However its words and its first day change, where it comes from the library."""
    changed = replace(BRUSH, what="Pick out all four feet", since=date(2026, 11, 2))

    assert tick_key("willowmere", "otter", BRUSH) == tick_key("willowmere", "otter", changed)


def test_each_job_of_each_horse_has_its_own_key() -> None:
    """Another horse, another stable, another job, and the trimmer's own words."""
    own = [Job("", what, date(2026, 10, 14)) for what in ("Walk in hand", "Rest")]
    places = [("willowmere", "otter"), ("willowmere", "moss"), ("tithe-barn", "otter")]
    keys = [tick_key(*place, job) for place in places for job in (BRUSH, *own)]

    assert len(set(keys)) == 9


def test_a_key_tells_no_names() -> None:
    """Sixteen letters, whatever was typed: a device shows no horse to who looks into its storage."""
    key = tick_key("willowmere", "otter", BRUSH)

    assert (len(key), key.isalnum()) == (16, True)
    assert not any(word in key for word in ("willowmere", "otter", "pick"))

"""Summaries that are kept in part: every field as computed, and the trimmer's front page computes none of them."""

from __future__ import annotations

import pickle
from copy import copy
from dataclasses import fields, replace
from datetime import timedelta
from pathlib import Path

import pytest

from recordgen.cache.entries import Cache
from recordgen.cache.watched_day import AlikeDays
from recordgen.hoof.summary import HorseSummary, summarise
from recordgen.records.load.everything import Whole, read_whole
from recordgen.site.context import ways_of
from recordgen.site.kept import summaries as room
from recordgen.site.kept.digest import RecordsDigest
from recordgen.site.kept.summaries import Computed, KeptSummary, Summaries, summarised
from tests.conftest import RECORDS, TODAY

# Asked of every horse by the front page, the rounds, the calendars or the menus.
ASKED = (
    "due",
    "held",
    "cautions",
    "closed_cautions",
    "jobs",
    "withheld",
    "gaps",
    "remarks",
    "past_forecasts",
    "care_class",
)
MORE = ("last_visit", "last_findings", "horse", "shared")


@pytest.fixture(scope="module")
def whole() -> Whole:
    """The demo practice, as read."""
    return read_whole(RECORDS, TODAY)


@pytest.fixture(scope="module")
def cache(whole: Whole, tmp_path_factory: pytest.TempPathFactory) -> Cache:
    """A cache that holds its summaries."""
    made = Cache(tmp_path_factory.mktemp("kept"))
    summed(whole, made).remember()
    return made


def summed(whole: Whole, cache: Cache) -> Summaries:
    """The summaries of the practice."""
    return Summaries(whole, ways_of(whole), TODAY, cache, RecordsDigest.of(RECORDS))


def horses(found: Summaries) -> list[HorseSummary]:
    """All horses."""
    return [horse for stable in found.stables for horse in stable.horses]


def test_every_field_is_as_computed(whole: Whole, cache: Cache) -> None:
    """Whether it was kept or is computed when asked for; and so are the shares of findings."""
    kept, computed = summed(whole, cache), summed(whole, Cache(None))
    assert {type(horse) for horse in horses(kept)} == {KeptSummary}
    assert kept.shares == computed.shares

    for one, other in zip(horses(kept), horses(computed), strict=True):
        for name in ("last_visit", "days_since", "visit_days", "last_findings"):
            assert getattr(one, name) == getattr(other, name), name
        for field in fields(HorseSummary):
            assert repr(getattr(one, field.name)) == repr(getattr(other, field.name)), field.name


def test_what_all_ask_is_at_hand(whole: Whole, cache: Cache, monkeypatch: pytest.MonkeyPatch) -> None:
    """No horse is computed for it; any other field is computed once."""
    monkeypatch.setattr(room, "summarise", lambda *_: pytest.fail("computed again"))
    found = horses(summed(whole, cache))

    assert all(hasattr(horse, name) for horse in found for name in (*ASKED, *MORE))


def test_another_process_gets_it_whole(whole: Whole, cache: Cache) -> None:
    """With what it can compute the rest from."""
    first = horses(summed(whole, cache))[0]
    again = pickle.loads(pickle.dumps(first))

    assert (again.due, len(again.history)) == (first.due, len(first.visit_days))


def test_what_was_computed_now_is_unpacked(whole: Whole, monkeypatch: pytest.MonkeyPatch) -> None:
    """Not computed a second time; what a copy unpacked goes with the copy."""
    horse = horses(summed(whole, Cache(None)))[0]
    monkeypatch.setattr(room, "summarise", lambda *_: pytest.fail("computed again"))
    shown = copy(horse)

    assert len(shown.history) == len(horse.visit_days)
    assert ("history" in vars(shown), "history" in vars(horse)) == (True, False)


def test_one_field_can_be_replaced(whole: Whole, cache: Cache) -> None:
    """The others stay as they were, those that others ask of it too."""
    first = horses(summed(whole, cache))[0]
    other = replace(first, care_class="foal")

    assert (other.care_class, other.due) == ("foal", first.due)
    assert (other.visit_days, other.last_findings) == (first.visit_days, first.last_findings)


def test_no_other_attribute_is_made_up(whole: Whole, cache: Cache) -> None:
    """A name that is no field is no field."""
    assert not hasattr(horses(summed(whole, cache))[0], "fields")


def test_records_of_other_bytes_are_computed_anew(whole: Whole, cache: Cache) -> None:
    """One horse's folder that differs; the others are known."""
    read = RecordsDigest.of(RECORDS)
    other = replace(read, horses={**read.horses, "willowmere/bramble": "other"})
    found = Summaries(whole, ways_of(whole), TODAY, cache, other)

    assert (found.horses - found.kept_count, found.kept_count > 0) == (1, True)


def test_a_summary_is_the_same_on_all_days_it_is_kept_for(whole: Whole) -> None:
    """On the first and on the last of them every field is as today; most horses have more than the one day."""
    ways, more = ways_of(whole), 0
    for record in whole.practice.horses:
        alike: AlikeDays = Computed.of(record, ways, TODAY).held["alike"]
        days = {max(alike.first, record.prints[-1].day), min(alike.last, TODAY + timedelta(days=90))} - {TODAY}
        more += bool(days)
        now = summarise(record, ways, TODAY)
        for day in days:
            assert repr(replace(summarise(record, ways, day), as_of=TODAY)) == repr(now), (record.slug, day)

    assert more > len(whole.practice.horses) / 2


def test_on_a_later_day_what_stands_is_known_and_the_rest_computed(whole: Whole, cache: Cache) -> None:
    """A day on: some of each; half a year on: all are computed."""
    read, ways = RecordsDigest.of(RECORDS), ways_of(whole)
    soon, late = (Summaries(whole, ways, TODAY + timedelta(days=days), cache, read) for days in (1, 180))

    assert (0 < soon.kept_count < soon.horses, late.kept_count) == (True, 0)
    assert {horse.as_of for horse in horses(soon)} == {TODAY + timedelta(days=1)}


def test_who_is_due_is_computed_once(monkeypatch: pytest.MonkeyPatch, tmp_path: Path) -> None:
    """A second asking finds what the first kept."""
    monkeypatch.setenv("RECORDGEN_CACHE", str(tmp_path / "own"))
    first = [horse.due for horse in summarised(RECORDS, TODAY, "willowmere")[1][0].horses]
    monkeypatch.setattr(room, "summarise", lambda *_: pytest.fail("computed again"))

    assert [horse.due for horse in summarised(RECORDS, TODAY, "willowmere")[1][0].horses] == first

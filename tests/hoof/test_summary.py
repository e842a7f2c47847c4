"""Everything known of one horse, and of a stable."""

from __future__ import annotations

import copy
from datetime import date
from typing import Any

import pytest

from recordgen.hoof.context import Context
from recordgen.hoof.observations import Event
from recordgen.hoof.summary import summarise, summarise_stable
from recordgen.records.models.names import FEET
from recordgen.records.models.practice import HorseRecord, StableRecord
from recordgen.records.models.stable import Stable
from tests.support.full_visits import EARLIER, FULL
from tests.support.horse_records import PRACTICE, REFERENCE, TODAY, WAYS, horse, record, summary, visit, ways


def test_a_summary_is_the_same_each_time() -> None:
    """It is computed from its arguments alone."""
    one = record(EARLIER, FULL)

    assert summarise(one, WAYS, TODAY) == summarise(one, WAYS, TODAY)
    assert summarise(one, WAYS, TODAY) == summarise(copy.deepcopy(one), Context.of(PRACTICE, REFERENCE), TODAY)


def test_the_records_stay_as_they_were() -> None:
    """Computing changes neither the horse, its visits, nor the tables."""
    one, tables = record(EARLIER, FULL), REFERENCE
    before = copy.deepcopy((one, tables))

    summarise(one, WAYS, TODAY)

    assert (one, tables) == before


def test_days() -> None:
    """The day it is as of, the last visit, and the days since."""
    found = summary(EARLIER, FULL)

    assert (found.as_of, found.last_visit, found.days_since) == (TODAY, date(2026, 10, 14), 48)
    assert found.age_months == 139


def test_a_horse_without_a_visit() -> None:
    """Nothing is due, nothing is open, nothing is known of its feet."""
    found = summary()

    assert (found.last_visit, found.days_since, found.due, found.weight) == (None, None, None, None)
    assert (found.cautions, found.jobs, found.feet, found.pairs, found.events, found.history) == (
        (),
        (),
        {},
        (),
        (),
        (),
    )
    assert (found.changes.real, found.changes.maybe, found.changes.looked_at) == ((), (), 0)


def test_a_horse_without_a_birthday_has_no_age() -> None:
    """Nobody wrote it down."""
    assert summary(FULL, born=None).age_months is None


def test_a_visit_without_feet() -> None:
    """It counts as a visit, and tells nothing of any foot."""
    found = summary(visit("2026-10-14"))

    assert found.last_visit == date(2026, 10, 14)
    assert found.feet == {}
    assert found.history[0].feet == {}


def test_one_foot() -> None:
    """The others are left out, not empty."""
    found = summary(EARLIER)

    assert list(found.feet) == ["left_fore"]
    assert found.feet["left_fore"].last_seen == date(2026, 9, 2)


def test_feet_of_different_visits_keep_their_own_days() -> None:
    """Each foot is told as it was when it was last looked at, in the order of the feet."""
    found = summary(visit("2026-09-02", left_hind={"sole": {"bruise": True}}), visit("2026-10-14", right_fore={}))

    assert [(foot, one.last_seen) for foot, one in found.feet.items()] == [
        ("right_fore", date(2026, 10, 14)),
        ("left_hind", date(2026, 9, 2)),
    ]
    assert [finding.kind for finding in found.feet["left_hind"].findings] == ["bruise"]


def test_findings_are_those_of_the_last_look() -> None:
    """Earlier findings are in the history."""
    found = summary(visit("2026-09-02", left_fore={"sole": {"bruise": True}}), visit("2026-10-14", left_fore={}))

    assert found.feet["left_fore"].findings == ()
    assert [len(one.feet["left_fore"].findings) for one in found.history] == [0, 1]


def test_history_begins_with_the_newest_visit() -> None:
    """Its feet stand in the order of the feet, however they were typed."""
    found = summary(EARLIER, visit("2026-10-14", feet={"RH": {}, "near fore": {}}))

    assert [one.visit.date for one in found.history] == [date(2026, 10, 14), date(2026, 9, 2)]
    assert list(found.history[0].feet) == ["left_fore", "right_hind"]


def test_naming_changes_words_and_no_number() -> None:
    """A practice that says near and off has the same figures."""
    one, other = summary(EARLIER, FULL), summary(EARLIER, FULL, by=ways(feet="near and off"))

    assert other.feet == one.feet
    assert other.due == one.due


def test_events_are_sorted_by_day() -> None:
    """Feed, boots when they change, and what a vet saw; advice that was asked for is no event."""
    seen = {"date": "2026-09-20", "by": "Dr Sage", "kind": "seen", "words": "looked at the left fore"}
    asked = {"date": "2026-09-21", "by": "Dr Sage", "kind": "advised"}
    boots: dict[str, Any] = {"boots": "front boots"}
    visits = [
        visit("2026-08-01", keeping=boots),
        visit("2026-09-02", keeping={**boots, "feed_change": "hay soaked"}),
        visit("2026-10-14", keeping={"boots": "none"}, vet=[asked, seen]),
    ]

    assert summary(*visits).events == (
        Event(date(2026, 8, 1), "boots", "front boots"),
        Event(date(2026, 9, 2), "feed", "hay soaked"),
        Event(date(2026, 9, 20), "vet", "looked at the left fore"),
        Event(date(2026, 10, 14), "boots", "none"),
    )


def test_a_vet_s_visit_without_words_tells_who_came() -> None:
    """The name stands in for them."""
    seen = {"date": "2026-09-20", "by": "Dr Sage", "kind": "seen"}

    assert summary(visit("2026-10-14", vet=[seen])).events == (Event(date(2026, 9, 20), "vet", "Dr Sage"),)


@pytest.mark.parametrize("values", [{}, {"left": {"date": "2026-11-01"}}])
def test_a_stable_tells_who_is_there(values: dict[str, Any]) -> None:
    """A horse that left is summarised, and not among those present."""
    bramble = HorseRecord("bramble", "willowmere", horse(), (FULL,))
    moss = HorseRecord("moss", "willowmere", horse(name="Moss", **values), (EARLIER,))
    stable = StableRecord("willowmere", Stable.model_validate({"name": "Willowmere"}), (bramble, moss))

    found = summarise_stable(stable, WAYS, TODAY)

    assert [one.slug for one in found.horses] == ["bramble", "moss"]
    assert [one.slug for one in found.present] == (["bramble"] if values else ["bramble", "moss"])


def test_all_parts_of_a_full_visit_are_there() -> None:
    """One visit with a little of everything."""
    found = summary(EARLIER, FULL)

    assert [caution.rule for caution in found.cautions] == ["slightly-lame"]
    assert [job.key for job in found.jobs] == ["daily-grooves"]
    assert [pair.measure for pair in found.pairs] == ["toe_length"]
    assert found.feet["left_fore"].growth.net.cycles == 1
    assert found.gaps[-1].feet == tuple(foot for foot in FEET if "hind" in foot)

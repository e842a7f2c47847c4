"""Visits that were looked over once are not parsed again until somebody asks for them."""

from __future__ import annotations

from datetime import date
from pathlib import Path
from unittest import mock

import pytest

from recordgen.cache.entries import Cache
from recordgen.problems import Trouble
from recordgen.records.load.everything import RecordsTrouble, Whole, read_whole
from tests.support.practice_folders import VISIT, VISIT_FILE, build

TODAY = date(2026, 11, 25)
UNLIKELY = VISIT.replace("toe_length: 86", "toe_length: 140")
PARSED = "recordgen.records.load.horse_visits.read_partly"


@pytest.fixture
def records(tmp_path: Path) -> Path:
    """A practice with two visits, one of them unlikely."""
    earlier = VISIT_FILE.replace("2026-10-14", "2026-09-02")
    return build(tmp_path / "records", {earlier: UNLIKELY.replace("2026-10-14", "2026-09-02")})


@pytest.fixture
def cache(tmp_path: Path) -> Cache:
    """A cache of its own."""
    return Cache(tmp_path / "cache")


def unparsed(records: Path, cache: Cache, today: date = TODAY) -> Whole:
    """The practice, read without parsing a visit. Raises AssertionError where one is parsed."""
    with mock.patch(PARSED, side_effect=AssertionError("parsed")):
        return read_whole(records, today, cache=cache)


def test_what_did_not_change_is_not_parsed_again(records: Path, cache: Cache) -> None:
    """The warnings are told again, and the visits are the same once they are asked for."""
    first = read_whole(records, TODAY, cache=cache)
    again = unparsed(records, cache)

    assert again.warnings == first.warnings != ()
    assert [horse.visits for horse in again.practice.horses] == [horse.visits for horse in first.practice.horses]
    assert again.practice.visit_count == 2


def test_a_later_day_finds_nothing_else_and_an_earlier_one_what_lies_after_it(records: Path, cache: Cache) -> None:
    """A visit of tomorrow is an error today, be it known already or not."""
    read_whole(records, TODAY, cache=cache)

    assert unparsed(records, cache, date(2027, 1, 1)).practice.visit_count == 2
    with pytest.raises(RecordsTrouble):
        read_whole(records, date(2026, 10, 1), cache=cache)


@pytest.mark.parametrize("name", [VISIT_FILE, "willowmere/bramble/horse.yaml", "practice.yaml"])
def test_what_the_looking_over_goes_by_is_looked_over_again(records: Path, cache: Cache, name: str) -> None:
    """The visits themselves, the horse's file, and how the practice measures."""
    read_whole(records, TODAY, cache=cache)
    file = records / name
    more = "methods: {toe_length: rule}\n" if name == "practice.yaml" else "# Changed.\n"
    file.write_text(file.read_text("utf-8") + more, "utf-8")

    with pytest.raises(AssertionError, match="parsed"):
        unparsed(records, cache)


def test_a_visit_that_changed_since_it_was_looked_over_is_not_taken(records: Path, cache: Cache) -> None:
    """A page shows only what was looked over, or the command ends."""
    read_whole(records, TODAY, cache=cache)
    (horse,) = unparsed(records, cache).practice.horses
    (records / VISIT_FILE).write_text(f"{VISIT}# Changed.\n", "utf-8")

    with pytest.raises(Trouble, match=r"bramble/2026-10-14.yaml was changed while it was being read"):
        tuple(horse.visits)


def test_a_record_that_was_parsed_stays_as_it_was_read(records: Path) -> None:
    """A change while a command runs shows in the next one."""
    (horse,) = read_whole(records, TODAY, cache=Cache(None)).practice.horses
    (records / VISIT_FILE).write_text("", "utf-8")

    assert [visit.date.isoformat() for visit in horse.visits] == ["2026-09-02", "2026-10-14"]


def test_all_cores_read_the_same_as_one(records: Path) -> None:
    """Many visits are parsed in processes of their own."""
    alone = read_whole(records, TODAY, cache=Cache(None))
    with mock.patch("recordgen.records.load.horse_visits.MANY", 0):
        shared = read_whole(records, TODAY, cache=Cache(None))

    assert shared == alone

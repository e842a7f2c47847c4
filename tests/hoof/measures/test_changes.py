"""Claims of changes: from visits as they are typed to claims."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.hoof.claims.claims import Claim
from recordgen.hoof.measures.changes import FootMeasure
from recordgen.records.models.visit import Visit
from tests.support.horse_records import summary, toes, visit

DAYS = [f"2026-{month:02}-10" for month in range(1, 9)]


def told(*visits: Visit) -> list[Claim[FootMeasure]]:
    """The changes that are told of a horse."""
    return list(summary(*visits).changes.real)


def lengths(*mm: float, by: dict[int, str] | None = None) -> list[Visit]:
    """Visits a month apart with a toe length after the trim; by: the ways of those that differ."""
    return [
        visit(day, left_fore={"after": {"toe_length": long}}, methods={"toe_length": way} if way else {})
        for count, (day, long) in enumerate(zip(DAYS, mm, strict=False))
        for way in [(by or {}).get(count)]
    ]


def test_a_change_is_told_with_its_foot_and_measure() -> None:
    """Since when, by how much, and what it was last."""
    (found,) = told(*lengths(80, 80, 81, 80, 86, 85, 86))

    assert (found.of.foot, found.of.measure.key, found.of.value) == ("left_fore", "toe_length", 86)
    assert (found.before, found.since, found.latest) == (date(2026, 4, 10), date(2026, 5, 10), date(2026, 7, 10))
    assert found.low < 5.4 < found.high


def test_after_is_compared_with_after() -> None:
    """Growth that was trimmed again is no change."""
    grown = [(day, 80 + 2.0 * count, 80.0) for count, day in enumerate(DAYS)]

    assert told(*toes(*grown)) == []


def test_only_headlines_are_looked_at() -> None:
    """A single heel is part of the difference of both; it is no news of its own."""
    heels = [
        visit(day, left_fore={"after": {"heel_height": {"medial": 30 + 3 * count}}}) for count, day in enumerate(DAYS)
    ]

    assert summary(*heels).changes.looked_at == 0


def test_another_way_of_measuring_is_no_change() -> None:
    """Photographs may show every toe longer than the rule does."""
    by = dict.fromkeys(range(4, 8), "photograph")

    assert told(*lengths(80, 80, 80, 80, 88, 88, 88, 88, by=by)) == []
    assert [one.since for one in told(*lengths(80, 80, 80, 80, 80, 80, 88, 88))] == [date(2026, 7, 10)]


def test_what_was_not_measured_for_long_is_over() -> None:
    """A gap that closed and was not read again is not told for ever; a figure of last month is, with its day."""
    lately, later = (visit(day, left_fore={"landing": "flat"}) for day in ("2026-08-20", "2027-03-20"))
    changed = lengths(80, 80, 80, 86, 86, 86, 86)

    assert [one.latest for one in told(*changed, lately)] == [date(2026, 7, 10)]
    assert told(*changed, later) == []


def test_readings_taken_again_make_a_change_surer() -> None:
    """The mean of three readings is out by less than one of them."""
    days = ("2026-01-10", "2026-02-10", "2026-03-10", "2026-04-10")
    once = [visit(day, left_fore={"after": {"toe_length": mm}}) for day, mm in zip(days, (80, 80, 83, 83), strict=True)]
    again = [
        visit(day, left_fore={"after": {"toe_length": mm}, "repeat": {"after": [{"toe_length": mm}] * 2}})
        for day, mm in zip(days, (80, 80, 83, 83), strict=True)
    ]
    chances = [[*found.real, *found.maybe][0].chance for found in (summary(*once).changes, summary(*again).changes)]

    assert chances[1] < chances[0] / 10


@pytest.mark.parametrize(("count", "looked_at"), [(0, 0), (1, 0), (2, 1)])
def test_one_visit_shows_no_change(count: int, looked_at: int) -> None:
    """There is nothing to compare with."""
    found = summary(*lengths(80, 90)[:count]).changes

    assert (found.looked_at, len(found.real)) == (looked_at, looked_at)

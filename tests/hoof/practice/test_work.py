"""The work of the last months."""

from __future__ import annotations

from datetime import date

from recordgen.hoof.practice.gaps import gaps_together
from recordgen.hoof.practice.work import months_of_work
from tests.support.horse_records import summary, visit

TODAY = date(2026, 2, 10)


def test_twelve_months_end_with_this_one() -> None:
    """Over the turn of a year, months without a visit among them."""
    found = months_of_work([], TODAY)

    assert [found[0].first, found[-1].first] == [date(2025, 3, 1), date(2026, 2, 1)]
    assert (len(found), {one.visits for one in found}) == (12, {0})


def test_visits_horses_and_days_are_counted_apart() -> None:
    """One horse twice and another once, two of these visits on one day; what lies before is left out."""
    ash = summary(visit("2024-02-03"), visit("2026-02-03"), visit("2026-02-09"), today=TODAY)
    elm = summary(visit("2026-02-03"), today=TODAY)
    this = months_of_work([ash, elm], TODAY)[-1]

    assert (this.visits, this.horses, this.days) == (3, 1, 2)


def test_one_errand_is_told_once_for_its_horses() -> None:
    """A number that two horses lack; a horse that has left asks for nothing."""
    left = {"date": "2026-01-05", "why": "sold"}
    horses = [summary(today=TODAY), summary(today=TODAY), summary(today=TODAY, left=left)]
    found = {one.gap.kind: one.horses for one in gaps_together(horses)}

    assert found["identity"] == tuple(horses[:2])

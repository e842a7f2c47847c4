"""The next round: where, whom to ring, and what to look at."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.practice.next_round import contact_for, next_round
from recordgen.hoof.rounds.rounds import Calendar, plan_of
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.records.models.horse import Horse
from recordgen.records.models.stable import Stable
from tests.support.horse_records import summary, visit, ways

TODAY = date(2026, 11, 27)
CASS = {"name": "Cass Orme", "role": "manager", "phone": "07700 900625"}
LEO = {"name": "Leo Winterflood", "role": "owner of Rowan", "phone": "07700 900633"}
NO_PHONE = {"name": "Ruth Venner", "role": "owner"}


def stable(*horses: HorseSummary, **values: Any) -> StableSummary:
    """A stable of these horses."""
    return StableSummary("willowmere", Stable.model_validate({"name": "Willowmere", **values}), horses)


def late(**values: Any) -> HorseSummary:
    """A horse that is due at once."""
    return summary(visit("2026-10-01", **values), today=TODAY)


def test_the_first_round_holds_its_stables_and_horses() -> None:
    """The day of the plan, and the contact of the stable."""
    here = stable(late(), contacts=[NO_PHONE, CASS])
    found = next_round(plan_of([here], Calendar.of(ways(), TODAY)), [here])

    assert found is not None
    assert (found.day, found.horses) == (TODAY, 1)
    assert [(stop.stable, stop.contact and stop.contact.name) for stop in found.stops] == [(here, "Cass Orme")]


def test_nothing_due_is_no_round() -> None:
    """A horse that was never visited is on none."""
    here = stable(summary(today=TODAY))

    assert next_round(plan_of([here], Calendar.of(ways(), TODAY)), [here]) is None


def test_the_largest_findings_of_the_last_visit_are_told() -> None:
    """Three at the most, those of the visit before left out."""
    wall = {
        "toe": {"chip": 4},
        "lateral quarter": {"chip": 9},
        "medial quarter": {"flare": 6},
        "lateral heel": {"chip": 2},
    }
    found = summary(
        visit("2026-09-01", right_fore={"wall": {"toe": {"chip": 30}}}),
        visit("2026-10-01", left_fore={"wall": wall}),
        today=TODAY,
    )
    here = stable(found)
    going = next_round(plan_of([here], Calendar.of(ways(), TODAY)), [here])

    assert going is not None
    assert [one.size_mm for one in going.stops[0].horses[0].findings] == [9, 6, 4]


@pytest.mark.parametrize(
    ("horse", "contacts", "name"),
    [
        ("Rowan", [CASS, LEO], "Leo Winterflood"),
        ("Row", [CASS, LEO], "Cass Orme"),
        ("Otter", [NO_PHONE, CASS], "Cass Orme"),
        ("Otter", [NO_PHONE], None),
        ("Otter", [], None),
    ],
)
def test_whoever_is_named_for_a_horse_is_rung_first(
    horse: str, contacts: list[dict[str, str]], name: str | None
) -> None:
    """By a whole word of the role; else the first with a number; nobody without one."""
    found = contact_for(Horse(name=horse), Stable.model_validate({"name": "Tithe Barn", "contacts": contacts}))

    assert (found and found.name) == name


@pytest.mark.parametrize(("owner", "name"), [(LEO, "Leo Winterflood"), (NO_PHONE, "Cass Orme")])
def test_an_owner_with_a_number_is_rung_before_the_stable(owner: dict[str, str], name: str) -> None:
    """As the horse's own record tells; one without a number cannot be rung."""
    horse = Horse.model_validate({"name": "Otter", "owner": owner})
    found = contact_for(horse, Stable.model_validate({"name": "Tithe Barn", "contacts": [CASS]}))

    assert found is not None
    assert found.name == name

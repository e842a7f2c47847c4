"""Open cautions by the names that end them: typed as the records want them, they do."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.hoof.cautions.typed_names import name_to_type, names_to_type, still_open
from recordgen.records.models.visit import endings
from tests.support.caution_cases import CASES, DAY, LATER, case_of
from tests.support.horse_records import NAMING, WAYS, horse, visit, ways

SORE = visit(
    DAY,
    signs=["leans back"],
    left_fore={"pulse": "strong", "drew_blood": True},
    right_fore={"wound": {"where": "coronet"}},
)


def test_a_name_is_told_with_its_foot() -> None:
    """As the practice types it."""
    (found,) = case_of("drew-blood")
    (of_horse,) = case_of("thin")

    assert name_to_type(found, NAMING) == "drew-blood, left_fore"
    assert name_to_type(found, ways(feet="near and off").naming) == "drew-blood, near_fore"
    assert name_to_type(of_horse, NAMING) == "thin"


def test_names_are_told_by_level_and_once() -> None:
    """Two wounds of one foot are ended by one name."""
    twice = case_of("wound", visit(LATER, left_fore={"wound": {"where": "heel bulbs"}, "heat": True}))

    assert names_to_type(twice, NAMING) == ["call now: wound, left_fore", "call today: heat, left_fore"]


def test_what_takes_a_vet_stands_for_itself() -> None:
    """A call to the vet now, and what it sums up; the others end by a word."""
    found = endings(still_open(horse(), [SORE], WAYS, date(2026, 11, 25)), near_and_off=False)

    assert [one.typed for one in found[False]] == ["caution: drew-blood, foot: left_fore"]
    assert [one.typed for one in found[True]] == [
        "caution: signs-together",
        "caution: wound, foot: right_fore",
        "caution: stance",
        "caution: pulse, foot: left_fore",
    ]
    assert found[True][0].seen.startswith("Several signs were recorded")


@pytest.mark.parametrize("rule", CASES)
def test_being_overdue_ends_by_a_visit_alone(rule: str) -> None:
    """So no line is ready for it."""
    case = CASES[rule]
    found = still_open(horse(**(case.horse or {})), case.visits(), WAYS, date(2027, 11, 25))

    assert rule in [one.caution for one in found]
    assert "overdue" not in [one.caution for one in found]

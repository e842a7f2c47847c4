"""A frog that hurts or bleeds: whatever else is typed of it, something is told, and what is told stays."""

from __future__ import annotations

from typing import Any, get_args

import pytest

from recordgen.hoof.cautions.cautions import LEVELS
from recordgen.records.models.foot import Infection
from tests.support.caution_cases import DAY, LATER, aaep, cautions, raised_by, rules
from tests.support.horse_records import visit

BLEEDING = {"frog": {"infection": "painful or bleeding"}}


@pytest.mark.parametrize("infection", [None, *get_args(Infection)])
@pytest.mark.parametrize("depth", [None, 4, 15])
def test_a_frog_that_hurts_is_told_with_any_infection(infection: str | None, depth: float | None) -> None:
    """And with none; as the groove where that is deep."""
    frog = {"painful": True, "infection": infection, "central_groove_depth": depth}
    deep = infection == "deep groove" or depth == 15
    bleeding = ["painful-infection"] if infection == "painful or bleeding" else []

    expected = [*bleeding, *(["painful-groove"] if deep else [] if bleeding else ["painful-frog"])]

    assert raised_by(left_fore={"frog": frog}) == expected


@pytest.mark.parametrize(
    ("depth", "expected"), [(9.9, "painful-frog"), (10, "painful-groove"), (10.1, "painful-groove")]
)
def test_a_groove_is_deep_from_its_edge_on(depth: float, expected: str) -> None:
    """Ten millimetres, whatever is typed of the infection.

    Common practice, no source
    """
    frog = {"painful": True, "central_groove_depth": depth, "infection": "none"}

    assert raised_by(left_fore={"frog": frog}) == [expected]


@pytest.mark.parametrize(
    ("frog", "open_still"),
    [
        ({"central_groove_depth": 9.9}, False),
        ({"central_groove_depth": 10}, True),
        ({"infection": "surface"}, False),
        ({"infection": "surface", "central_groove_depth": 12}, True),
        ({"infection": "painful or bleeding"}, True),
        ({"painful": False}, False),
        ({"width": 50}, True),
    ],
)
def test_a_deep_and_painful_groove_ends_by_depth_or_by_pain(frog: dict[str, Any], open_still: bool) -> None:
    """A bleeding frog is no better than a deep groove, and silence ends nothing."""
    first = visit(DAY, left_fore={"frog": {"painful": True, "central_groove_depth": 15}})

    assert ("painful-groove" in rules(first, visit(LATER, left_fore={"frog": frog}))) is open_still


@pytest.mark.parametrize(
    ("infection", "painful", "open_still"),
    [("deep groove", None, True), ("deep groove", False, True), ("surface", None, False), ("none", None, False)],
)
def test_what_becomes_deep_was_not_healed(infection: str, painful: bool | None, open_still: bool) -> None:
    """Painful or bleeding ends at the surface, not on its way down."""
    later = visit(LATER, left_fore={"frog": {"infection": infection, "painful": painful}})

    assert ("painful-infection" in rules(visit(DAY, left_fore=BLEEDING), later)) is open_still


@pytest.mark.parametrize("frog", [{"painful": True}, {"painful": True, "infection": "deep groove"}])
def test_a_sore_frog_of_a_lame_horse_asks_for_the_vet_today(frog: dict[str, Any]) -> None:
    """Any grade above nothing, and a groove need not be deep."""
    lame = visit(DAY, left_fore={"frog": frog}, lameness=aaep(0.5))
    sound = visit(DAY, left_fore={"frog": frog}, lameness=aaep(0))

    assert "groove-and-lame" in rules(lame)
    assert "groove-and-lame" not in rules(sound)
    assert LEVELS.index(cautions(lame)[0].level) < LEVELS.index(cautions(sound)[0].level)

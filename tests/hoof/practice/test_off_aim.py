"""Horses off the aims of their trim."""

from __future__ import annotations

from typing import Any

import pytest

from recordgen.hoof.practice.off_aim import off_aim, share_of
from recordgen.hoof.summary import HorseSummary
from tests.support.horse_records import summary, toes

AIM = {"measure": "toe_length", "foot": "left_fore", "under": 78}


def horse(*lengths: float, aim: dict[str, Any] | None = None) -> HorseSummary:
    """A horse with this toe after each trim, and its aim."""
    days = ["2026-05-01", "2026-06-12", "2026-07-24", "2026-09-04", "2026-10-16", "2026-11-20"]
    taken = [(day, length + 8, length) for day, length in zip(days, lengths, strict=False)]
    return summary(*toes(*taken), aims=[aim or AIM])


@pytest.mark.parametrize(
    ("lengths", "going"),
    [((84, 84, 84, 90), "away"), ((96, 96, 96, 88), "nearer"), ((88, 88, 88, 88.2), "steady"), ((95,), "first")],
)
def test_where_a_foot_off_its_aim_is_going(lengths: tuple[float, ...], going: str) -> None:
    """Against the visit before, by more than two readings can differ."""
    assert [one.going for one in off_aim([horse(*lengths)])] == [going]


@pytest.mark.parametrize("lengths", [(84, 80, 77), (78.2,)])
def test_a_foot_at_its_aim_or_within_the_error_is_not_told(lengths: tuple[float, ...]) -> None:
    """Reached, or off by no more than a reading may be wrong."""
    assert off_aim([horse(*lengths)]) == []


def test_an_aim_to_come_over_is_left_downwards() -> None:
    """A shorter toe than the visit before moves away from an aim of 90 or more."""
    found = off_aim([horse(84, 84, 84, 80, aim={"measure": "toe_length", "foot": "left_fore", "over": 90})])

    assert [(one.going, one.aimed.away) for one in found] == [("away", -10)]


@pytest.mark.parametrize(
    ("long", "aim", "share"), [(88, {"under": 78}, 10 / 78), (80, {"over": 90}, 10 / 90), (120, {"under": 80}, 1 / 2)]
)
def test_how_far_off_is_told_as_a_share_of_the_aim(long: float, aim: dict[str, float], share: float) -> None:
    """So that an angle and a length can be compared: 10 mm off an aim of 78 are 10 in 78."""
    (found,) = off_aim([horse(long, aim={"measure": "toe_length", "foot": "left_fore", **aim})])

    assert share_of(found.aimed) == pytest.approx(share)


def test_those_that_move_away_stand_first_then_the_farthest() -> None:
    """Whatever their names."""
    away, far, near = horse(84, 84, 84, 88), horse(110, 110, 110, 110), horse(90, 90, 90, 90)
    found = off_aim([near, far, away])

    assert [one.horse for one in found] == [away, far, near]

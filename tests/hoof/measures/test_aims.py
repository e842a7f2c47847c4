"""The aims of a trim, and how far each foot is from it."""

from __future__ import annotations

from typing import Any

import pytest

from recordgen.hoof.measures.aims import AimAtFoot
from recordgen.records.models.names import FEET
from tests.support.horse_records import summary, visit


def aimed(*aims: dict[str, Any], **found: Any) -> tuple[AimAtFoot, ...]:
    """The aims of a horse whose left fore was measured like this after the trim."""
    return summary(visit("2026-10-14", left_fore=found), aims=aims).aims


FLARE = {"wall": {"medial heel": {"flare": 4}}}


@pytest.mark.parametrize(("under", "away"), [(2, 2), (4, 0), (5, 0)])
def test_an_aim_under_a_value(under: float, away: float) -> None:
    """How much there is still to come down; nothing where it is there."""
    (found,) = aimed({"measure": "flare", "zone": "medial heel", "under": under}, **FLARE)

    assert (found.value, found.away, found.reached) == (4, away, away == 0)


@pytest.mark.parametrize(("over", "away"), [(52, -2), (50, 0), (48, 0)])
def test_an_aim_over_a_value(over: float, away: float) -> None:
    """Below zero: it is still to go up."""
    (found,) = aimed({"measure": "toe_angle", "over": over}, after={"toe_angle": 50})

    assert (found.away, found.reached) == (away, away == 0)


@pytest.mark.parametrize(("medial", "lateral", "away"), [(35, 39, 2), (39, 35, -2), (36, 35, 0)])
def test_a_difference_may_lie_to_either_side(medial: float, lateral: float, away: float) -> None:
    """Heels within two millimetres of each other, whichever is higher."""
    heels = {"heel_height": {"medial": medial, "lateral": lateral}}
    (found,) = aimed({"measure": "heel_difference", "under": 2}, after=heels)

    assert found.away == away


@pytest.mark.parametrize(("way", "within", "beyond"), [("rule", 81, 82), ("photograph", 83, 84)])
def test_what_is_within_error_is_told_as_such(way: str, within: float, beyond: float) -> None:
    """A millimetre too long by a rule that is out by one is no shortcoming; two are, and twice that by photograph."""
    seen = [
        visit("2026-10-14", left_fore={"after": {"toe_length": mm}}, methods={"toe_length": way})
        for mm in (within, beyond)
    ]
    near, far = (summary(one, aims=[{"measure": "toe_length", "under": 80}]).aims[0] for one in seen)

    assert (near.within_error, far.within_error) == (True, False)


@pytest.mark.parametrize(("mm", "within"), [(82, True), (83, False)])
def test_an_aim_among_others_that_may_be_error_has_to_be_missed_by_more(mm: float, within: bool) -> None:
    """One bar for all aims of a horse: where three feet are a millimetre too long, two millimetres say little."""
    feet = {foot: {"after": {"toe_length": 81}} for foot in FEET} | {"left_fore": {"after": {"toe_length": mm}}}
    found = summary(visit("2026-10-14", **feet), aims=[{"measure": "toe_length", "under": 80}]).aims

    assert [one.within_error for one in found] == [within, True, True, True]


def test_an_aim_is_for_one_foot_or_for_all_that_were_measured() -> None:
    """A foot that was never measured says nothing."""
    toes = {"after": {"toe_length": 82}}
    seen = visit("2026-10-14", left_fore=toes, right_fore=toes, left_hind={})
    aims = [{"measure": "toe_length", "under": 80}, {"measure": "toe_length", "under": 80, "foot": "RF"}]

    assert [one.foot for one in summary(seen, aims=aims).aims] == ["left_fore", "right_fore", "right_fore"]


def test_an_aim_that_is_missed_again_and_again_is_missed_for_sure() -> None:
    """A millimetre too much may be the reading once, and not at eight visits."""
    aims = [{"measure": "toe_length", "under": 80}]
    visits = [visit(f"2026-0{month}-14", left_fore={"after": {"toe_length": 81}}) for month in range(1, 9)]
    once, often = (summary(*visits[:count], aims=aims).aims[0] for count in (1, 8))

    assert (once.within_error, often.within_error) == (True, False)
    assert (once.away, often.away) == (1, 1)

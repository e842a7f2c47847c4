"""A sole that gives, changes its shape or is nearly gone, and what shows at the hairline and the white line."""

from __future__ import annotations

from typing import Any

import pytest

from tests.support.caution_cases import DAY, LATER, cautions, grooves, raised_by, rules, wall
from tests.support.horse_records import REFERENCE, visit

GIVES = {"sole": {"gives": True}}


@pytest.mark.parametrize(
    ("also", "expected"),
    [
        ({"pulse": "raised"}, True),
        ({"pulse": "strong"}, True),
        ({"heat": True}, True),
        ({"pulse": "usual", "heat": False}, False),
        ({}, False),
    ],
)
def test_a_sole_that_gives_with_warmth_or_pulse_is_for_now(also: dict[str, Any], expected: bool) -> None:
    """At one visit, or one after the other; on the same foot."""
    together = cautions(visit(DAY, left_fore={**GIVES, **also}))
    later = rules(visit(DAY, left_fore=GIVES), visit(LATER, left_fore=also))
    apart = raised_by(left_fore=GIVES, right_fore=also)

    assert ([one.level for one in together if one.rule == "gives-and-warm"] == ["call now"]) is expected
    assert ("gives-and-warm" in later) is expected
    assert "gives-and-warm" not in apart


@pytest.mark.parametrize(
    ("later", "open_still"),
    [
        ({"sole": {"gives": False}}, False),
        ({"pulse": "usual", "heat": False}, False),
        ({"pulse": "usual"}, True),
        ({"heat": False}, True),
        ({"landing": "flat"}, True),
    ],
)
def test_it_ends_by_the_sole_or_by_both_signs(later: dict[str, Any], open_still: bool) -> None:
    """One of two signs that is as usual is not enough."""
    first = visit(DAY, left_fore={**GIVES, "pulse": "strong", "heat": True})

    assert ("gives-and-warm" in rules(first, visit(LATER, left_fore=later))) is open_still


@pytest.mark.parametrize(
    ("found", "rule", "level"),
    [
        ({"sole": {"shape": "flat"}}, "sole-flat", "call today"),
        ({"sole": {"shape": "bulging"}}, "sole-bulging", "call now"),
        ({"hairline_dip": True}, "hairline-dip", "call now"),
        (wall(white_line_blood=True), "white-line-blood", "call today"),
    ],
)
def test_what_shows_that_the_foot_has_changed_inside(found: dict[str, Any], rule: str, level: str) -> None:
    """Off the grass, as few steps as can be, a deep bed, and no trimming until the vet agrees.

    Source: The Veterinary Care of the Horse, p. 256 (a dip at the coronet); TheHorse, on Belknap, AAEP 2017 (the sole
    bulges). How urgent: Judgement.
    """
    (one,) = cautions(visit(DAY, left_fore=found))

    assert (one.rule, one.level, one.no_trim) == (rule, level, True)
    assert all(words in one.text for words in ("Off the grass", "few steps", "deep soft bed", "No trimming until"))


@pytest.mark.parametrize(
    "found", [{"sole": {"shape": "hollow"}}, {"hairline_dip": False}, wall(white_line_blood=False), wall(bruise=True)]
)
def test_what_is_as_usual_raises_nothing(found: dict[str, Any]) -> None:
    """A hollow sole, no dip, no blood; and a bruise is not blood in the white line."""
    assert raised_by(left_fore=found) == []


def test_a_sole_that_was_flat_and_bulges_now_is_told_as_that() -> None:
    """The later shape stands alone, and a hollow one ends both."""
    flat, bulging, hollow = ({"sole": {"shape": shape}} for shape in ("flat", "bulging", "hollow"))

    assert rules(visit(DAY, left_fore=flat), visit(LATER, left_fore=bulging)) == ["sole-bulging"]
    assert rules(visit(DAY, left_fore=bulging), visit(LATER, left_fore=hollow)) == []


@pytest.mark.parametrize(("depth", "expected"), [(0, True), (2.9, True), (3, True), (3.1, False), (12, False)])
def test_a_sole_or_a_groove_near_nothing(depth: float, expected: bool) -> None:
    """Three millimetres and less, at the first visit already; of two grooves the lower one counts.

    Judgement
    """
    assert ("sole-shallow" in raised_by(left_fore={"sole": {"depth": depth}})) is expected
    assert ("groove-shallow" in raised_by(left_fore=grooves(12, depth))) is expected


def test_one_groove_alone_does_not_end_it() -> None:
    """Both sides must be deeper."""
    low = visit(DAY, left_fore=grooves(2, 9))

    assert rules(low, visit(LATER, left_fore=grooves(9, None))) == ["groove-shallow"]
    assert rules(low, visit(LATER, left_fore=grooves(9, 9))) == []


def test_no_trim_is_marked_wherever_it_is_said() -> None:
    """The owner's text and what the plan of rounds goes by are the same."""
    for key, words in REFERENCE.cautions.items():
        assert words.no_trim == ("No trimming until the vet agrees" in (words.do_not or "")), key

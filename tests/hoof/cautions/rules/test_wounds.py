"""Rules for an opened foot: where an object was, an abscess that had drained, and blood that the trim drew."""

from __future__ import annotations

from typing import get_args

import pytest

from recordgen.records.models.foot import Object
from tests.support.caution_cases import DAY, DRAINED, LATER, cautions, raised_by, rules
from tests.support.horse_records import visit

PLACES = get_args(Object.model_fields["where"].annotation)
FROG = ("frog", "central groove", "medial groove", "lateral groove")


@pytest.mark.parametrize("where", PLACES)
def test_an_object_taken_out_of_the_frog_is_for_now(where: str) -> None:
    """And out of a groove beside it or in it; elsewhere it is for today. The horse is not walked.

    Source: Adams and Stashak, Lameness in Horses, 7th ed., p. 481 (the middle of the frog is a zone of risk); Findley,
    Equine Vet J, as reported by Horse & Hound (the middle groove did worst).
    """
    (found,) = cautions(visit(DAY, left_fore={"object": {"what": "nail", "where": where, "still_in": False}}))
    deep = ("object-out-of-frog", "call now") if where in FROG else ("object-taken-out", "call today")

    assert (found.rule, found.level) == deep
    assert ("Do not walk the horse" in found.text) is (where in FROG)
    assert "tetanus" in found.text


@pytest.mark.parametrize("where", PLACES)
def test_an_object_that_is_in_is_for_now_wherever_it_is(where: str) -> None:
    """And says nothing yet of one taken out."""
    assert raised_by(left_fore={"object": {"what": "nail", "where": where}}) == ["object-in-foot"]


@pytest.mark.parametrize("state", [None, "suspected", "draining", "drained"])
def test_an_abscess_asks_about_tetanus(state: str | None) -> None:
    """However far it was when it was first recorded.

    Source: The Veterinary Care of the Horse, p. 215.
    """
    (found,) = cautions(visit(DAY, left_fore={"abscess": {"where": "sole", "state": state}}))

    assert "tetanus cover" in found.meanwhile


def test_an_abscess_that_drained_after_it_was_told_is_over() -> None:
    """The vet was asked already; one that comes anew and drained is told again."""
    first, drained = visit(DAY, left_fore={"abscess": {"where": "sole"}}), visit(LATER, left_fore=DRAINED)
    anew = visit("2026-12-09", left_fore=DRAINED)

    assert rules(first, drained) == []
    assert "abscess-drained" in rules(first, drained, anew)


@pytest.mark.parametrize(("drew", "expected"), [(True, ["drew-blood"]), (False, []), (None, [])])
def test_blood_drawn_by_the_trim(drew: bool | None, expected: list[str]) -> None:
    """The vet today, for tetanus; a next trim without blood does not undo it.

    Source: The Veterinary Care of the Horse, p. 215; Butler Professional Farrier School.
    """
    found = visit(DAY, left_fore={"drew_blood": drew})

    assert rules(found) == expected
    assert rules(found, visit(LATER, left_fore={"drew_blood": False})) == expected


def test_a_wound_ends_where_it_was_found_healed() -> None:
    """At its own place alone."""
    both = [visit(DAY, left_fore={"wound": {"where": where}}) for where in ("coronet", "heel bulbs")]
    healed = visit(LATER, left_fore={"wound": {"where": "coronet", "healed": True}})

    assert [one.about for one in cautions(*both, healed)] == ["heel bulbs"]

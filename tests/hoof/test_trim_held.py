"""Reasons that hold a trim back until the vet agrees, and their end."""

from __future__ import annotations

from typing import Any

import pytest

from recordgen.hoof.rounds.rounds import wishes_of
from recordgen.records.models.visit import Visit
from tests.support.caution_cases import CASES, DAY, JUST_AFTER, LATER, Values, obel
from tests.support.horse_records import REFERENCE, summary, visit

STRONG: Values = {"left_fore": {"pulse": "strong"}}
PLAN: Values = {"by": "Dr Sage", "words": "little and often", "weeks": 4}


def held(*visits: Visit, **values: Any) -> list[str]:
    """The rules that hold a trim back."""
    return [one.rule for one in summary(*visits, today=JUST_AFTER, **values).held]


def agreed(day: str, yes: bool = True) -> Visit:
    """A later visit that tells what the vet said of a trim on a day."""
    said = {"date": day, "by": "Dr Sage", "kind": "advised", "trim_agreed": yes}
    return visit(LATER, vet=[said])


@pytest.mark.parametrize("rule", CASES)
def test_a_caution_holds_a_trim_back_where_it_says_so(rule: str) -> None:
    """Those that say no trimming until the vet agrees, and no other; such a horse has no wish for a round."""
    case = CASES[rule]
    found = summary(*case.visits(), today=JUST_AFTER, **(case.horse or {}))
    no_trim = any(REFERENCE.cautions[one.rule].no_trim for one in found.cautions)

    assert (rule in [one.rule for one in found.held]) is REFERENCE.cautions[rule].no_trim
    assert (wishes_of([found]) == []) is no_trim


@pytest.mark.parametrize(("day", "expected"), [("2026-10-13", ["pulse"]), (DAY, []), ("2026-11-01", [])])
def test_the_vet_lets_it_go_from_the_day_it_was_recorded_on(day: str, expected: list[str]) -> None:
    """An agreement of before is about something else."""
    assert held(visit(DAY, **STRONG), agreed(day)) == expected
    assert held(visit(DAY, **STRONG), vet_plan={**PLAN, "date": day}) == expected


def test_a_later_no_takes_an_agreement_back() -> None:
    """And goes before an older plan; a newer plan agrees again."""
    first, yes, no = visit(DAY, **STRONG), agreed("2026-11-01"), agreed("2026-11-02", yes=False)

    assert held(first, yes, no) == ["pulse"]
    assert held(first, yes, no, vet_plan={**PLAN, "date": "2026-11-01"}) == ["pulse"]
    assert held(first, yes, no, vet_plan={**PLAN, "date": "2026-11-03"}) == []


def test_a_plan_without_an_interval_agrees_to_nothing() -> None:
    """Nor does one that is over."""
    words = {"by": "Dr Sage", "words": "box rest", "date": "2026-10-20"}

    assert held(visit(DAY, **STRONG), vet_plan=words) == ["pulse"]
    assert held(visit(DAY, **STRONG), vet_plan={**words, "weeks": 4, "until": "2026-10-10"}) == ["pulse"]


def test_what_is_recorded_again_holds_again() -> None:
    """The agreement was about what was known then."""
    assert held(visit(DAY, **STRONG), agreed("2026-11-01"), visit("2026-11-26", **STRONG)) == ["pulse"]


def test_it_goes_with_the_caution() -> None:
    """Ended by a record or a vet, nothing is held back any more."""
    usual = visit(LATER, left_fore={"pulse": "usual"})

    assert held(visit(DAY, **STRONG), usual) == []
    assert wishes_of([summary(visit(DAY, **STRONG), usual)]) != []


def test_what_is_summed_up_is_told_once() -> None:
    """The parts of several signs are not told beside them."""
    assert held(visit(DAY, signs=["leans back"], lameness=obel(1), **STRONG)) == ["signs-together"]

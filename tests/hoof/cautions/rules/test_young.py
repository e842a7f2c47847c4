"""Rules for the young: by age at its edge, just under it and over it."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from tests.support.caution_cases import DAY, FOAL, LATER, Values, aaep, book_of, cautions, obel, raised_by, rules
from tests.support.horse_records import visit

BEND: Values = {"deviation": "turns out at the fetlock"}


@pytest.mark.parametrize(
    ("found", "rule"),
    [
        ({"lameness": aaep(0.5)}, "foal-lame"),
        ({"lameness": obel(1)}, "foal-lame"),
        ({"lameness": {"scale": "0-10", "grade": 1}}, "foal-lame"),
        ({"left_fore": {"heat": True}}, "foal-hot"),
        ({"left_fore": {"bears_weight": "less"}}, "foal-spares"),
        ({"left_fore": {"bears_weight": "not"}}, "foal-spares"),
    ],
)
@pytest.mark.parametrize(("born", "expected"), [("2025-10-15", True), ("2025-10-14", False), ("2025", True)])
def test_a_foal_that_is_lame_or_hot_is_for_now(found: dict[str, Any], rule: str, born: str, expected: bool) -> None:
    """To the day before its first birthday; where the year alone is told, as long as it can be a foal.

    Source: TheHorse, Septic Arthritis; Janicek, bveh.com, Infectious lameness in foals. Until when: Judgement.
    """
    levels = {one.rule: one.level for one in cautions(visit(DAY, **found), born=born)}

    assert (levels.get(rule) == "call now") is expected


@pytest.mark.parametrize(
    "found", [{"lameness": aaep(0)}, {"left_fore": {"heat": False, "bears_weight": "fully", "pulse": "usual"}}]
)
def test_a_sound_foal_raises_nothing(found: dict[str, Any]) -> None:
    """Nor does a face that may show pain make it lame."""
    assert rules(visit(DAY, **found), today=date(2026, 10, 14), **FOAL) == []
    assert "foal-lame" not in rules(visit(DAY, lameness={"scale": "Horse Grimace", "grade": 8}), **FOAL)


def test_a_yearling_that_is_sound_is_no_lame_foal_any_more() -> None:
    """A caution raised of the foal ends by the same scale, whatever its age by then."""
    first = visit(DAY, lameness=aaep(2), left_fore={"heat": True, "bears_weight": "less"})
    grown = visit("2027-06-01", lameness=aaep(0), left_fore={"heat": False, "bears_weight": "fully"})

    assert {"foal-lame", "foal-hot", "foal-spares"} <= set(rules(first, **FOAL))
    assert [rule for rule in rules(first, grown, **FOAL) if rule != "overdue"] == []


@pytest.mark.parametrize(
    ("born", "expected"),
    [
        ("2026-10-01", "deviation-short"),
        ("2026-07-15", "deviation-short"),
        ("2026-07-14", "deviation"),
        ("2024-10-15", "deviation"),
        ("2024-10-14", None),
        ("2026", "deviation-short"),
        ("2025", "deviation"),
        ("2024", "deviation"),
        ("2023", None),
        (None, "deviation"),
    ],
)
def test_a_bend_by_age(born: str | None, expected: str | None) -> None:
    """Under three months time is short; a year alone counts as the youngest it can be.

    Source: Ducharme, as reported by American Farriers Journal, article 7974 (most growth at the fetlock is over by 100
    days). Three whole months: Judgement. Two years: Common practice, no source.
    """
    found = [one for one in rules(visit(DAY, left_fore=BEND), born=born) if one.startswith("deviation")]

    assert found == ([expected] if expected else [])


def test_a_bend_of_a_young_limb_says_how_short_the_time_is() -> None:
    """The vet this week, and no trim to straighten it before."""
    (found,) = cautions(visit(DAY, left_fore=BEND), born="2026-09-01", today=date(2026, 10, 14))

    assert "this week" in found.meanwhile
    assert "short time" in found.meanwhile
    assert found.do_not == "No trim to straighten it before the vet has seen it."


@pytest.mark.parametrize("words", ["none", "None.", "no", "straight"])
def test_a_straight_limb_ends_it(words: str) -> None:
    """And raises nothing; other words never end a bend."""
    straight = visit(LATER, left_fore={"deviation": words})

    assert rules(visit(DAY, left_fore=BEND), straight, born="2026-09-01") == []
    assert raised_by(left_fore={"deviation": words}) == []


def test_past_three_months_it_goes_on_as_that_of_an_older_limb() -> None:
    """The short time is over and the bend is not: it keeps its first day, and nothing of it ended."""
    visits = visit(DAY, left_fore=BEND), visit(LATER, left_fore=BEND), visit("2026-12-09", left_fore=BEND)
    book = book_of(*visits, born="2026-09-01")

    assert [(one.rule, one.since, one.seen_again) for one in book.open] == [("deviation", date(2026, 10, 14), 2)]
    assert book.closed == ()

"""Remarks of `check` on care notes as a visit is written: withheld, run out, or in words that nobody can weigh."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.summary import compute_remarks
from recordgen.records.models.visit import Visit
from tests.support.horse_records import TODAY, WAYS, record, visit

SORE: dict[str, Any] = {"left_fore": {"frog": {"infection": "deep groove", "painful": True}}}
NAIL: dict[str, Any] = {"left_fore": {"object": {"what": "nail", "where": "sole"}}}


def told(*visits: Visit, **values: Any) -> list[tuple[tuple[str | int, ...], str]]:
    """The remarks on care notes, with their places."""
    found = compute_remarks(record(*visits, **values), WAYS, TODAY)
    return [(one.steps, one.text) for one in found]


def test_a_note_that_is_withheld_is_told_with_its_place() -> None:
    """The trimmer sees it before the owner does."""
    (one,) = told(visit("2026-10-14", care=["dry-bed", "daily-grooves"], **SORE))

    assert one == (
        ("care", 1),
        "daily-grooves may not stand beside painful-groove (left fore), so the pages withhold it and say why",
    )


def test_a_note_given_before_is_told_too() -> None:
    """It has no place in the visit that raised the caution."""
    ((steps, text),) = told(visit("2026-09-02", care=["wet-season-frog"]), visit("2026-10-14", **SORE))

    assert steps == ()
    assert text.startswith("wet-season-frog may not stand beside painful-groove (left fore)")


def test_own_words_beside_a_call_to_the_vet_are_asked_about() -> None:
    """No table tells what they ask of the horse."""
    ((steps, text),) = told(visit("2026-10-14", care=["Walk in hand on the lane"], **NAIL))

    assert steps == ("care", 0)
    assert text.startswith("'Walk in hand on the lane' stands beside object-in-foot (left fore), and nobody but you")


@pytest.mark.parametrize("later", [{"care": ["daily-grooves"]}, {"care_ends": True}, {"care_ends": ["daily-grooves"]}])
def test_a_note_that_ran_out_is_told_unless_the_visit_speaks_of_it(later: dict[str, Any]) -> None:
    """Nothing ends without the trimmer knowing."""
    given = visit("2026-09-02", care=["daily-grooves", "dry-bed"])

    assert told(given, visit("2026-10-14")) == [((), "daily-grooves was until this visit, so it has ended")]
    assert told(given, visit("2026-10-14", **later)) == []


def test_of_a_horse_that_has_left_nothing_is_told() -> None:
    """Nobody reads its jobs."""
    left = {"date": date(2026, 11, 1)}

    assert told(visit("2026-10-14", care=["daily-grooves"], **SORE), left=left) == []


def test_no_note_is_suggested_that_may_not_stand() -> None:
    """An infection of one foot would suggest a brush, but another foot is too sore for it."""
    one: dict[str, Any] = {"right_fore": {"frog": {"infection": "surface"}}}

    assert [text for _, text in told(visit("2026-10-14", **one)) if "daily-grooves" in text]
    assert not [text for _, text in told(visit("2026-10-14", **one, **SORE)) if "daily-grooves" in text]

"""The watch list over all horses."""

from __future__ import annotations

from datetime import date

from recordgen.hoof.practice.watch import watch_list
from tests.support.horse_records import summary, visit

TODAY = date(2026, 11, 27)
NAIL = {"object": {"what": "nail", "where": "sole"}}
SORE = {"frog": {"infection": "deep groove", "painful": True}}


def test_the_most_urgent_stand_first_then_the_oldest() -> None:
    """A call for the vet now before grooves, and of two grooves the one that is open longer."""
    young = summary(visit("2026-11-20", left_hind=SORE), today=TODAY, name="Ash")
    old = summary(visit("2026-10-20", left_hind=SORE), today=TODAY, name="Elm")
    urgent = summary(visit("2026-11-25", left_fore=NAIL), today=TODAY, name="Oak")
    found = watch_list([young, old, urgent])

    assert found[0].horse.horse.name == "Oak"
    assert [(one.horse.horse.name, one.days) for one in found if "groove" in one.caution.rule] == [
        ("Elm", 38),
        ("Ash", 7),
    ]


def test_a_late_trim_is_as_old_as_it_is_late() -> None:
    """Counted from the last day of the horse's own window, as everywhere."""
    late = summary(visit("2026-08-01"), today=TODAY)
    (found,) = watch_list([late])

    assert late.due is not None
    assert (found.caution.rule, found.days) == ("overdue", late.due.overdue_days)


def test_what_another_caution_sums_up_is_told_once() -> None:
    """Several signs stand for each of them."""
    many = summary(visit("2026-11-25", signs=["leans back"], left_fore={"pulse": "strong", "heat": True}), today=TODAY)
    parts = [one for one in many.cautions if one.part_of]

    assert parts
    assert [one.caution for one in watch_list([many])] == [one for one in many.cautions if not one.part_of]

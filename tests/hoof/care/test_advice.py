"""Care notes that the trimmer may consider."""

from __future__ import annotations

from datetime import date
from typing import Any

import pytest

from recordgen.hoof.care.advice import Advice, care_advice
from recordgen.hoof.care.signs import SIGNS
from recordgen.hoof.cautions.cautions import compute_caution_book
from recordgen.hoof.cautions.timeline import Timeline
from recordgen.hoof.context import Context
from recordgen.records.models.visit import Visit
from tests.support.horse_records import REFERENCE, foot, horse, practice, visit, ways

TODAY = date(2026, 6, 1)
DAY = "2026-05-20"
DEEP = {"frog": {"central_groove_depth": 12}}
INFECTED = {"frog": {"infection": "surface"}}


def advice(*visits: Visit, by: Context | None = None, today: date = TODAY, **values: Any) -> tuple[Advice, ...]:
    """The advice about a horse with these visits."""
    by, animal = by or ways(), horse(**values)
    return care_advice(animal, visits, by, compute_caution_book(Timeline(animal, visits, by), None, today).open, today)


def reasons(*visits: Visit, **values: Any) -> list[tuple[str, str]]:
    """Each reason with the note that is suggested."""
    return [(one.reason, one.note) for one in advice(*visits, **values)]


def test_a_deep_groove_that_no_note_is_about() -> None:
    """The reason, the note, the day, the foot, where it stands, and a line to read."""
    assert advice(visit(DAY, left_hind=DEEP)) == (
        Advice(
            reason="deep groove",
            note="daily-grooves",
            day=date(2026, 5, 20),
            foot="left_hind",
            steps=("feet", "left_hind", "frog", "central_groove_depth"),
            text="a deep middle groove (left hind) recorded on 20 May 2026, and no care note is about it: "
            "consider daily-grooves",
        ),
    )


@pytest.mark.parametrize(
    ("found", "reason", "steps"),
    [
        ({"frog": {"infection": "deep groove"}}, "infection of the frog", ("frog", "infection")),
        ({"frog": {"central_groove_depth": 10}}, "deep groove", ("frog", "central_groove_depth")),
        ({"wall": {"toe": {"separation": {}}}}, "gap at the white line", ("wall", "toe", "separation")),
        ({"wall": {"toe": {"crack": {"length": 5}}}}, "crack", ("wall", "toe", "crack")),
        ({"wall": {"lateral heel": {"chip": 10}}}, "chip", ("wall", "lateral heel", "chip")),
        ({"sole": {"gives": True}}, "tender sole", ("sole", "gives")),
        ({"sole": {"bruise": True}}, "tender sole", ("sole", "bruise")),
        ({"pulse": "raised"}, "warmth or pulse", ("pulse",)),
        ({"heat": True}, "warmth or pulse", ("heat",)),
    ],
)
def test_what_is_seen_on_a_foot(found: dict[str, Any], reason: str, steps: tuple[str, ...]) -> None:
    """Each reason with the place of what was recorded."""
    (one,) = advice(visit(DAY, right_fore=found))

    assert (one.reason, one.foot, one.steps) == (reason, "right_fore", ("feet", "right_fore", *steps))


@pytest.mark.parametrize(
    ("found", "reason", "steps"),
    [
        ({"sore_after_last_trim": True}, "sore after trimming", ("sore_after_last_trim",)),
        ({"condition": {"crest": 3}}, "crest or condition", ("condition", "crest")),
        ({"condition": {"henneke": 7}}, "crest or condition", ("condition", "henneke")),
        ({"condition": {"henneke": 3}}, "crest or condition", ("condition", "henneke")),
        ({"keeping": {"boots": "fores, on the lanes"}}, "boots", ("keeping", "boots")),
    ],
)
def test_what_is_seen_of_the_horse(found: dict[str, Any], reason: str, steps: tuple[str, ...]) -> None:
    """Crest and condition: Giles et al. 2015, BMC Vet Res 11; Henneke et al. 1983, Equine Vet J 15:371-372."""
    (one,) = advice(visit(DAY, **found))

    assert (one.reason, one.foot, one.steps) == (reason, None, steps)


@pytest.mark.parametrize(
    "found",
    [
        {"frog": {"central_groove_depth": 9}},
        {"frog": {"infection": "none"}},
        {"wall": {"toe": {"separation": {"length": 0, "depth": 0}, "chip": 9, "flare": 6}}},
        {"sole": {"shedding": True, "sensitive": False}, "pulse": "usual", "heat": False},
    ],
)
def test_what_is_too_little_for_a_note(found: dict[str, Any]) -> None:
    """Below the thresholds, or recorded as not there."""
    usual = {"sore_after_last_trim": False, "condition": {"henneke": 5, "crest": 2}}

    assert advice(visit(DAY, left_fore=found, **usual)) == ()


@pytest.mark.parametrize(
    "found",
    [
        {"frog": {"infection": "painful or bleeding", "central_groove_depth": 15}},
        {"frog": {"infection": "deep groove", "painful": True}},
        {"frog": {"central_groove_depth": 15, "tissue": "creamy"}},
        {"wall": {"toe": {"crack": {"blood": True}}}},
        {"wall": {"toe": {"crack": {"moisture": True}}}},
    ],
)
def test_what_is_the_vets_is_left_to_the_vet(found: dict[str, Any]) -> None:
    """No brush is suggested for what hurts or bleeds; the caution speaks.

    Source: Adams and Stashak, Lameness in Horses, 7th ed., p. 1126.
    """
    assert advice(visit(DAY, left_fore=found)) == ()


def test_a_note_in_force_that_suits_meets_the_reason() -> None:
    """Be it of an earlier visit; one about something else does not."""
    before, last = visit("2026-04-01", care=["wet-season-frog"]), visit(DAY, left_fore=DEEP)

    assert advice(before, last) == ()
    assert reasons(visit(DAY, left_fore=DEEP, care=["boots-fit"])) == [("deep groove", "daily-grooves")]
    assert reasons(before, visit(DAY, left_fore=DEEP, care_ends=["wet-season-frog"])) == [
        ("deep groove", "daily-grooves")
    ]


def test_own_words_in_force_may_be_about_it() -> None:
    """Nobody can tell, so nothing is said."""
    assert advice(visit(DAY, left_fore=DEEP, care=["Brush the grooves after the lanes"])) == ()


def test_one_note_is_suggested_once() -> None:
    """For the first reason of all that it suits, on the first foot that has it."""
    last = visit(DAY, left_hind={"frog": {"infection": "surface", "central_groove_depth": 12}}, left_fore=INFECTED)

    assert reasons(last) == [("infection of the frog", "daily-grooves")]
    assert advice(last)[0].foot == "left_fore"


def test_only_the_last_visit_counts() -> None:
    """A finding gone by now needs no note."""
    assert (
        advice(visit("2026-04-01", left_fore=DEEP), visit(DAY, left_fore={"frog": {"central_groove_depth": 4}})) == ()
    )


def test_no_advice_without_a_visit_or_for_a_horse_that_left() -> None:
    """There is nobody to advise."""
    assert advice() == ()
    assert advice(visit(DAY, left_fore=DEEP), left={"date": "2026-05-30"}) == ()


def test_a_foal_is_handled() -> None:
    """By its age on the day, wherever nothing is recorded."""
    (one,) = advice(visit(DAY), born="2026-03-01")

    assert (one.reason, one.note, one.steps) == ("foal", "foal-handling", ())
    assert one.text == "a foal, and no care note is about handling it: consider foal-handling"


def test_an_own_note_of_the_practice_comes_first() -> None:
    """It was written for its horses, with what it suits."""
    own = REFERENCE.care["daily-grooves"]
    by = Context.of(practice(), REFERENCE.model_copy(update={"care": {"our-brush": own, **REFERENCE.care}}))

    assert reasons(visit(DAY, left_fore=DEEP), by=by) == [("deep groove", "our-brush")]


WINTER, SUMMER = date(2026, 11, 15), date(2026, 6, 15)


@pytest.mark.parametrize(
    ("today", "settings", "whose"),
    [
        (WINTER, {"country": "GB"}, "in the north"),
        (WINTER, {}, "in the north (practice.yaml names no country)"),
        (SUMMER, {"country": "NZ"}, "in the south"),
        (SUMMER, {"country": "GB", "seasons": {"wet_months": [6]}}, "in this practice"),
    ],
)
def test_wet_months_bring_back_what_they_brought_last_year(today: date, settings: dict[str, Any], whose: str) -> None:
    """With the day on which it was recorded, and whose months they are."""
    before, last = visit("2026-02-01", left_fore=INFECTED), visit(today.isoformat())
    (one,) = advice(before, last, by=ways(**settings), today=today)

    assert (one.reason, one.note, one.day) == ("wet months", "wet-season-frog", date(2026, 2, 1))
    assert f"recorded on 1 February 2026, these are wet months {whose}, and no care note" in one.text


@pytest.mark.parametrize(("today", "country"), [(SUMMER, "GB"), (WINTER, "NZ")])
def test_dry_months_do_not_speak_of_wet(today: date, country: str) -> None:
    """Signs of wet ground are spoken of when the ground is wet."""
    before, last = visit("2026-02-01", left_fore=INFECTED), visit(today.isoformat())

    assert advice(before, last, by=ways(country=country), today=today) == ()


def test_dry_months_bring_back_cracks() -> None:
    """With the note for dry cracks, which is not suggested in the wet."""
    before = visit("2025-09-01", left_fore={"wall": {"toe": {"chip": 20}}})

    assert reasons(before, visit(DAY), today=SUMMER) == [("dry months", "dry-cracks")]
    assert reasons(before, visit(DAY), today=WINTER) == []


def test_what_was_recorded_more_than_a_year_ago_does_not_come_back() -> None:
    """A season later it is another foot."""
    before = visit("2025-02-01", left_fore=INFECTED)

    assert advice(before, visit("2026-11-15"), today=WINTER) == ()


def test_a_note_out_of_its_months_is_not_suggested() -> None:
    """The next one that suits is."""
    care = {key: words for key, words in REFERENCE.care.items() if key in ("wet-season-frog", "dry-bed")}
    by = Context.of(practice(), REFERENCE.model_copy(update={"care": care}))

    assert reasons(visit(DAY, left_fore=INFECTED), by=by, today=SUMMER) == [("infection of the frog", "dry-bed")]
    assert reasons(visit(DAY, left_fore=INFECTED), by=by, today=WINTER) == [
        ("infection of the frog", "wet-season-frog")
    ]


@pytest.mark.parametrize("reason", SIGNS)
def test_a_foot_of_which_nothing_is_recorded_shows_nothing(reason: Any) -> None:
    """No reason takes silence for a sign."""
    bare = visit(DAY, left_fore=foot().model_dump(exclude_none=True))

    assert list(SIGNS[reason](bare)) == []

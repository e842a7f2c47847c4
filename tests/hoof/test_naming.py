"""Feet, places, days and sizes as readers see them."""

from datetime import date
from typing import get_args

import pytest

from recordgen.days import MONTHS
from recordgen.hoof.naming import Naming
from recordgen.records.models.foot import AbscessPlace, Object, Wound
from recordgen.records.models.names import FEET, PLACES
from tests.support.horse_records import NAMING, REFERENCE, practice

NEAR = Naming.of(practice(feet="near and off"), REFERENCE.phrases)


def test_feet_are_left_and_right_or_near_and_off() -> None:
    """Near is left, off is right; the practice chooses."""
    assert [NAMING.foot(foot) for foot in FEET] == ["left fore", "right fore", "left hind", "right hind"]
    assert [NEAR.foot(foot) for foot in FEET] == ["near fore", "off fore", "near hind", "off hind"]


def test_every_place_has_a_name_of_its_own() -> None:
    """Each place a finding, an object, a wound or an abscess can have is named, no two alike."""
    more = [Object.model_fields["where"].annotation, Wound.model_fields["where"].annotation, get_args(AbscessPlace)[0]]
    places = {*PLACES, *(place for annotation in more for place in get_args(annotation))}

    assert len({NAMING.place(place) for place in places}) == len(places)
    assert NAMING.place("lateral quarter") == "outer quarter"


def test_a_day_in_words() -> None:
    """The month is written out, so that no reader takes it for the day."""
    assert NAMING.day(date(2026, 10, 4)) == "4 October 2026"


def test_months_are_those_of_the_calendar() -> None:
    """Each has the name that the C library's English names give it."""
    assert [date(2026, month, 1).strftime("%B") for month in range(1, 13)] == list(MONTHS)


@pytest.mark.parametrize(
    ("length", "depth", "expected"),
    [
        (18, 3, "18 mm long and 3 mm deep"),
        (18, None, "18 mm long"),
        (None, 5.5, "5.5 mm deep"),
        (0, 5, "0 mm long and 5 mm deep"),
        (None, None, "size not measured"),
    ],
)
def test_a_size_tells_what_was_measured_of_it(length: float | None, depth: float | None, expected: str) -> None:
    """A value not measured is left out, not told as zero."""
    assert NAMING.size(length, depth) == expected


def test_braces_in_facts_stay_as_typed() -> None:
    """A fact is put into its sentence as it is."""
    assert NAMING.phrase("finding_infection", how="{odd}") == "infection, {odd}"

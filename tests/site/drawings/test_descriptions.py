"""The finding of a picture in one sentence."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.hoof.measures.readings import Reading
from recordgen.pictures.charts.growth_rates import RateRow
from recordgen.pictures.feet.growing_out import Defect
from recordgen.site.drawings.descriptions import describe_growing_out, describe_rates, describe_series
from tests.support.horse_records import NAMING

FIRST, LAST = date(2026, 6, 14), date(2026, 10, 14)


def test_a_course_tells_its_first_and_last_value_with_their_days() -> None:
    """After the trim where that was measured, else before it; a visit without a value is passed over."""
    readings = [Reading(LAST, 84, 76), Reading(FIRST, 80, None), Reading(date(2026, 12, 1), None, None)]

    assert describe_series(NAMING, "toe_length", "left_fore", readings) == (
        "Toe length of the left fore: 80 mm on 14 June 2026, 76 mm on 14 October 2026"
    )


def test_one_value_is_told_once() -> None:
    """A first visit has no course."""
    told = describe_series(NAMING, "toe_angle", "right_hind", [Reading(LAST, None, 53.5)])

    assert told == "Toe angle of the right hind: 53.5° on 14 October 2026"


@pytest.mark.parametrize(("value", "words"), [(3, "outer higher by 3 mm"), (-2, "inner higher by 2 mm"), (0, "level")])
def test_heels_are_told_by_their_side(value: float, words: str) -> None:
    """No sign has to be known."""
    told = describe_series(NAMING, "heel_difference", "left_hind", [Reading(LAST, None, value)])

    assert told == f"Heels of the left hind: {words} on 14 October 2026"


def test_growth_is_told_foot_by_foot() -> None:
    """The estimate of each, to a tenth of a millimetre."""
    rows = [RateRow("left_fore", "left fore", 7, 7.84, 9, (), ()), RateRow("left_hind", "left hind", 6, 7, 8, (), ())]

    assert describe_rates(NAMING, rows) == "Growth of each foot in a month: left fore 7.8 mm and left hind 7 mm"


def test_what_grows_out_is_told_with_its_place_and_month() -> None:
    """Each mark of the wall."""
    ring = Defect("toe", "event ring", 33, None, (), None, "about April 2027")

    assert describe_growing_out(NAMING, "left_fore", [ring]) == (
        "The wall of the left fore, rolled flat: a ring, 33 mm below the hairline, will have grown out about April 2027"
    )

"""Which months are wet, dry, warm or cold."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.hoof.care.climate import is_in_season, months_of, whose_months
from recordgen.records.models.reference import CareSeason
from tests.support.horse_records import practice

WINTER_HALF, SUMMER_HALF = (1, 2, 3, 10, 11, 12), (4, 5, 6, 7, 8, 9)


@pytest.mark.parametrize(
    ("season", "north", "south"),
    [
        ("wet", WINTER_HALF, SUMMER_HALF),
        ("cold", WINTER_HALF, SUMMER_HALF),
        ("dry", SUMMER_HALF, WINTER_HALF),
        ("warm", SUMMER_HALF, WINTER_HALF),
    ],
)
def test_the_south_is_half_a_year_from_the_north(
    season: CareSeason, north: tuple[int, ...], south: tuple[int, ...]
) -> None:
    """A practice whose country is not told counts as northern. Halves of a year: Common practice, no source."""
    assert months_of(season, practice(country="GB")) == north
    assert months_of(season, practice()) == north
    assert months_of(season, practice(country="AU")) == south


def test_own_months_come_before_the_country() -> None:
    """Months not wet are dry; of warmth the country still tells. None at all may be wet."""
    own = practice(country="ZA", seasons={"wet_months": [12, 1]})

    assert months_of("wet", own) == (1, 12)
    assert months_of("dry", own) == tuple(range(2, 12))
    assert months_of("warm", own) == WINTER_HALF
    assert months_of("wet", practice(seasons={"wet_months": []})) == ()


def test_it_is_told_whose_months_they_are() -> None:
    """The practice's own, those of its half of the earth, or assumed."""
    own = practice(country="GB", seasons={"warm_months": [7]})

    assert (whose_months("cold", own), whose_months("wet", own)) == ("practice", "north")
    assert whose_months("wet", practice(country="CL")) == "south"
    assert whose_months("wet", practice()) == "assumed"


def test_a_day_is_in_season_by_its_month() -> None:
    """From the first of the month to the last."""
    assert is_in_season("wet", practice(), date(2026, 10, 1))
    assert is_in_season("wet", practice(), date(2027, 3, 31))
    assert not is_in_season("wet", practice(), date(2027, 4, 1))

"""How well measures repeat, against what is published about it."""

import math

import pytest

from recordgen.hoof.measures.measures import smallest_real_change
from tests.support.horse_records import MEASURES, measured, summary, visit

COEFFICIENT = 1.96 * math.sqrt(2)


def sd_of(key: str, way: str) -> float:
    """The SD of one reading that our table holds."""
    return float(MEASURES[key].words.methods[way].sd)


def test_circumference_by_tape() -> None:
    """A repeatability coefficient of 1.8 mm is an SD of 0.649 mm, which our table holds.

    Source: Decurnex, Anderson & Davies 2009, Equine Vet J 41. Derived from: 1.8 over 1.96 times the root of 2.
    """
    assert sd_of("circumference", "tape") == pytest.approx(1.8 / COEFFICIENT, abs=0.0005)
    assert not MEASURES["circumference"].words.methods["tape"].assumed


@pytest.mark.parametrize("coefficient", [0.31, 0.37])
def test_toe_angle_by_gauge(coefficient: float) -> None:
    """0.31 degrees on the left and 0.37 on the right; our table holds the worse of the two.

    Source: Peel, Peel & Davies 2006, Equine Vet J Suppl 36:431-434. Derived from: over 1.96 times the root of 2.
    """
    assert sd_of("toe_angle", "gauge") >= coefficient / COEFFICIENT - 0.0006
    assert sd_of("toe_angle", "gauge") == pytest.approx(0.133)


@pytest.mark.parametrize(("key", "way", "printed"), [("circumference", "tape", 1.8), ("toe_angle", "gauge", 0.37)])
def test_the_smallest_real_change_is_the_printed_coefficient(key: str, way: str, printed: float) -> None:
    """A change told as more than measuring error is the paper's, and what rounding to whole ones adds.

    Source: Decurnex, Anderson & Davies 2009, Equine Vet J 41; Peel, Peel & Davies 2006, Equine Vet J Suppl 36:431-434.
    """
    sd = sd_of(key, way)
    taken = visit("2026-10-14", left_fore={"after": {key: 300 if way == "tape" else 50}}, methods={key: way})

    assert smallest_real_change(sd, sd) == pytest.approx(printed, rel=0.005)
    rounding = COEFFICIENT / 12**0.5
    assert measured(key, taken).smallest_real_change == pytest.approx(math.hypot(printed, rounding), rel=0.005)


def test_a_gauge_beats_a_photograph() -> None:
    """Toe angle by gauge, about 0.4 degrees; by photograph, where 2 degrees alone are not conclusive.

    Source: Peel, Peel & Davies 2006, Equine Vet J Suppl 36:431-434; a donkey radiograph study, as reported in AFJ 601.
    """
    gauge, photograph = sd_of("toe_angle", "gauge"), sd_of("toe_angle", "photograph")

    assert smallest_real_change(gauge, gauge) < 0.4
    assert smallest_real_change(photograph, photograph) > 2


def test_weeks_of_training_until_a_change_is_real() -> None:
    """At 0.66 mm a week 2.7 weeks show, or 1.7 weeks of rest at 1.03.

    Source: Decurnex, Anderson & Davies 2009, Equine Vet J 41. Derived from: coefficient over weekly change.
    """
    least = smallest_real_change(sd_of("circumference", "tape"), sd_of("circumference", "tape"))

    assert least / 0.66 == pytest.approx(2.7, abs=0.05)
    assert least / 1.03 == pytest.approx(1.7, abs=0.06)


def test_twelve_weeks_of_training_in_a_record() -> None:
    """A tape that read 300 mm reads 292.08: a change, while one week more or less is none.

    Source: Decurnex, Anderson & Davies 2009, Equine Vet J 41. Derived from: -0.66 mm a week.
    """
    days = {"2026-03-01": 300.0, "2026-03-08": 299.34, "2026-05-24": 292.08}
    visits = [visit(day, left_fore={"before": {"circumference": mm}}) for day, mm in days.items()]
    (season,) = summary(*visits).changes.real

    assert summary(*visits[:2]).changes.real == ()
    assert season.low < -7.92 < season.high

"""Measures that fall or climb by small steps: at its edge, just under it, and still feet that raise nothing."""

from __future__ import annotations

import random
from collections.abc import Sequence
from datetime import date, timedelta

import pytest

from recordgen.hoof.cautions.rules.drift import CLIMB_DEGREES, FALL_MM
from recordgen.records.models.visit import Visit
from tests.support.caution_cases import Values, cautions, grooves, rules, the
from tests.support.horse_records import visit

START = date(2025, 1, 6)
SOLE, GROOVE, ANGLE = "sole-falls", "groove-falls", "angle-climbs"


def found(rule: str, value: float) -> Values:
    """A foot of which the measure of a rule was taken."""
    if rule == SOLE:
        return {"sole": {"depth": value}}
    return grooves(value, 14) if rule == GROOVE else {"before": {"toe_angle": value}}


def drift(rule: str, values: Sequence[float], days: int = 28) -> list[Visit]:
    """Visits so many days apart, at each of which a measure of the left fore was taken."""
    taken = [(START + timedelta(days=days * count), value) for count, value in enumerate(values)]
    return [visit(day.isoformat(), left_fore=found(rule, value)) for day, value in taken]


def told(rule: str, values: Sequence[float], days: int = 28) -> bool:
    """Whether a rule is open after these readings."""
    made = drift(SOLE if rule == "sole-thinner" else rule, values, days)
    return rule in rules(*made, today=made[-1].date)


@pytest.mark.parametrize(("last", "expected"), [(9.4, True), (9.5, True), (9.6, False), (13, False)])
@pytest.mark.parametrize("rule", [SOLE, GROOVE])
def test_a_sole_or_groove_that_is_worn_away(rule: str, last: float, expected: bool) -> None:
    """3.5 mm from the middle of the best three readings to that of the last three.

    Judgement: three and a half times the error of a probe (SD 1 mm), which is no step of it.
    """
    assert told(rule, [13, 13, 12, 11, 10.5, last, last]) is expected


@pytest.mark.parametrize(("last", "expected"), [(53.9, False), (54, True), (54.1, True), (46, False)])
def test_a_toe_angle_that_climbs(last: float, expected: bool) -> None:
    """4 degrees up; one that lies down is no caution.

    Judgement: four times the error of a protractor (SD 1 degree), three times what a trim changes (1.35).
    """
    assert told(ANGLE, [50, 50, 51, 52, 53, last, last]) is expected


@pytest.mark.parametrize(("rule", "sign"), [(SOLE, -1), (GROOVE, -1), (ANGLE, 1)])
def test_half_a_unit_a_visit_is_seen_within_a_year(rule: str, sign: int) -> None:
    """Each step is within the error of reading; a sole is told by half a year's change before that."""
    values = [(52 if rule == ANGLE else 16) + sign * 0.5 * count for count in range(13)]

    assert not told(rule, values[:6])
    assert told("sole-thinner" if rule == SOLE else rule, values)


@pytest.mark.parametrize("rule", [SOLE, GROOVE, ANGLE])
def test_one_reading_that_is_out_raises_nothing(rule: str) -> None:
    """At either end, and however far; nor do five readings, of which no two middles can be made."""
    level = 60.0 if rule == ANGLE else 14.0
    out = level - 7 if rule == ANGLE else level + 7
    bad = level + 4.9 if rule == ANGLE else level - 2.7

    assert not told(rule, [level, out, level, level, level, level, level])
    assert not told(rule, [level, level, level, level, level, level, bad])
    assert not told(rule, [out, out, level, level, level])


@pytest.mark.parametrize("days", [45, 46])
def test_it_happened_within_a_year(days: int) -> None:
    """The middle one of the best three is 365 days ago at the most, and so is the first of them."""
    steps = [14, 14, 13, 13, 12, 12, 11, 10.5, 10.5]

    assert told(GROOVE, steps, days) is (8 * days <= 365)


@pytest.mark.parametrize(("back", "expected"), [(11.2, True), (11.25, True), (11.3, False)])
def test_it_ends_when_it_is_more_than_half_the_way_back(back: float, expected: bool) -> None:
    """From 9.5 to above 11.25 of 13 mm; until then it stays open and has the later day.

    Judgement
    """
    assert told(GROOVE, [13, 13, 12, 11, 10, 9.5, 9.5, back]) is expected


def test_it_tells_both_readings_with_their_days() -> None:
    """The best as it was, and today's."""
    made = drift(SOLE, [13, 13, 12, 11, 10, 9.5, 9.5])

    assert the(SOLE, cautions(*made, today=made[-1].date)).seen == (
        "The hollow of the sole of the left fore went down by small steps, from 13 mm on 6 January 2025 to 9.5 mm on "
        "23 June 2025. The sole may be thinner."
    )


def test_what_is_told_already_is_not_told_twice() -> None:
    """A sole that grew thinner between two visits says all there is to say."""
    made = drift(SOLE, [14, 14, 14, 14, 10, 10, 10, 10])

    assert [rule for rule in rules(*made, today=made[-1].date) if rule.startswith("sole")] == ["sole-thinner"]


def test_another_moment_of_a_visit_is_another_reading() -> None:
    """Angles after the trim are not compared with angles as found."""
    found_so = [{"after": {"toe_angle": 50}}] * 4 + [{"before": {"toe_angle": 58}}] * 4
    days = [one.date for one in drift(ANGLE, [50] * 8)]
    made = [visit(day.isoformat(), left_fore=one) for day, one in zip(days, found_so, strict=True)]

    assert ANGLE not in rules(*made, today=made[-1].date)


@pytest.mark.parametrize(("rule", "edge"), [(SOLE, FALL_MM), (ANGLE, CLIMB_DEGREES)])
def test_still_feet_hardly_ever_raise_it(rule: str, edge: float) -> None:
    """Of 400 feet through two years, read to the millimetre with an SD of 1, at most one in fifty.

    Judgement: one in fifty; the errors are those of the table of measures.
    """
    draw = random.Random(7)
    level = 50 if rule == ANGLE else 12
    feet = [[round(level + draw.gauss(0, 1)) for _ in range(18)] for _ in range(400)]
    raised = sum(any(_far(values[max(0, end - 9) : end], edge, rule) for end in range(6, 19)) for values in feet)

    assert raised <= len(feet) / 50


def _far(values: Sequence[float], edge: float, rule: str) -> bool:
    """The same edge in other words: the middle of the last three against the best middle of three before them."""
    sign = -1 if rule == ANGLE else 1
    middles = [sorted(sign * value for value in values[at : at + 3])[1] for at in range(len(values) - 2)]
    return max(middles[:-3], default=-1e9) - middles[-1] >= edge

"""Typed quantities become numbers in one unit."""

import math

import pytest
from hypothesis import given
from hypothesis import strategies as st
from hypothesis.strategies._internal.core import DataObject

from recordgen.records.models.quantity import (
    CENTIMETRES,
    DEGREES,
    MILLIMETRES,
    NO_UNIT,
    NotAQuantity,
    height_cm,
    quantity,
)


@pytest.mark.parametrize(
    ("typed", "expected"),
    [
        ("88", 88),
        ("8.2 cm", 82),
        ("8.2cm", 82),
        ("3 1/4 in", 82.55),
        ("3-1/4 in", 82.55),
        ("3¼ in", 82.55),
        ("3 ¼″", 82.55),
        ("½ in", 12.7),
        ("1/4 in.", 6.35),
        ('3 1/4"', 82.55),
        ("88\u00a0mm", 88),
        ("0.09 m", 90),
        ("-5", -5),
        ("−5", -5),
        ("+.5", 0.5),
        ("3 IN", 76.2),
    ],
)
def test_lengths_are_read_as_millimetres(typed: str, expected: float) -> None:
    """Millimetres are meant where no unit is written; others are converted.

    Source: an inch is 25.4 mm by international agreement (1959).
    """
    assert quantity(typed, MILLIMETRES) == pytest.approx(expected)


@pytest.mark.parametrize(("typed", "units", "expected"), [("71 in", CENTIMETRES, 180.34), ("51°", DEGREES, 51)])
def test_other_measures_have_units_of_their_own(typed: str, units: dict[str, float], expected: float) -> None:
    """Girths are centimetres, angles degrees."""
    assert quantity(typed, units) == pytest.approx(expected)


@pytest.mark.parametrize(
    ("typed", "why"),
    [
        ("about 88", "it is not a number"),
        ("", "it is not a number"),
        ("٣", "it is not a number"),
        ("1e400", "it is not a number"),
        ("1_000", "it is not a number"),
        (".nan", "it is not a number"),
        (".inf", "it is not a number"),
        ("9" * 5000, "it is not a number"),
        ("8,2 cm", "a comma stands in it"),
        ("1,000", "a comma stands in it"),
        ("8 ft", "the unit 'ft' is not known here"),
        ("1/0 in", "it divides by zero"),
        ("8 2", "it reads as two numbers"),
    ],
)
def test_what_is_no_quantity_is_refused_with_the_reason(typed: str, why: str) -> None:
    """Each reason is told in words."""
    with pytest.raises(NotAQuantity) as refused:
        quantity(typed, MILLIMETRES)

    assert str(refused.value) == why


def test_a_decimal_comma_gets_its_way_out() -> None:
    """Half of Europe writes 8,2: the point is told."""
    with pytest.raises(NotAQuantity) as refused:
        quantity("8,2", MILLIMETRES)

    assert refused.value.way_out == "Write a decimal with a point, like 8.2, and thousands without a sign"


def test_a_number_alone_is_told_so() -> None:
    """Weeks are written as a number."""
    with pytest.raises(NotAQuantity, match="a number alone is expected") as refused:
        quantity("6 weeks", NO_UNIT)

    assert refused.value.way_out == "Take out 'weeks'"


@pytest.mark.parametrize(
    ("typed", "expected"),
    [("14.2 hh", 147.3), ("15hh", 152.4), ("14.2½ hh", 148.6), ("12 hands", 121.9), ("148", 148), ("58 in", 147.3)],
)
def test_a_height_may_be_in_hands(typed: str, expected: float) -> None:
    """Behind the point stand inches, four to a hand.

    Common practice, no source
    """
    assert height_cm(typed) == pytest.approx(expected, abs=0.05)


def test_a_hand_has_four_inches() -> None:
    """14.4 hh would be 15 hh, so it is refused."""
    with pytest.raises(NotAQuantity, match="a hand has four inches"):
        height_cm("14.4 hh")


@given(st.text(max_size=30))
def test_any_text_is_a_finite_number_or_refused(typed: str) -> None:
    """No text leads to another error, to NaN or to infinity."""
    for read in (lambda text: quantity(text, MILLIMETRES), height_cm):
        try:
            value = read(typed)
        except NotAQuantity:
            continue
        assert math.isfinite(value)


@given(st.integers(0, 999), st.sampled_from([2, 4, 8, 16]), st.data())
def test_a_fraction_is_its_decimal(whole: int, bottom: int, data: DataObject) -> None:
    """`3 5/16` is 3.3125."""
    top = data.draw(st.integers(0, bottom - 1))

    assert quantity(f"{whole} {top}/{bottom}", MILLIMETRES) == pytest.approx(whole + top / bottom, abs=1e-4)

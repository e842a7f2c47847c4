"""Units of what is typed and shown, held against published factors and exact fractions."""

from fractions import Fraction

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.records.models.quantity import CENTIMETRES, MILLIMETRES, height_cm, quantity
from recordgen.units import INCH_MM, POUND_KG, UNITS, as_on_a_rule, decimal_inches, in_hands, sixteenths

LENGTHS_MM = st.floats(-250, 250).map(lambda value: round(value, 4))


def test_factors_are_those_of_nist() -> None:
    """An inch is 25.4 mm and a pound 0.453 592 37 kg.

    Source: NIST Special Publication 811 (2008), appendix B.8, factors in bold, which are exact.
    """
    inches = UNITS["inches"]
    per_square_inch = Fraction("0.45359237") / Fraction("6.4516")

    assert (INCH_MM, POUND_KG) == (25.4, 0.45359237)
    assert inches.shown(645.16, "mm²") == pytest.approx(1)
    assert inches.shown(float(per_square_inch), "kg/cm²") == pytest.approx(1)


@pytest.mark.parametrize("whole", [0, 1, 3, 5])
def test_each_sixteenth_reads_as_the_fraction_it_is(whole: int) -> None:
    """A length of so many sixteenths is told in lowest terms, as Python's own fractions have them."""
    for part in range(1, 16):
        fraction = Fraction(part, 16)
        told = as_on_a_rule(float((whole + fraction) * Fraction("25.4")))

        assert told == (f"{whole} {fraction}" if whole else str(fraction))


@given(LENGTHS_MM)
def test_a_told_length_is_within_half_a_sixteenth(length: float) -> None:
    """No other sixteenth is nearer, and what is told is read back as the same sixteenth."""
    exact = Fraction(str(length)) / Fraction("25.4")
    sign = -1 if as_on_a_rule(length).startswith("-") else 1
    read = sign * quantity(f"{as_on_a_rule(length).removeprefix('-')} in", MILLIMETRES)

    assert abs(exact - Fraction(sixteenths(length), 16)) <= Fraction(1, 32)
    assert sixteenths(read) == sixteenths(length)


@given(LENGTHS_MM, LENGTHS_MM)
def test_a_larger_length_never_reads_smaller(one: float, other: float) -> None:
    """A change that is more than its bound is not told as less than it, in sixteenths or as a decimal."""
    low, high = sorted((one, other))

    assert sixteenths(low) <= sixteenths(high)
    assert float(decimal_inches(low, 1)) <= float(decimal_inches(high, 1))


@pytest.mark.parametrize(("mm", "told"), [(0.1, "0.004"), (-0.1, "-0.004"), (0, "0.00"), (0.2, "0.01"), (4.2, "0.17")])
def test_a_small_error_never_reads_as_none(mm: float, told: str) -> None:
    """A tenth of a millimetre is four thousandths of an inch."""
    assert decimal_inches(mm, 1) == told


@pytest.mark.parametrize("told", ["14.2", "15.0", "15.2 1/2", "9.3", "16.1"])
def test_hands_are_told_as_they_were_typed(told: str) -> None:
    """A height typed in hands comes back as the same hands and inches, to half an inch."""
    assert in_hands(height_cm(f"{told} hh")) == told


def test_a_body_in_inches_keeps_its_inches() -> None:
    """A girth of 71 in is 71 in again where inches are shown."""
    assert UNITS["inches"].shown(quantity("71 in", CENTIMETRES), "cm") == pytest.approx(71)


def test_metric_shows_what_is_kept() -> None:
    """The usual units change neither a value nor its name."""
    assert (UNITS["metric"].shown(81.5, "mm"), UNITS["metric"].of("mm")) == (81.5, "mm")

"""Units in which lengths, heights and weights are shown, with their exact factors, and the sixteenths of a rule.

Everything is kept and reckoned in millimetres, centimetres and kilograms; what people type or read may have others.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from fractions import Fraction
from typing import Literal

# Both are exact. Source: NIST Special Publication 811 (2008), appendix B.8.
INCH_MM = 25.4
POUND_KG = 0.45359237
# A hand is four inches. Common practice, no source.
HAND_IN = 4
# The finest line of a usual rule in inches. Common practice, no source.
PARTS_OF_AN_INCH = 16
# What is no reading of a rule is told in inches to so many digits more than in millimetres: 0.01 in are 0.25 mm.
MORE_DIGITS_IN = 1
FEWEST_DIGITS_IN = 2

UnitsName = Literal["metric", "metric and hands", "inches"]


@dataclass(frozen=True)
class Units:
    """The units of a practice: of lengths (mm or in), of a horse's height (cm or hh), of weights (kg or lb)."""

    length: Literal["mm", "in"] = "mm"
    height: Literal["cm", "hh"] = "cm"
    weight: Literal["kg", "lb"] = "kg"

    @property
    def inches(self) -> bool:
        """Tell whether lengths are inches."""
        return self.length == "in"

    def of(self, unit: str) -> str:
        """The unit that is shown in place of one of ours, such as in for mm; any other stays."""
        return _IN_INCHES.get(unit, unit) if self.inches else unit

    def shown(self, value: float, unit: str) -> float:
        """A value in the unit that is shown in place of `unit`."""
        return value / _FACTORS.get(unit, 1.0) if self.inches else value


METRIC = Units()
UNITS: dict[UnitsName, Units] = {
    "metric": METRIC,
    "metric and hands": Units(height="hh"),
    "inches": Units("in", "hh", "lb"),
}
# By the unit in which something is kept: what is shown in an inch practice, and how much of the first it is.
_IN_INCHES = {"mm": "in", "cm": "in", "mm²": "in²", "cm²": "in²", "kg": "lb", "kg/cm²": "lb/in²"}
_FACTORS = {
    "mm": INCH_MM,
    "cm": INCH_MM / 10,
    "mm²": INCH_MM**2,
    "cm²": INCH_MM**2 / 100,
    "kg": POUND_KG,
    "kg/cm²": POUND_KG / (INCH_MM**2 / 100),
}


def sixteenths(mm: float) -> int:
    """The sixteenths of an inch nearest to a length; from the middle between two the larger one in size."""
    exact = Fraction(str(abs(mm))) * PARTS_OF_AN_INCH / Fraction(str(INCH_MM))
    nearest = math.floor(exact + Fraction(1, 2))
    return -nearest if mm < 0 else nearest


def as_on_a_rule(mm: float) -> str:
    """A length in inches as a rule reads, in lowest terms: 3 3/16, 1/2 or 3; its sign is a hyphen."""
    parts = sixteenths(mm)
    whole, rest = divmod(abs(parts), PARTS_OF_AN_INCH)
    fraction = str(Fraction(rest, PARTS_OF_AN_INCH)) if rest else ""
    text = " ".join(part for part in (str(whole) if whole or not rest else "", fraction) if part)
    return f"-{text}" if parts < 0 else text


def typed_length(mm: float) -> str:
    """A length as it is typed in inches, with its unit; one of less than half a sixteenth stays in millimetres."""
    return f"{as_on_a_rule(mm)} in" if sixteenths(mm) or not mm else f"{mm:g} mm"


def inch_digits(digits: int) -> int:
    """The digits of a length in inches that has so many in millimetres: one more, and two at the least."""
    return max(digits + MORE_DIGITS_IN, FEWEST_DIGITS_IN)


def decimal_inches(mm: float, digits: int) -> str:
    """A length in inches as a decimal, one digit longer where it would else read as nothing.

    digits: those that it has in millimetres.
    """
    shown = inch_digits(digits)
    if mm and not round(mm / INCH_MM, shown):
        shown += 1
    return f"{round(mm / INCH_MM, shown) + 0.0:.{shown}f}"


def in_hands(height_cm: float) -> str:
    """A height in hands and inches, to half an inch: 14.2, or 14.2 1/2."""
    halves = math.floor(Fraction(str(height_cm)) * 20 / Fraction(str(INCH_MM)) + Fraction(1, 2))
    hands, rest = divmod(halves, 2 * HAND_IN)
    return f"{hands}.{rest // 2}{' 1/2' if rest % 2 else ''}"

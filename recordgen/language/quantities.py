"""Lengths, heights and weights as a practice shows them, in its units and in its language.

What was read off a rule is told in sixteenths of an inch. A difference, an error and a rate are told as decimals of an
inch, all in the same way, so that a change never reads smaller than its bound.
"""

from __future__ import annotations

from dataclasses import dataclass

from recordgen.language.spoken import ENGLISH, Language
from recordgen.units import METRIC, POUND_KG, Units, as_on_a_rule, decimal_inches, in_hands, inch_digits, sixteenths

# Digits that a value has more in the unit that is shown than in ours, where one of it is larger: 1 in² are 645 mm².
_MORE_DIGITS = {"mm²": 2, "cm²": 1}
# Weights by tape are estimates: in pounds they are told to the nearest ten, as to five in kilograms. Judgement.
_NEAREST = {"kg": 5, "lb": 10}


@dataclass(frozen=True)
class Quantities:
    """A writer of quantities. All are given in our own units: lengths in mm, heights in cm, weights in kg."""

    language: Language = ENGLISH
    units: Units = METRIC

    def length(self, mm: float, digits: int | None = None) -> str:
        """A reading with its unit: 18 mm, or 11/16 in. digits: of millimetres; else as many as it has."""
        return self._with_unit(self.length_figure(mm, digits), "mm")

    def length_figure(self, mm: float, digits: int | None = None) -> str:
        """The same without its unit; one that is less than half a sixteenth is a decimal, and never nothing."""
        if not self.units.inches:
            return self._figures(f"{mm:g}" if digits is None else f"{mm:.{digits}f}")
        return self._figures(as_on_a_rule(mm) if sixteenths(mm) or not mm else decimal_inches(mm, 1))

    def span(self, mm: float, digits: int | None = None) -> str:
        """A difference, an error or a rate with its unit: 4.2 mm, or 0.17 in."""
        return self._with_unit(self.span_figure(mm, digits), "mm")

    def span_figure(self, mm: float, digits: int | None = None) -> str:
        """The same without its unit."""
        if not self.units.inches:
            return self.length_figure(mm, digits)
        return self._figures(decimal_inches(mm, digits or 0))

    def figure(self, value: float, unit: str, digits: int) -> str:
        """A value that is no reading of a rule, such as an area, in the unit shown for `unit`, without it."""
        shown_digits = self.digits(unit, digits)
        return self._figures(f"{round(self.units.shown(value, unit), shown_digits) + 0.0:.{shown_digits}f}")

    def digits(self, unit: str, digits: int) -> int:
        """The digits that a value has in the unit that is shown, where it has so many in `unit`."""
        if not self.units.inches:
            return digits
        return inch_digits(digits) if unit == "mm" else digits + _MORE_DIGITS.get(unit, 0)

    def distance(self, cm: float) -> str:
        """A distance, cm, or a length of a horse's body: 180 cm, or 71 in."""
        return self._with_unit(f"{self.units.shown(cm, 'cm'):.0f}" if self.units.inches else f"{cm:g}", "cm")

    def height(self, cm: float) -> str:
        """The height of a horse: 148 cm, or 14.2 hh."""
        return f"{in_hands(cm)} hh" if self.units.height == "hh" else f"{self._figures(f'{cm:.1f}')} cm"

    def weight(self, kg: float) -> str:
        """A weight to the nearest whole unit: 480 kg, or 1058 lb."""
        shown = kg / POUND_KG if self.units.weight == "lb" else kg
        return self._with_unit(self._figures(f"{shown:.0f}"), "kg")

    def about_weight(self, kg: float) -> str:
        """An estimated weight, no closer than it is known: 480 kg, or 1060 lb."""
        unit = self.units.weight
        shown = kg / POUND_KG if unit == "lb" else kg
        return self._with_unit(f"{round(shown / _NEAREST[unit]) * _NEAREST[unit]}", "kg")

    def both_weights(self, kg: float) -> str:
        """A weight for whoever may reckon in kilograms, too: 480 kg, or 1058 lb (480 kg)."""
        return self.weight(kg) if self.units.weight == "kg" else f"{self.weight(kg)} ({kg:.0f} kg)"

    def unit(self, unit: str) -> str:
        """The unit that is shown for one of ours, alone: mm, in; any other unchanged."""
        return self.language.unit(self.units.of(unit))

    def unit_in_words(self, unit: str) -> str:
        """The same within a sentence: mm, inches."""
        return self.language.unit_in_words(self.units.of(unit))

    def _with_unit(self, figure: str, unit: str) -> str:
        return self.language.with_unit(figure, self.units.of(unit))

    def _figures(self, text: str) -> str:
        return self.language.figures(text)


# Millimetres in English.
IN_ENGLISH = Quantities()

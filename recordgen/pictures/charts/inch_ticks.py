"""Ticks of an axis that shows inches while everything on it is drawn in millimetres: at the lines of a rule."""

from __future__ import annotations

import math
from fractions import Fraction

from recordgen.language.spoken import ENGLISH, Language
from recordgen.units import INCH_MM, as_on_a_rule, decimal_inches

# The lines that a rule numbers or marks longer, inches; further apart than the last nothing of a hoof reaches.
STEPS = (*(Fraction(1, parts) for parts in (16, 8, 4, 2)), *map(Fraction, (1, 2, 5, 10)))
# Fractions that fonts have as one sign.
SIGNS = {"1/8": "⅛", "1/4": "¼", "3/8": "⅜", "1/2": "½", "5/8": "⅝", "3/4": "¾", "7/8": "⅞"}
# Of rates, inches a month.
DECIMAL_STEPS = tuple(Fraction(step) for step in ("0.01", "0.02", "0.05", "0.1", "0.2", "0.5", "1"))


def inch_ticks(low_mm: float, high_mm: float, most: int) -> dict[float, str]:
    """Lengths from low to high at the lines of a rule, mm, each with its words; one more than `most` at the most."""
    found = (_places(low_mm, high_mm, step) for step in STEPS)
    places = next((one for one in found if len(one) <= most + 1), [])
    return {mm: _short(as_on_a_rule(mm)) for mm in places}


def _short(words: str) -> str:
    """A length in as little room as a font allows: 3½."""
    whole, _, fraction = words.rpartition(" ")
    sign = "-" if fraction.startswith("-") else ""
    return whole + sign + SIGNS[fraction.removeprefix("-")] if fraction.removeprefix("-") in SIGNS else words


def decimal_ticks(low_mm: float, high_mm: float, most: int, language: Language = ENGLISH) -> dict[float, str]:
    """The same at round decimals of an inch, which reach to the first below and the first above."""
    step = _step(low_mm, high_mm, most, DECIMAL_STEPS)
    first, last = math.floor(low_mm / INCH_MM / step), math.ceil(high_mm / INCH_MM / step)
    places = [round(float(step * number) * INCH_MM, 4) for number in range(first, last + 1)]
    return {mm: language.figures(decimal_inches(mm, 1).rstrip("0").rstrip(".")) for mm in places}


def _places(low_mm: float, high_mm: float, step: Fraction) -> list[float]:
    first, last = math.ceil(low_mm / INCH_MM / step), math.floor(high_mm / INCH_MM / step)
    return [round(float(step * number) * INCH_MM, 4) for number in range(first, last + 1)]


def _step(low_mm: float, high_mm: float, most: int, steps: tuple[Fraction, ...]) -> Fraction:
    return next((step for step in steps if (high_mm - low_mm) / INCH_MM / step <= most), steps[-1])

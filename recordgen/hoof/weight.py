"""Weight from a tape, and what of it rests on a foot: estimates, not for dosing.

Donkeys, mules, foals and yearlings have no formula here, since none with a source was found.
"""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Literal

from recordgen.hoof.age_class import care_class
from recordgen.records.models.horse import Horse
from recordgen.records.models.visit import Condition, Visit

# kg, cm. Source: Carroll & Huntington 1988, Equine Vet J 20(1):41-45 give 11,900 (mean of 281 horses); the widely
# printed form has 11,877 (EQUUS). They differ by 0.2 %, far below the error of a tape.
GIRTH_DIVISOR = 11_900
# Neck over height from which a neck may count as cresty. Source: University of Minnesota, equine weight.
CRESTY_NECK = {"horse": 0.63, "pony": 0.68}
# Sole area over length times width. Derived from: Pares i Casanova & Oosterlinck 2012, as reported in AFJ 394: 12 x 13
# cm and 133 cm2 in front, 12 x 12 cm and 122 cm2 behind.
SOLE_SHARE = 0.85
POUND_KG, INCH_CM = 0.45359237, 2.54
# Whole weight over the area of one foot, 78 lb to the square inch, over which a foot has been called small. How many
# horses exceed it is not known. Source: Turner 2010, Proc. 16th Congress of SIVE.
SMALL_FOOT_KG_PER_CM2 = 78 * POUND_KG / INCH_CM**2

Build = Literal["Arabian", "pony", "stock", "draft", "warmblood"]


@dataclass(frozen=True)
class FourMeasures:
    """A formula of four measures: the power of each, the divisor, and whether it counts in pounds and inches."""

    girth: float
    length: float
    height: float
    neck: float
    divisor: float
    imperial: bool
    source: str

    def weight_kg(self, girth_cm: float, length_cm: float, height_cm: float, neck_cm: float) -> float:
        """Estimated weight in kg."""
        unit = INCH_CM if self.imperial else 1
        powers = (self.girth, self.length, self.height, self.neck)
        taken = (girth_cm, length_cm, height_cm, neck_cm)
        product = math.prod(float((value / unit) ** power) for value, power in zip(taken, powers, strict=True))
        return product / self.divisor * (POUND_KG if self.imperial else 1)


_MARTINSON = "Martinson et al. 2014 (629 adults), as reported in Stable Management"
_CATALANO = "Catalano et al. 2016, J Equine Vet Sci 39:38-43"
FOUR_MEASURES: dict[Build, FourMeasures] = {
    "Arabian": FourMeasures(1.486, 0.554, 0.599, 0.173, 119, True, _MARTINSON),
    "pony": FourMeasures(1.486, 0.554, 0.599, 0.173, 119, True, _MARTINSON),
    "stock": FourMeasures(1.486, 0.554, 0.599, 0.173, 114, True, _MARTINSON),
    "draft": FourMeasures(1.528, 0.574, 0.246, 0.261, 1181, False, _CATALANO),
    "warmblood": FourMeasures(1.528, 0.574, 0.246, 0.261, 1209, False, _CATALANO),
}


@dataclass(frozen=True)
class Weight:
    """An estimated weight in kg, the day of its tape, the measures it was made from, and whose formula it is."""

    kg: float
    day: date
    made_from: Literal["girth and length", "girth, length, height and neck"]
    source: str


def weight_kg(girth_cm: float, length_cm: float, divisor: float = GIRTH_DIVISOR) -> float:
    """Estimated weight in kg: girth squared times length over the divisor.

    girth_cm: around the chest behind the withers. length_cm: point of shoulder to point of buttock.
    Raises ValueError unless both are above zero. Source: Carroll & Huntington 1988, Equine Vet J 20(1):41-45.
    """
    _above_zero(girth=girth_cm, length=length_cm)
    return girth_cm**2 * length_cm / divisor


def weight_of_four_kg(build: Build, girth_cm: float, length_cm: float, height_cm: float, neck_cm: float) -> float:
    """Estimated weight in kg from girth, length, height at the withers and the middle of the neck, by build.

    Raises ValueError unless all are above zero. Sources: Martinson et al. 2014, as reported in Stable Management
    (Arabian, pony, stock); Catalano et al. 2016, J Equine Vet Sci 39:38-43 (draft, warmblood).
    """
    _above_zero(girth=girth_cm, length=length_cm, height=height_cm, neck=neck_cm)
    return FOUR_MEASURES[build].weight_kg(girth_cm, length_cm, height_cm, neck_cm)


def weight_of(horse: Horse, visits: Sequence[Visit]) -> Weight | None:
    """The weight by the latest visit with girth and length; None without one, and where no formula fits.

    visits: oldest first. A pony of which height and neck are known is estimated from all four; the build of a horse is
    not recorded, so that its girth and length alone are used.
    """
    for visit in reversed(visits):
        fits = horse.kind in ("horse", "pony") and care_class(horse, visit.date) in ("adult", "aged")
        found = _estimated(horse, visit.condition, visit.date) if fits and visit.condition else None
        if found:
            return found
    return None


def _estimated(horse: Horse, taken: Condition, day: date) -> Weight | None:
    if not taken.girth or not taken.length:
        return None
    if horse.kind == "pony" and horse.height and taken.neck:
        weight = weight_of_four_kg("pony", taken.girth, taken.length, horse.height, taken.neck)
        return Weight(weight, day, "girth, length, height and neck", _MARTINSON)
    source = "Carroll & Huntington 1988, Equine Vet J 20(1):41-45"
    return Weight(weight_kg(taken.girth, taken.length), day, "girth and length", source)


def neck_ratio(neck_cm: float, height_cm: float) -> float:
    """The middle of the neck over the height at the withers; see `CRESTY_NECK`.

    Raises ValueError unless both are above zero. Source: University of Minnesota, equine weight.
    """
    _above_zero(neck=neck_cm, height=height_cm)
    return neck_cm / height_cm


def sole_area_cm2(length_mm: float, width_mm: float) -> float:
    """The area of a sole in cm2 from its length and width in mm, by one share of their product for all feet.

    Raises ValueError unless both are above zero. Derived from: two rounded means, see `SOLE_SHARE`; a rough guide.
    """
    _above_zero(length=length_mm, width=width_mm)
    return SOLE_SHARE * length_mm * width_mm / 100


def round_area_cm2(circumference_cm: float) -> float:
    """The area in cm2 of a circle of that circumference.

    Raises ValueError unless it is above zero. From memory, not read: Turner 1992 takes it of the hoof at the hairline.
    """
    _above_zero(circumference=circumference_cm)
    return circumference_cm**2 / (4 * math.pi)


def weight_over_area(weight_kg: float, area_cm2: float) -> float:
    """The whole weight over the area of one foot, in kg to the cm2; see `SMALL_FOOT_KG_PER_CM2`.

    It compares feet of one horse through time and with others; no foot carries the whole weight. Raises ValueError
    unless both are above zero.
    """
    _above_zero(weight=weight_kg, area=area_cm2)
    return weight_kg / area_cm2


def _above_zero(**taken: float) -> None:
    if min(taken.values()) <= 0:
        raise ValueError(f"{' and '.join(taken)} must be above zero")

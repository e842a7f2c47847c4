"""Tell how the feet compare: left with right of the same pair."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from recordgen.records.models.names import Foot

Pair = Literal["fore", "hind"]
PAIRS: dict[Pair, tuple[Foot, Foot]] = {"fore": ("left_fore", "right_fore"), "hind": ("left_hind", "right_hind")}

# Compared from left to right: one of each kind of reading, so that the table stays short.
PAIRED_MEASURES = (
    "toe_length",
    "toe_angle",
    "heel_height_medial",
    "heel_height_lateral",
    "circumference",
    "sole_width",
)


@dataclass(frozen=True)
class PairDifference:
    """One measure of a pair of feet, last taken on both on `day`: left, right, and how far they are apart.

    low, high: of the difference that holds to that day, over the visits at which both were measured, the ends of its
    95 % interval, in the unit of the measure. smallest_real_difference: of these two readings alone. real: whether the
    page may tell that the feet differ.
    """

    pair: Pair
    measure: str
    day: date
    left: float
    right: float
    low: float
    high: float
    smallest_real_difference: float
    real: bool

    @property
    def difference(self) -> float:
        """Left less right, in the unit of the measure."""
        return self.left - self.right

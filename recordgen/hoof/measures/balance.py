"""How the feet compare: left with right of the same pair."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
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
    """One measure of a pair of feet: left, right, left less right, and whether that is more than measuring error."""

    pair: Pair
    measure: str
    left: float
    right: float
    smallest_real_difference: float

    @property
    def difference(self) -> float:
        """Left less right, in the unit of the measure."""
        return self.left - self.right

    @property
    def real(self) -> bool:
        """Whether the difference is at least the smallest that is more than the error of two readings."""
        return abs(self.difference) >= self.smallest_real_difference


def pair_differences(
    latest: Mapping[Foot, Mapping[str, float]], smallest_real: Mapping[str, float]
) -> tuple[PairDifference, ...]:
    """The left-to-right differences of both pairs, for the measures taken on both feet.

    latest: by foot and measure, the latest reading. smallest_real: by measure, in its unit.
    """
    return tuple(
        PairDifference(pair, measure, latest[left][measure], latest[right][measure], smallest_real[measure])
        for pair, (left, right) in PAIRS.items()
        for measure in PAIRED_MEASURES
        if measure in latest.get(left, {}) and measure in latest.get(right, {})
    )

"""The changes on a horse's feet as the vet's first page tells them, with method and error."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.claims.claims import Claim
from recordgen.hoof.claims.estimate import Kind
from recordgen.hoof.export.sheet_errors import ReadingMethod
from recordgen.hoof.measures.changes import FootMeasure
from recordgen.hoof.measures.leading_changes import LEADING, SAME_THING
from recordgen.hoof.scales import Grade
from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.names import FEET, Foot

MOST_DIGITS = 4


@dataclass(frozen=True)
class SheetChange:
    """A change that is known to be real, with the feet on which it came in the same days, and how it was last read."""

    claims: tuple[Claim[FootMeasure], ...]
    taken: ReadingMethod

    @property
    def first(self) -> Claim[FootMeasure]:
        """The claim that tells measure and days for all of them."""
        return self.claims[0]

    @property
    def feet(self) -> tuple[Foot, ...]:
        """The feet in their order."""
        return tuple(one.of.foot for one in self.claims)

    @property
    def sizes(self) -> tuple[float, ...]:
        """The changes without their sign, as rounded as they are told, each once."""
        return tuple(dict.fromkeys(round(abs(one.change), self.digits) for one in self.claims))

    @property
    def within(self) -> tuple[float, float]:
        """The least and the largest end of their intervals."""
        return min(one.low for one in self.claims), max(one.high for one in self.claims)

    @property
    def digits(self) -> int:
        """So many digits behind the point that no end of the interval reads as nothing when it is not."""
        ends = [abs(end) for one in self.claims for end in (one.change, one.low, one.high) if end]
        least = 2 if self.first.of.measure.words.decimals > 1 else 1
        return next((n for n in range(least, MOST_DIGITS) if all(round(end, n) for end in ends)), MOST_DIGITS)


def group_changes(summary: HorseSummary, taken: Mapping[str, Mapping[Foot, ReadingMethod]]) -> tuple[SheetChange, ...]:
    """The real changes of a horse: those of findings first, then of form and trim, each measure with its feet together.

    taken: by the key of a measure and by foot, how the latest reading was taken.
    """
    grouped: dict[tuple[str, ReadingMethod, Kind, date, date, date], list[Claim[FootMeasure]]] = {}
    for one in sorted(summary.changes.real, key=_order):
        key = one.of.measure.key
        days = (one.before, one.since, one.latest)
        grouped.setdefault((key, taken[key][one.of.foot], one.kind, *days), []).append(one)
    return tuple(SheetChange(tuple(claims), way) for (_, way, *_), claims in grouped.items())


def same_since(grades: Sequence[Grade]) -> date | None:
    """The day from which on each look found the last grade of one scale; None where the look before found another.

    grades: oldest first.
    """
    days = [one.day for one in grades]
    other = [number for number, one in enumerate(grades) if one.grade != grades[-1].grade]
    first = other[-1] + 1 if other else 0
    return days[first] if first < len(days) - 1 else None


def _order(claim: Claim[FootMeasure]) -> tuple[int, str, int]:
    measure = claim.of.measure
    thing = SAME_THING.get(measure.name, measure.name)
    place = LEADING.index(thing) if thing in LEADING else len(LEADING)
    return place, measure.key, FEET.index(claim.of.foot)

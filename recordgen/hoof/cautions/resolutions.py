"""The words that end a caution: whose they are, and which of them end nothing that was ever raised."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import date
from typing import Literal

from recordgen.problems import Step
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import Visit

Steps = tuple[Step, ...]


@dataclass(frozen=True)
class EndingWord:
    """One caution that somebody said is over: which, on which foot (None for all), on which day, and who says so.

    steps: where it stands in its visit. how: a word of anybody, or of a vet who saw the horse.
    """

    steps: Steps
    caution: str
    foot: Foot | None
    day: date
    how: Literal["resolved", "vet"]
    by: str

    def means(self, rule: str, foot: Foot | None) -> bool:
        """Tell whether it speaks of that caution; one of the whole horse is meant by a word on any foot."""
        return self.caution == rule and (self.foot is None or foot in (None, self.foot))

    def is_after(self, day: date) -> bool:
        """Tell whether it comes after a record of that day; a vet may come on the very day, having been called."""
        return self.day > day or (self.how == "vet" and self.day == day)


def words_of(visit: Visit) -> Iterator[EndingWord]:
    """The words of one visit that end cautions, those of vets first: what they end may free others for anybody's."""
    for index, entry in enumerate(visit.vet):
        for place, ended in enumerate(entry.ends):
            yield EndingWord(("vet", index, "ends", place), ended.caution, ended.foot, entry.date, "vet", entry.by)
    for index, said in enumerate(visit.resolved):
        yield EndingWord(("resolved", index), said.caution, said.foot, said.date, "resolved", said.by)

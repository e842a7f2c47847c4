"""Gaps of all records by what is missing, so that one errand fills several."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from recordgen.hoof.missing import Gap
from recordgen.hoof.summary import HorseSummary


@dataclass(frozen=True)
class GapOfHorses:
    """One thing that is missing of several horses."""

    gap: Gap
    horses: tuple[HorseSummary, ...]


def gaps_together(horses: Iterable[HorseSummary]) -> list[GapOfHorses]:
    """Each gap once with its horses, those of most horses first; no gap is told for a horse that has left."""
    found: dict[Gap, list[HorseSummary]] = {}
    for horse in horses:
        for gap in horse.gaps if not horse.horse.left else ():
            found.setdefault(gap, []).append(horse)
    made = [GapOfHorses(gap, tuple(of)) for gap, of in found.items()]
    return sorted(made, key=lambda one: -len(one.horses))

"""Horses whose feet are off the aims of their trim by more than the error of reading, and where they are going."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from typing import Literal

from recordgen.hoof.measures.aims import AimAtFoot
from recordgen.hoof.summary import HorseSummary

Going = Literal["away", "nearer", "steady", "first"]


@dataclass(frozen=True)
class OffAim:
    """A foot off an aim. going: since the visit before, by more than two readings can differ; first without one."""

    horse: HorseSummary
    aimed: AimAtFoot
    going: Going


def off_aim(horses: Iterable[HorseSummary]) -> list[OffAim]:
    """The feet that are off an aim beyond the error of reading: those that move away first, then the farthest."""
    missed = [(horse, one) for horse in horses for one in horse.aims if not one.reached and not one.within_error]
    found = [OffAim(horse, one, going_of(one)) for horse, one in missed]
    return sorted(found, key=lambda one: (one.going != "away", -share_of(one.aimed), one.horse.horse.name))


def going_of(one: AimAtFoot) -> Going:
    """Tell whether a reading has moved since the visit before, and whether that was away from its aim."""
    step = one.summary.last
    if step is None:
        return "first"
    if abs(step.change) < one.summary.smallest_real_change:
        return "steady"
    return "away" if step.change * one.away > 0 else "nearer"


def share_of(one: AimAtFoot) -> float:
    """Tell how far a reading is from its aim, as a share of what the aim allows, so that measures compare."""
    bound = abs(one.value - one.away)
    return abs(one.away) / bound if bound else abs(one.away)

"""The round of today, or the next one: where to go, whom to ring there, and what to look at on each horse."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.observations import Finding
from recordgen.hoof.rounds.rounds import Plan, Round
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.records.models.horse import Horse
from recordgen.records.models.stable import Contact, Stable

# So many findings of the last visit are told of a horse: the largest.
MOST_FINDINGS = 3


@dataclass(frozen=True)
class HorseOfRound:
    """A horse on a round, and what was found at its last visit, the largest first."""

    horse: HorseSummary
    findings: tuple[Finding, ...]


@dataclass(frozen=True)
class Stop:
    """One stable on a round: whom to ring there, None where no number is recorded, and its horses."""

    stable: StableSummary
    contact: Contact | None
    horses: tuple[HorseOfRound, ...]


@dataclass(frozen=True)
class NextRound:
    """The next day out, and its stops in the order of the plan."""

    day: date
    stops: tuple[Stop, ...]

    @property
    def horses(self) -> int:
        """Tell how many horses it holds."""
        return sum(len(stop.horses) for stop in self.stops)


def next_round(plan: Plan, stables: Sequence[StableSummary]) -> NextRound | None:
    """The first round of a plan, with what to know on the way; None where nothing is planned."""
    if not plan.rounds:
        return None
    first = plan.rounds[0]
    return NextRound(first.day, tuple(_stop(one, first) for one in stables if one.slug in first.stables))


def contact_for(horse: Horse, stable: Stable) -> Contact | None:
    """Whom to ring about a horse: its owner, the one whose role names it, or the first; of those with a number."""
    reached = [one for one in stable.contacts if one.phone]
    named = [one for one in reached if re.search(rf"\b{re.escape(horse.name)}\b", one.role or "", re.IGNORECASE)]
    owner = [horse.owner] if horse.owner and horse.owner.phone else []
    return next(iter([*owner, *named, *reached]), None)


def _stop(stable: StableSummary, going: Round) -> Stop:
    wished = [wish.horse for wish in going.wishes if wish.stable == stable.slug]
    horses = {horse.slug: horse for horse in stable.horses}
    first = next((one for one in stable.stable.contacts if one.phone), None)
    return Stop(stable, first, tuple(HorseOfRound(horses[slug], _largest(horses[slug])) for slug in wished))


def _largest(horse: HorseSummary) -> tuple[Finding, ...]:
    return tuple(sorted(horse.last_findings, key=lambda one: -(one.size_mm or 0))[:MOST_FINDINGS])

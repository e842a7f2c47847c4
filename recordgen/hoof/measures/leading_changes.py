"""The changes that are told first: those a person without figures understands, each once for all the feet it is on."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.claims.claims import Claim
from recordgen.hoof.measures.changes import Changes, FootMeasure
from recordgen.records.models.names import FEET, Foot, Zone

FootClaim = Claim[FootMeasure]

# What is measured in two ways, or in two directions, is told once, by the name at the right.
SAME_THING = {
    "separation_depth": "separation_length",
    "ring_flare": "flare",
    "sole_breakover": "breakover",
}
# Told first, in this order: what was found on a foot, then its shape, then how it is trimmed. Judgement.
LEADING = (
    "separation_length",
    "crack_length",
    "flare",
    "sole_depth",
    "central_groove_depth",
    "frog_width",
    "breakover",
    "toe_angle",
    "toe_length",
)
FOUND = LEADING[:3]


@dataclass(frozen=True)
class LeadingChange:
    """One change, alike on each of its feet. name: of the measure; zone: where on the wall; up: whether it grew."""

    name: str
    zone: Zone | None
    up: bool
    claims: tuple[FootClaim, ...]

    @property
    def feet(self) -> tuple[Foot, ...]:
        """The feet in their order."""
        return tuple(one.of.foot for one in self.claims)

    @property
    def sizes(self) -> tuple[float, float]:
        """The smallest and the largest change among the feet, without their sign."""
        sizes = [abs(one.change) for one in self.claims]
        return min(sizes), max(sizes)

    @property
    def first(self) -> FootClaim:
        """The claim that tells days and unit for all of them."""
        return self.claims[0]

    @property
    def days(self) -> tuple[date, date]:
        """From the last reading before it changed to the first after; of a trend to the last reading."""
        one = self.first
        return one.before, one.since if one.kind == "step" else one.latest


def leading_changes(changes: Changes) -> tuple[LeadingChange, ...]:
    """The known changes that are told first, those of findings before others, then what changed last.

    Of one thing on one foot the surest claim stands for all. Feet are told together where it changed on the same days.
    """
    by_thing: dict[tuple[Foot, str, Zone | None], FootClaim] = {}
    for claim in changes.real:
        name = _name(claim)
        if name in LEADING:
            by_thing.setdefault((claim.of.foot, name, claim.of.measure.zone), claim)
    grouped: dict[tuple[str, Zone | None, bool, date, date], list[FootClaim]] = {}
    for (_, name, zone), claim in by_thing.items():
        key = (name, zone, claim.change > 0, claim.before, claim.since)
        grouped.setdefault(key, []).append(claim)
    found = [LeadingChange(name, zone, up, _by_foot(held)) for (name, zone, up, *_), held in grouped.items()]
    return tuple(sorted(found, key=_order))


def _name(claim: FootClaim) -> str:
    name = claim.of.measure.name
    return SAME_THING.get(name, name)


def _by_foot(claims: Sequence[FootClaim]) -> tuple[FootClaim, ...]:
    return tuple(sorted(claims, key=lambda claim: FEET.index(claim.of.foot)))


def _order(one: LeadingChange) -> tuple[bool, int, int, int]:
    return one.name not in FOUND, -one.days[1].toordinal(), LEADING.index(one.name), FEET.index(one.feet[0])

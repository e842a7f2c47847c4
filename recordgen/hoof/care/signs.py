"""Records of a visit that a care note may be a help with: one look a reason, each telling where it stands.

What is the vet's is left out: there the caution speaks, and no note is suggested for a foot that hurts or bleeds.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator
from dataclasses import dataclass

from recordgen.hoof.cautions.rules.frog import DEEP_GROOVE_MM
from recordgen.hoof.cautions.rules.horse import CREST_FROM, HEAVY_FROM, THIN_TO
from recordgen.problems import Step
from recordgen.records.models.foot import FootVisit, Frog, WallZone
from recordgen.records.models.names import FEET, ZONES, Foot
from recordgen.records.models.reference import CareReason
from recordgen.records.models.visit import Visit

# Where a thing stands in a foot's or a visit's record; nothing where it is not there.
Stands = tuple[Step, ...]

# A shorter broken piece is left to wear off. Common practice, no source.
CHIP_MM = 10


@dataclass(frozen=True)
class Sign:
    """Something recorded: of which foot (None for the whole horse), and the steps to it in the visit's record."""

    foot: Foot | None
    steps: Stands


Look = Callable[[Visit], Iterator[Sign]]


def _on_feet(rule: Callable[[FootVisit], Stands]) -> Look:
    def look(visit: Visit) -> Iterator[Sign]:
        for foot in FEET:
            if foot in visit.feet and (stands := rule(visit.feet[foot])):
                yield Sign(foot, ("feet", foot, *stands))

    return look


def _on_walls(rule: Callable[[WallZone], Stands]) -> Look:
    def in_zones(found: FootVisit) -> Stands:
        walls = found.wall or {}
        seen = ((zone, rule(walls[zone])) for zone in ZONES if zone in walls)
        return next((("wall", zone, *stands) for zone, stands in seen if stands), ())

    return _on_feet(in_zones)


def _on_horse(rule: Callable[[Visit], Stands]) -> Look:
    def look(visit: Visit) -> Iterator[Sign]:
        if stands := rule(visit):
            yield Sign(None, stands)

    return look


def _for_the_vet(frog: Frog) -> bool:
    return frog.infection == "painful or bleeding" or frog.painful is True or frog.tissue in ("proud", "creamy")


def _infection(found: FootVisit) -> Stands:
    frog = found.frog
    if frog is None or _for_the_vet(frog):
        return ()
    return ("frog", "infection") if frog.infection in ("surface", "deep groove") else ()


def _deep_groove(found: FootVisit) -> Stands:
    frog = found.frog
    if frog is None or _for_the_vet(frog) or frog.central_groove_depth is None:
        return ()
    return ("frog", "central_groove_depth") if frog.central_groove_depth >= DEEP_GROOVE_MM else ()


def _gap(wall: WallZone) -> Stands:
    gap = wall.separation
    if gap is None:
        return ()
    unmeasured = gap.length is None and gap.depth is None
    return ("separation",) if unmeasured or gap.length or gap.depth else ()


def _crack(wall: WallZone) -> Stands:
    crack = wall.crack
    return ("crack",) if crack and not (crack.blood or crack.moisture) else ()


def _chip(wall: WallZone) -> Stands:
    return ("chip",) if wall.chip and wall.chip >= CHIP_MM else ()


def _tender_sole(found: FootVisit) -> Stands:
    sole = found.sole
    names = ("sensitive", "gives", "bruise") if sole else ()
    return next((("sole", name) for name in names if getattr(sole, name)), ())


def _warmth_or_pulse(found: FootVisit) -> Stands:
    if found.pulse in ("raised", "strong"):
        return ("pulse",)
    return ("heat",) if found.heat else ()


def _sore(visit: Visit) -> Stands:
    return ("sore_after_last_trim",) if visit.sore_after_last_trim else ()


def _condition(visit: Visit) -> Stands:
    found = visit.condition
    if found and found.crest is not None and found.crest >= CREST_FROM:
        return ("condition", "crest")
    usual = found is None or found.henneke is None or THIN_TO < found.henneke < HEAVY_FROM
    return () if usual else ("condition", "henneke")


def _boots(visit: Visit) -> Stands:
    return ("keeping", "boots") if visit.keeping and visit.keeping.boots else ()


# In the order in which they are told. A foal and the months are no part of a visit's record.
SIGNS: dict[CareReason, Look] = {
    "warmth or pulse": _on_feet(_warmth_or_pulse),
    "sore after trimming": _on_horse(_sore),
    "tender sole": _on_feet(_tender_sole),
    "infection of the frog": _on_feet(_infection),
    "deep groove": _on_feet(_deep_groove),
    "gap at the white line": _on_walls(_gap),
    "crack": _on_walls(_crack),
    "chip": _on_walls(_chip),
    "crest or condition": _on_horse(_condition),
    "boots": _on_horse(_boots),
}

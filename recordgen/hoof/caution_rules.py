"""The rules of the cautions: small functions of one signature. Each tells what a record says about one thing.

A rule answers with the facts of what was recorded (the caution is raised), with CLEARED (the same thing was recorded
otherwise), or with None (nothing was recorded about it). Rules record; the words and the levels stand in the table of
cautions, and none of them is a diagnosis.
"""

from __future__ import annotations

from collections.abc import Callable
from typing import Final, Literal

from recordgen.hoof.naming import Naming
from recordgen.records.foot import FootVisit, WallZone
from recordgen.records.visit import Visit

CLEARED: Final = "cleared"
Facts = dict[str, str]
Answer = Facts | Literal["cleared"] | None
FootRule = Callable[[FootVisit, Naming], Answer]
WallRule = Callable[[WallZone, str, Naming], Answer]
HorseRule = Callable[[Visit, Naming], Answer]

# Shown from this depth or length of a gap on. Common practice, no source.
SEPARATION_DEPTH_MM = 10
SEPARATION_LENGTH_MM = 40
# Lameness seen at every trot, or moderate. Sources: AAEP scale (grade 3); Vet Times, 7 December 2015 (4 of 10);
# Meier et al. 2021, BMC Vet Res 17:16, Table 1 (any Obel grade above 0). The last two: Common practice, no source.
MARKED_LAMENESS = {"AAEP": 3, "0-10": 4, "Obel": 1, "modified Obel": 1, "Horse Grimace": 4}
# Sources: Giles et al. 2015, BMC Vet Res 11 (crest 3 and over); Henneke et al. 1983, Equine Vet J 15:371-372 (7 is
# fleshy).
CREST_FROM, HENNEKE_FROM = 3, 7


def _object_in_foot(found: FootVisit, naming: Naming) -> Answer:
    if found.object is None:
        return None
    return {"what": found.object.what, "where": naming.place(found.object.where)} if found.object.still_in else CLEARED


def _object_taken_out(found: FootVisit, naming: Naming) -> Answer:
    if found.object is None or found.object.still_in:
        return None
    return {"what": found.object.what, "where": naming.place(found.object.where)}


def _bears_no_weight(found: FootVisit, naming: Naming) -> Answer:
    if found.bears_weight is None:
        return None
    return {} if found.bears_weight == "not" else CLEARED


def _wound(found: FootVisit, naming: Naming) -> Answer:
    return {"where": naming.place(found.wound.where)} if found.wound else None


def _abscess(found: FootVisit, naming: Naming) -> Answer:
    if found.abscess is None:
        return None
    if found.abscess.state == "drained":
        return CLEARED
    return {"where": naming.place(found.abscess.where), "state": found.abscess.state or "suspected"}


def _crack_open(wall: WallZone, where: str, naming: Naming) -> Answer:
    crack = wall.crack
    if crack is None or (crack.blood is None and crack.moisture is None):
        return None
    if crack.blood or crack.moisture:
        return {"what": "blood" if crack.blood else "moisture", "where": where}
    return CLEARED if crack.blood is crack.moisture is False else None


def _frog_tissue(found: FootVisit, naming: Naming) -> Answer:
    if found.frog is None or found.frog.tissue is None:
        return None
    return CLEARED if found.frog.tissue == "usual" else {"what": found.frog.tissue.capitalize()}


def _painful_infection(found: FootVisit, naming: Naming) -> Answer:
    if found.frog is None or found.frog.infection is None:
        return None
    return {} if found.frog.infection == "painful or bleeding" else CLEARED


def _painful_groove(found: FootVisit, naming: Naming) -> Answer:
    frog = found.frog
    if frog is None:
        return None
    if frog.infection == "deep groove" and frog.painful:
        return {}
    shallow = frog.infection is not None and frog.infection != "deep groove"
    return CLEARED if shallow or frog.painful is False else None


def _separation(wall: WallZone, where: str, naming: Naming) -> Answer:
    gap = wall.separation
    if gap is None or (gap.depth is None and gap.length is None):
        return None
    if (gap.depth or 0) >= SEPARATION_DEPTH_MM or (gap.length or 0) >= SEPARATION_LENGTH_MM:
        return {"where": where, "size": naming.size(gap.length, gap.depth)}
    return CLEARED


def _sole_sensitive(found: FootVisit, naming: Naming) -> Answer:
    if found.sole is None or found.sole.sensitive is None:
        return None
    return {} if found.sole.sensitive else CLEARED


def _sole_gives(found: FootVisit, naming: Naming) -> Answer:
    if found.sole is None or found.sole.gives is None:
        return None
    return {} if found.sole.gives else CLEARED


def _testers(found: FootVisit, naming: Naming) -> Answer:
    if found.testers is None:
        return None
    return {"where": f" ({found.testers.where})" if found.testers.where else ""} if found.testers.reaction else CLEARED


def _deviation(found: FootVisit, naming: Naming) -> Answer:
    return {"what": found.deviation} if found.deviation else None


def _pulse(found: FootVisit, naming: Naming) -> Answer:
    seen = []
    if found.pulse in ("raised", "strong"):
        seen.append(naming.phrase("pulse", how=found.pulse))
    if found.heat:
        seen.append(naming.phrase("heat"))
    if seen:
        return {"what": naming.listed(seen)}
    return CLEARED if found.pulse == "usual" else None


def _stance(visit: Visit, naming: Naming) -> Answer:
    return {"what": naming.listed(list(visit.signs))} if visit.signs else None


def _lame(visit: Visit, naming: Naming) -> Answer:
    if visit.lameness is None:
        return None
    marked = visit.lameness.grade >= MARKED_LAMENESS[visit.lameness.scale]
    return {"grade": f"{visit.lameness.grade:g}", "scale": visit.lameness.scale} if marked else CLEARED


def _slightly_lame(visit: Visit, naming: Naming) -> Answer:
    if visit.lameness is None:
        return None
    slight = 0 < visit.lameness.grade < MARKED_LAMENESS[visit.lameness.scale]
    return {"grade": f"{visit.lameness.grade:g}", "scale": visit.lameness.scale} if slight else CLEARED


def _sore_after_trim(visit: Visit, naming: Naming) -> Answer:
    if visit.sore_after_last_trim is None:
        return None
    return {} if visit.sore_after_last_trim else CLEARED


def _condition(visit: Visit, naming: Naming) -> Answer:
    score = visit.condition.henneke if visit.condition else None
    if score is None:
        return None
    return {"score": f"{score:g}"} if score >= HENNEKE_FROM else CLEARED


def _crest(visit: Visit, naming: Naming) -> Answer:
    score = visit.condition.crest if visit.condition else None
    if score is None:
        return None
    return {"score": f"{score:g}"} if score >= CREST_FROM else CLEARED


FOOT_RULES: dict[str, FootRule] = {
    "object-in-foot": _object_in_foot,
    "object-taken-out": _object_taken_out,
    "bears-no-weight": _bears_no_weight,
    "wound": _wound,
    "abscess": _abscess,
    "frog-tissue": _frog_tissue,
    "painful-infection": _painful_infection,
    "painful-groove": _painful_groove,
    "sole-sensitive": _sole_sensitive,
    "sole-gives": _sole_gives,
    "pulse": _pulse,
    "testers": _testers,
    "deviation": _deviation,
}
WALL_RULES: dict[str, WallRule] = {
    "crack-open": _crack_open,
    "separation": _separation,
}
HORSE_RULES: dict[str, HorseRule] = {
    "stance": _stance,
    "lame": _lame,
    "slightly-lame": _slightly_lame,
    "sore-after-trim": _sore_after_trim,
    "condition": _condition,
    "crest": _crest,
}

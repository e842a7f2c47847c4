"""Rules for an opened foot: something that stuck in it, a wound, an abscess, blood drawn by the trim."""

from __future__ import annotations

from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext
from recordgen.records.models.foot import Object
from recordgen.records.models.names import Place

# Where a hole may reach what lies behind it. Source: Adams and Stashak, Lameness in Horses, 7th ed., p. 481 (the middle
# third of the frog is a zone of risk). The whole frog and its grooves: Judgement.
OF_THE_FROG: tuple[Place, ...] = ("frog", "central groove", "medial groove", "lateral groove")


def object_in_foot(seen: RuleContext) -> Answer:
    """Something sticks in the foot; ends when the same place is recorded with it taken out."""
    thing = seen.found.object
    if thing is None:
        return None
    return _object(seen, thing) if thing.still_in else Cleared(thing.where)


def object_out_of_frog(seen: RuleContext) -> Answer:
    """Something stuck in the frog or a groove and was taken out; no later record can say otherwise."""
    thing = seen.found.object
    return _object(seen, thing) if thing and not thing.still_in and thing.where in OF_THE_FROG else None


def object_taken_out(seen: RuleContext) -> Answer:
    """Something stuck elsewhere in the foot and was taken out; no later record can say otherwise."""
    thing = seen.found.object
    return _object(seen, thing) if thing and not thing.still_in and thing.where not in OF_THE_FROG else None


def wound(seen: RuleContext) -> Answer:
    """A wound, each place of the foot for itself; ends when that place is found healed."""
    found = seen.found.wound
    if found is None:
        return None
    return Cleared(found.where) if found.healed else Raised({"where": seen.naming.place(found.where)}, found.where)


def abscess(seen: RuleContext) -> Answer:
    """An abscess that has not drained; one of a foot at a time, since it comes out elsewhere than it was suspected."""
    found = seen.found.abscess
    if found is None:
        return None
    if found.state == "drained":
        return Cleared()
    return Raised({"where": seen.naming.place(found.where), "state": seen.naming.value(found.state or "suspected")})


def abscess_drained(seen: RuleContext) -> Answer:
    """An abscess that had drained when it was first recorded, so that nobody was asked about it yet."""
    found = seen.found.abscess
    if found is None or found.state != "drained" or seen.is_open("abscess"):
        return None
    return Raised({"where": seen.naming.place(found.where)}, found.where)


def drew_blood(seen: RuleContext) -> Answer:
    """The trim drew blood; the next trim, which may draw none, tells nothing of it."""
    return Raised({}) if seen.found.drew_blood else None


def _object(seen: RuleContext, thing: Object) -> Raised:
    return Raised({"what": thing.what, "where": seen.naming.place(thing.where)}, thing.where)

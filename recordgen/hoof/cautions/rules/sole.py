"""Rules for one record of a sole, of the hairline and of the white line: pain, give, shape, and how little is left."""

from __future__ import annotations

from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext, raised_if

# A hollow or a groove of this depth and less is near nothing, three times the error of the probe: Judgement. No depth
# at the point of the frog goes with a sole of less than 7 mm: Taylor, as reported by virtualponyrancher.com.
NEAR_NOTHING_MM = 3


def sole_sensitive(seen: RuleContext) -> Answer:
    """A sole that hurts under the thumbs."""
    return raised_if(seen.found.sole.sensitive if seen.found.sole else None, True)


def sole_gives(seen: RuleContext) -> Answer:
    """A sole that gives under the thumbs."""
    return raised_if(seen.found.sole.gives if seen.found.sole else None, True)


def gives_and_warm(seen: RuleContext) -> Answer:
    """A sole that gives, and a warm hoof or a raised pulse of the same foot, whichever came first.

    Ends when the sole no longer gives, or when hoof and pulse are both as usual. It is asked after the rules of which
    it is made, so that what is open is up to date.
    """
    found = seen.found
    gives = found.sole.gives if found.sole else None
    together = seen.is_open("sole-gives") and (seen.is_open("pulse") or seen.is_open("heat"))
    if together and (gives or found.heat or found.pulse in ("raised", "strong")):
        return Raised({})
    return Cleared() if gives is False or (found.heat is False and found.pulse == "usual") else None


def sole_flat(seen: RuleContext) -> Answer:
    """A sole that is flat from side to side."""
    return raised_if(seen.found.sole.shape if seen.found.sole else None, "flat")


def sole_bulging(seen: RuleContext) -> Answer:
    """A sole that bulges below the edge of the wall."""
    return raised_if(seen.found.sole.shape if seen.found.sole else None, "bulging")


def hairline_dip(seen: RuleContext) -> Answer:
    """A dip that a finger finds just above the hairline."""
    return raised_if(seen.found.hairline_dip, True)


def white_line_blood(seen: RuleContext) -> Answer:
    """Blood in the white line of one zone."""
    blood = seen.wall.white_line_blood
    if blood is None:
        return None
    return Raised({"where": seen.where}) if blood else Cleared()


def sole_shallow(seen: RuleContext) -> Answer:
    """A sole that is hollow by 3 mm and less."""
    return _near_nothing(seen, [seen.found.sole.depth if seen.found.sole else None])


def groove_shallow(seen: RuleContext) -> Answer:
    """A groove beside the frog that is 3 mm deep and less at its point; both sides must be deeper to end it."""
    sides = seen.found.frog.groove_depth if seen.found.frog else None
    return _near_nothing(seen, [sides.medial, sides.lateral]) if sides else None


def _near_nothing(seen: RuleContext, depths: list[float | None]) -> Answer:
    taken = [depth for depth in depths if depth is not None]
    if taken and min(taken) <= NEAR_NOTHING_MM:
        return Raised({"now": seen.naming.mm(min(taken))})
    return Cleared() if taken and len(taken) == len(depths) else None

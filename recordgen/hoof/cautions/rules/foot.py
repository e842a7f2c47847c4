"""Rules for one record of a foot or of a zone of its wall: those that look at nothing else."""

from __future__ import annotations

from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext, raised_if

# Told from this depth or length of a gap on. Common practice, no source.
SEPARATION_DEPTH_MM = 10
SEPARATION_LENGTH_MM = 40


def bears_no_weight(seen: RuleContext) -> Answer:
    """The foot takes no weight."""
    return raised_if(seen.found.bears_weight, "not")


def bears_less(seen: RuleContext) -> Answer:
    """The foot is spared at rest."""
    return raised_if(seen.found.bears_weight, "less")


def pulse(seen: RuleContext) -> Answer:
    """A raised or strong pulse at the foot; ends with a usual one."""
    if seen.found.pulse is None:
        return None
    return Cleared() if seen.found.pulse == "usual" else Raised({"what": seen.naming.value(seen.found.pulse)})


def heat(seen: RuleContext) -> Answer:
    """A hoof that is warmer than the others."""
    return raised_if(seen.found.heat, True)


def testers(seen: RuleContext) -> Answer:
    """A reaction to hoof testers."""
    found = seen.found.testers
    if found is None:
        return None
    return Raised({"where": f" ({found.where})" if found.where else ""}) if found.reaction else Cleared()


def crack_open(seen: RuleContext) -> Answer:
    """A crack with blood or moisture; ends when neither was seen in it."""
    crack = seen.wall.crack
    if crack is None:
        return None
    if crack.blood or crack.moisture:
        return Raised({"what": seen.naming.value("blood" if crack.blood else "moisture"), "where": seen.where})
    return Cleared() if crack.blood is crack.moisture is False else None


def separation(seen: RuleContext) -> Answer:
    """A gap at the white line, 10 mm deep or 40 mm long and over."""
    gap = seen.wall.separation
    if gap is None or (gap.depth is None and gap.length is None):
        return None
    if (gap.depth or 0) >= SEPARATION_DEPTH_MM or (gap.length or 0) >= SEPARATION_LENGTH_MM:
        return Raised({"where": seen.where, "size": seen.naming.size(gap.length, gap.depth)})
    return Cleared(left=remaining_gap(seen))


def remaining_gap(seen: RuleContext) -> dict[str, str]:
    """The size of the gap at the white line as recorded; nothing where it was found closed."""
    gap = seen.wall.separation
    return {"size": seen.naming.size(gap.length, gap.depth)} if gap and (gap.length or gap.depth) else {}

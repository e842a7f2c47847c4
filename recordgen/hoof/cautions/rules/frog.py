"""Rules for one record of a frog: its tissue, its infection, its grooves, and whether it hurts."""

from __future__ import annotations

from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext
from recordgen.hoof.cautions.rules.lameness import with_lameness
from recordgen.records.models.foot import Frog

# A middle groove of this depth is deep: a brush across the frog does not reach its ground. Common practice, no source.
DEEP_GROOVE_MM = 10


def frog_tissue(seen: RuleContext) -> Answer:
    """Proud or creamy tissue of the frog."""
    tissue = seen.found.frog.tissue if seen.found.frog else None
    if tissue is None:
        return None
    return Cleared() if tissue == "usual" else Raised({"what": seen.naming.value(tissue)})


def painful_infection(seen: RuleContext) -> Answer:
    """An infection of the frog that hurts or bleeds; ends with one at the surface or none, and not with a deep one."""
    infection = seen.found.frog.infection if seen.found.frog else None
    if infection == "painful or bleeding":
        return Raised({})
    return Cleared() if infection in ("none", "surface") else None


def painful_groove(seen: RuleContext) -> Answer:
    """A groove of the frog that is deep and hurts; ends when it is no longer deep, or no longer hurts."""
    frog = seen.found.frog
    if frog is None:
        return None
    if frog.painful and _deep(frog):
        return Raised({})
    return Cleared() if frog.painful is False or _shallow(frog) else None


def painful_frog(seen: RuleContext) -> Answer:
    """A frog that hurts, where no rule that says more is raised by it."""
    frog = seen.found.frog
    if frog is None or frog.painful is None:
        return None
    if not frog.painful:
        return Cleared()
    return None if _deep(frog) or frog.infection == "painful or bleeding" else Raised({})


def groove_and_lame(seen: RuleContext) -> Answer:
    """A frog or groove that hurts, and lameness at the same visit."""
    frog = seen.found.frog
    return with_lameness(seen, "groove-and-lame", bool(frog and frog.painful))


def _deep(frog: Frog) -> bool:
    """Tell whether the middle groove is deep, whichever of the two was written."""
    return frog.infection == "deep groove" or (frog.central_groove_depth or 0) >= DEEP_GROOVE_MM


def _shallow(frog: Frog) -> bool:
    """Tell whether it was recorded, and is not deep by either; a frog that bleeds is no better than a deep groove."""
    recorded = frog.infection in ("none", "surface") or frog.central_groove_depth is not None
    return recorded and not _deep(frog) and frog.infection != "painful or bleeding"

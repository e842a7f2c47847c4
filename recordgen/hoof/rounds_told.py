"""A plan of rounds in sentences, for pages and the terminal."""

from __future__ import annotations

from recordgen.days import weekday_day
from recordgen.hoof.naming import Naming
from recordgen.hoof.rounds import Plan, Unmet
from recordgen.hoof.summary import HorseSummary


def fewest_told(plan: Plan, naming: Naming) -> str:
    """How many days a plan takes, and whether fewer would do; a sentence without its full stop."""
    days = naming.days(len(plan.rounds))
    if not plan.rounds:
        return naming.phrase("rounds_none")
    if plan.gap:
        return naming.phrase("rounds_more", days=days, more=naming.days(plan.gap))
    return naming.phrase("rounds_unmet_fewest" if plan.unmet else "rounds_fewest", days=days)


def held_told(horse: HorseSummary, naming: Naming) -> str:
    """Why nothing is trimmed of a horse until the vet agrees; sentences."""
    seen = " ".join(dict.fromkeys(caution.seen for caution in horse.held))
    return naming.phrase("rounds_no_trim_why", seen=seen)


def unmet_told(one: Unmet, naming: Naming) -> str:
    """Why a horse is not visited inside its window, and when it is; a sentence without its full stop."""
    earliest, latest = naming.day(one.wish.earliest), naming.day(one.wish.latest)
    window = latest if earliest == latest else naming.phrase("rounds_window", earliest=earliest, latest=latest)
    why = naming.phrase(f"rounds_{one.why.replace(' ', '_')}", window=window, latest=latest)
    placed = naming.phrase("rounds_placed", day=weekday_day(one.placed)) if one.placed else None
    return f"{why}; {placed or naming.phrase('rounds_unplaced')}"

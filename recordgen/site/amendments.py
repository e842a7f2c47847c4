"""Changes in a horse's visits after they were first kept, for a page and for the vet's sheet."""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import replace
from datetime import date

from recordgen.hoof.naming import Naming
from recordgen.hoof.summary import HorseSummary
from recordgen.records.history.model import Amendment, Part, VisitTrail
from recordgen.records.history.trails import trails
from recordgen.records.load.everything import Whole
from recordgen.records.models.visit import Visit

# The trails of a horse's visits, oldest first, as git tells them; none where it tells nothing.
HorseTrails = Sequence[VisitTrail | None]


def trail_finder(horse: HorseSummary, trails: HorseTrails) -> Callable[[Visit], VisitTrail | None]:
    """A finder of the trail of one of a horse's visits."""
    visits = [one.visit for one in reversed(horse.history)]
    found = {id(visit): trail for visit, trail in zip(visits, trails, strict=False)}
    return lambda visit: found.get(id(visit))


def amendments(horse: HorseSummary, trails: HorseTrails, naming: Naming) -> list[tuple[date, str]]:
    """Each later change of a visit: the day of the visit, and what was changed when; oldest first.

    Nothing private, and no earlier wording of a free text.
    """
    days = [one.visit.date for one in reversed(horse.history)]
    told = []
    for day, trail in zip(days, trails, strict=False):
        if trail:
            told += [(day, _amendment_text(change, naming)) for change in trail.for_stable().changes]
    return told


def bare_amendments(whole: Whole, horse: HorseSummary, naming: Naming) -> list[tuple[date, str]] | None:
    """Amendments made later, for a sheet that leaves the stable; None where git tells nothing.

    Without the reasons, which may name other horses of the stable.
    """
    found = trails(whole.practice, whole.reference).of_horse(horse.stable, horse.slug)
    bare = [trail and replace(trail, changes=tuple(map(_without_reason, trail.changes))) for trail in found]
    return amendments(horse, bare, naming) if any(bare) else None


def _without_reason(change: Amendment) -> Amendment:
    return replace(change, reason="")


def _amendment_text(change: Amendment, naming: Naming) -> str:
    when = naming.phrase("trail_on", day=naming.day(change.day)) if change.day else naming.phrases["trail_on_no_day"]
    how = [] if change.kind == "changed" else [naming.phrases[f"trail_{change.kind.replace(' ', '_')}"]]
    why = [naming.phrase("trail_reason", reason=change.reason)] if change.reason else []
    return f"{when}: " + "; ".join([*how, *(describe_part(part, False, naming) for part in change.parts), *why])


def describe_part(part: Part, private: bool, naming: Naming) -> str:
    """One value that changed, in words. private: for the trimmer, who alone reads earlier wordings of a free text."""
    how = "added" if part.before is None else "gone" if part.after is None else "from_to"
    key = f"trail_{'worded_' if part.worded and not private else ''}{how}"
    return naming.phrase(key, what=part.what, before=part.before or "", after=part.after or "")

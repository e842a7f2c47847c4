"""A reason that holds a trim back: an open caution that asks for none until the vet agrees."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date

from recordgen.hoof.cautions.cautions import Caution
from recordgen.hoof.due import plan_in_force
from recordgen.records.models.horse import Horse
from recordgen.records.models.visit import VetEntry, Visit


def held_by(horse: Horse, visits: Sequence[Visit], cautions: Sequence[Caution], today: date) -> tuple[Caution, ...]:
    """The open cautions because of which nothing is trimmed, until a vet agrees after they were last recorded.

    visits: oldest first. A vet agrees by an entry with `trim_agreed: yes` that no later one takes back, or by a plan in
    force that sets an interval; on the very day, too, since the vet was called. What another one sums up is left out.
    """
    asked = [one for one in cautions if one.no_trim]
    agreed = _day_of_agreement(horse, visits, today) if asked else None
    held = [one for one in asked if agreed is None or agreed < one.day]
    return tuple(one for one in held if one.part_of not in [other.rule for other in held])


def _day_of_agreement(horse: Horse, visits: Sequence[Visit], today: date) -> date | None:
    """The day on which a vet last agreed to a trim; None where none did, or where one said no after it."""
    said = sorted((entry for visit in visits for entry in visit.vet if entry.trim_agreed is not None), key=_day)
    days = [said[-1].date] if said and said[-1].trim_agreed else []
    plan = plan_in_force(horse.vet_plan, visits[-1].date, today) if visits else None
    if plan and not (said and not said[-1].trim_agreed and said[-1].date > plan.date):
        days.append(plan.date)
    return max(days, default=None)


def _day(entry: VetEntry) -> date:
    return entry.date

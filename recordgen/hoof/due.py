"""When the next visit is due: a window with its best day, and the reason in a sentence."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from recordgen.hoof.age import CLASS_RANGE_WEEKS, CareClass, care_class
from recordgen.hoof.naming import Naming
from recordgen.records.horse import Horse, PracticeFile, VetPlan
from recordgen.records.visit import Visit

Whose = Literal["usual", "vet", "trimmer"]


@dataclass(frozen=True)
class Due:
    """A window for the next visit, and why. overdue_days counts from the latest day; 0 before it."""

    earliest: date
    best: date
    latest: date
    whose: Whose
    reason: str
    overdue_days: int


@dataclass(frozen=True)
class _Word:
    """A best day, who gave it, and the sentence of its reason."""

    best: date
    whose: Whose
    reason: str


def due(horse: Horse, visits: Sequence[Visit], practice: PracticeFile, naming: Naming, today: date) -> Due | None:
    """The window of the next visit, or None for a horse that has left or was never visited.

    visits: oldest first. The usual interval, clamped to the class's range, is shortened by a vet's plan in force; the
    trimmer's own word at the last visit goes before both. The plan bounds the latest day whoever set the best.
    """
    if not visits or horse.left:
        return None
    last = visits[-1]
    plan = plan_in_force(horse.vet_plan, last.date, today)
    word = _trimmer(last, practice, naming) or _sooner(_usual(horse, last, practice, naming), plan, last, naming)
    earliest, latest = _window(word.best, last.date, care_class(horse, last.date), practice.leeway_days)
    if plan and plan.weeks:
        latest = max(word.best, min(latest, last.date + days_of(plan.weeks)))
    return Due(earliest, word.best, latest, word.whose, word.reason, max(0, (today - latest).days))


def days_of(weeks: float) -> timedelta:
    """Weeks as whole days, half a day rounded up."""
    return timedelta(days=math.floor(7 * weeks + 0.5))


def plan_in_force(plan: VetPlan | None, last: date, today: date) -> VetPlan | None:
    """A vet's plan if it sets an interval for the time after the last visit, and was made by today."""
    if plan is None or plan.weeks is None or plan.date > today or (plan.until and plan.until < last):
        return None
    return plan


def _window(best: date, last: date, group: CareClass, leeway_days: int) -> tuple[date, date]:
    low, high = CLASS_RANGE_WEEKS[group]
    leeway = timedelta(days=leeway_days)
    earliest = max(best - leeway, last + timedelta(weeks=low))
    latest = min(best + leeway, last + timedelta(weeks=high))
    return min(earliest, best), max(latest, best)


def _trimmer(last: Visit, practice: PracticeFile, naming: Naming) -> _Word | None:
    if last.next is None:
        return None
    if last.next.date:
        best, said = last.next.date, naming.phrase("due_trimmer_date", trimmer=practice.trimmer)
    else:
        weeks = float(last.next.weeks or 0)
        best = last.date + days_of(weeks)
        said = naming.phrase("due_trimmer_weeks", weeks=naming.weeks(weeks), trimmer=practice.trimmer)
    if last.next.reason:
        said = naming.phrase("due_trimmer_reason", reason_so_far=said, reason=last.next.reason)
    return _Word(best, "trimmer", said)


def _sooner(usual: _Word, plan: VetPlan | None, last: Visit, naming: Naming) -> _Word:
    if plan is None or plan.weeks is None or last.date + days_of(plan.weeks) >= usual.best:
        return usual
    said = naming.phrase("due_vet", weeks=naming.weeks(plan.weeks), by=plan.by)
    return _Word(last.date + days_of(plan.weeks), "vet", said)


def _usual(horse: Horse, last: Visit, practice: PracticeFile, naming: Naming) -> _Word:
    group = care_class(horse, last.date)
    low, high = CLASS_RANGE_WEEKS[group]
    wished = horse.usual_weeks or getattr(practice.usual_weeks, group)
    weeks = min(max(wished, low), high)
    facts = {"weeks": naming.weeks(weeks), "class": naming.phrases[f"class_{group}"]}
    if weeks != wished:
        said = naming.phrase("due_clamped", low=f"{low}", high=f"{high}", **facts)
    elif horse.usual_weeks:
        said = naming.phrase("due_usual_horse", **facts)
    else:
        said = naming.phrase("due_usual_class", **facts)
    return _Word(last.date + days_of(weeks), "usual", said)

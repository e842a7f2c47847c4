"""When the next visit is due: a window with its best day, and the reason in a sentence."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from typing import Literal

from recordgen.hoof.age import CLASS_RANGE_WEEKS, CareClass, care_class
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


def due(
    horse: Horse, visits: Sequence[Visit], practice: PracticeFile, phrases: dict[str, str], today: date
) -> Due | None:
    """The window of the next visit, or None for a horse that has left or was never visited.

    visits: oldest first. The usual interval, clamped to the class's range, gives way to a vet's plan in force, and
    both to the trimmer's own word at the last visit. A plan still bounds the latest day.
    """
    if not visits or horse.left:
        return None
    last = visits[-1]
    group = care_class(horse, last.date)
    word = (
        _trimmer(last, practice, phrases)
        or _vet(horse.vet_plan, last, phrases)
        or _usual(horse, last, practice, phrases)
    )
    earliest, latest = _window(word, last.date, group, practice.leeway_days)
    plan = _plan_in_force(horse.vet_plan, last)
    if plan:
        latest = max(word.best, min(latest, last.date + _weeks(plan.weeks or 0)))
    overdue = max(0, (today - latest).days)
    return Due(earliest, word.best, latest, word.whose, word.reason, overdue)


def _weeks(weeks: float) -> timedelta:
    return timedelta(days=round(7 * weeks))


def _window(word: _Word, last: date, group: CareClass, leeway_days: int) -> tuple[date, date]:
    low, high = CLASS_RANGE_WEEKS[group]
    leeway = timedelta(days=leeway_days)
    earliest = max(word.best - leeway, last + timedelta(weeks=low))
    latest = min(word.best + leeway, last + timedelta(weeks=high))
    return min(earliest, word.best), max(latest, word.best)


def _plan_in_force(plan: VetPlan | None, last: Visit) -> VetPlan | None:
    """The plan if it sets an interval and was in force at the last visit."""
    if plan is None or plan.weeks is None or plan.date > last.date or (plan.until and plan.until < last.date):
        return None
    return plan


def _trimmer(last: Visit, practice: PracticeFile, phrases: dict[str, str]) -> _Word | None:
    if last.next is None:
        return None
    if last.next.date:
        best, said = last.next.date, phrases["due_trimmer_date"].format(trimmer=practice.trimmer)
    else:
        best = last.date + _weeks(last.next.weeks or 0)
        said = phrases["due_trimmer_weeks"].format(weeks=f"{last.next.weeks:g}", trimmer=practice.trimmer)
    if last.next.reason:
        said = phrases["due_trimmer_reason"].format(reason_so_far=said, reason=last.next.reason)
    return _Word(best, "trimmer", said)


def _vet(plan: VetPlan | None, last: Visit, phrases: dict[str, str]) -> _Word | None:
    plan = _plan_in_force(plan, last)
    if plan is None:
        return None
    said = phrases["due_vet"].format(weeks=f"{plan.weeks:g}", by=plan.by)
    return _Word(last.date + _weeks(plan.weeks or 0), "vet", said)


def _usual(horse: Horse, last: Visit, practice: PracticeFile, phrases: dict[str, str]) -> _Word:
    group = care_class(horse, last.date)
    low, high = CLASS_RANGE_WEEKS[group]
    named = phrases[f"class_{group}"]
    wished = horse.usual_weeks or getattr(practice.usual_weeks, group)
    weeks = min(max(wished, low), high)
    whose = phrases["due_usual_horse"] if horse.usual_weeks else phrases["due_usual_class"].format(**{"class": named})
    said = phrases["due_usual"].format(weeks=f"{weeks:g}", whose=whose)
    if weeks != wished:
        said = phrases["due_clamped"].format(weeks=f"{weeks:g}", low=low, high=high, **{"class": named})
    return _Word(last.date + _weeks(weeks), "usual", said)

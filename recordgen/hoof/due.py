"""Tell when the next visit is due: a window with its best day, and the reason of each of its days in a sentence."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date, timedelta
from typing import Literal

from recordgen.hoof.age_class import care_class
from recordgen.hoof.context import Context
from recordgen.hoof.growth.growth import HorseGrowth
from recordgen.hoof.growth.season import Season, growing_days
from recordgen.hoof.observations import Finding
from recordgen.records.models.horse import Horse, VetPlan
from recordgen.records.models.names import CareClass
from recordgen.records.models.reference import ClassWords
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.visit import Visit

Whose = Literal["usual", "growth", "practice", "vet", "trimmer"]

# Young and old go by the practice's weeks and allowance for adults.
FILED_UNDER: dict[CareClass, Literal["adult", "donkey", "foal"]] = {
    "foal": "foal",
    "yearling": "adult",
    "adult": "adult",
    "aged": "adult",
    "donkey": "donkey",
}


@dataclass(frozen=True)
class Bound:
    """A day and why it is that day."""

    day: date
    reason: str


@dataclass(frozen=True)
class Due:
    """A window for the next visit, and why. overdue_days counts from the latest day; 0 before it.

    holiday: the public holiday on the best day, if it is one.
    """

    earliest: date
    best: date
    latest: date
    whose: Whose
    reason: str
    earliest_reason: str
    latest_reason: str
    overdue_days: int
    holiday: str | None = None


@dataclass(frozen=True)
class _Word:
    """A best day, who gave it, why, and the days before and after it that would do as well, with their reasons."""

    best: date
    whose: Whose
    reason: str
    early: Bound
    late: Bound

    @property
    def ordered(self) -> _Word:
        """The same with no bound on the wrong side of the best day."""
        early = self.early if self.early.day <= self.best else Bound(self.best, self.reason)
        late = self.late if self.late.day >= self.best else Bound(self.best, self.reason)
        return replace(self, early=early, late=late)


def due(
    horse: Horse, visits: Sequence[Visit], found: Sequence[Finding], growth: HorseGrowth, ways: Context, today: date
) -> Due | None:
    """The window of the next visit, or None for a horse that has left or was never visited.

    visits: oldest first. found: what was found at the last of them. The best day is that on which toe growth since
    the trim reaches the allowance, or that of the usual interval where the horse has one of its own or no cycle of
    growth is known, held within the class's range. A vet's plan in force and the practice's own rules shorten it; the
    trimmer's word at the last visit goes before all. A plan bounds the latest day whoever set the best.
    """
    if not visits or horse.left:
        return None
    last = visits[-1]
    plan = plan_in_force(horse.vet_plan, last.date, today)
    deciders = _Deciders(horse, visits, ways)
    limits = [*deciders.by_the_vet(plan), *deciders.by_rule(found)]
    word = deciders.by_the_trimmer() or _soonest(deciders.by_growth(growth) or deciders.by_the_usual(), limits)
    if plan and plan.weeks:
        most = Bound(last.date + days_of(plan.weeks), deciders.plan_text(plan))
        word = replace(word, late=min(word.late, most, key=_day))
    word = word.ordered
    late_days = (today - word.late.day).days if today > word.late.day else 0
    return Due(
        word.early.day,
        word.best,
        word.late.day,
        word.whose,
        word.reason,
        word.early.reason,
        word.late.reason,
        late_days,
        ways.public.name(word.best),
    )


def days_of(weeks: float) -> timedelta:
    """Weeks as whole days, half a day rounded up."""
    return timedelta(days=math.floor(7 * weeks + 0.5))


def plan_in_force(plan: VetPlan | None, last: date, today: date) -> VetPlan | None:
    """A vet's plan if it sets an interval for the time after the last visit, and was made by today."""
    if plan is None or plan.weeks is None or plan.date > today or (plan.until and plan.until < last):
        return None
    return plan


def usual_weeks(practice: PracticeFile, group: CareClass) -> float:
    """The usual interval of a class in a practice, in weeks."""
    return float(getattr(practice.usual_weeks, FILED_UNDER[group]))


def day_grown(start: date, growth_mm: float, mm_per_day: float, season: Season | None, most: date) -> date:
    """The day nearest to that on which so much will have grown since `start`; `most` where that is later or never."""
    if mm_per_day <= 0 or mm_per_day * growing_days(season, start, most) <= growth_mm:
        return most
    day = start + timedelta(days=round(growth_mm / mm_per_day))
    if season is None:
        return day
    days = (start + timedelta(days=count) for count in range((most - start).days + 1))
    return min(days, key=lambda day: abs(mm_per_day * growing_days(season, start, day) - growth_mm))


def _day(bound: Bound) -> date:
    return bound.day


def _soonest(usual: _Word, limits: Sequence[_Word]) -> _Word:
    """The usual day, or the soonest of those that may not be passed."""
    first = min(limits, key=lambda limit: limit.best, default=usual)
    return first if first.best < usual.best else replace(usual, late=min([usual.late, *_lates(limits)], key=_day))


def _lates(limits: Sequence[_Word]) -> list[Bound]:
    return [limit.late for limit in limits]


class _Deciders:
    """Asks everybody who has a say in the next visit of a horse."""

    def __init__(self, horse: Horse, visits: Sequence[Visit], ways: Context) -> None:
        self.horse = horse
        self.last = visits[-1]
        self.trimmed = next((visit for visit in reversed(visits) if visit.trimmed), None)
        self.ways = ways
        self.name = care_class(horse, self.last.date)
        self.group: ClassWords = ways.group(self.name)
        self.low = self.last.date + days_of(self.group.weeks.at_least)
        self.high = self.last.date + days_of(self.group.weeks.at_most)

    def by_the_trimmer(self) -> _Word | None:
        wanted = self.last.next
        if wanted is None or (wanted.date is None and wanted.weeks is None):
            return None
        trimmer = self.ways.practice.trimmer
        if wanted.date:
            best, said = wanted.date, self._sentence("due_trimmer_date", trimmer=trimmer)
        else:
            weeks = float(wanted.weeks or 0)
            best = self.last.date + days_of(weeks)
            said = self._sentence("due_trimmer_weeks", weeks=self.ways.naming.weeks(weeks), trimmer=trimmer)
        if wanted.reason:
            said = self._sentence("due_trimmer_reason", reason_so_far=said, reason=wanted.reason)
        return self._with_leeway(best, "trimmer", said)

    def by_the_vet(self, plan: VetPlan | None) -> list[_Word]:
        if plan is None or plan.weeks is None:
            return []
        said = self._sentence("due_vet", weeks=self.ways.naming.weeks(plan.weeks), by=plan.by)
        return [self._limit(plan.weeks, "vet", said, self.plan_text(plan))]

    def plan_text(self, plan: VetPlan) -> str:
        return self._sentence("bound_vet", weeks=self.ways.naming.weeks(plan.weeks or 0), by=plan.by)

    def by_rule(self, found: Sequence[Finding]) -> list[_Word]:
        words = []
        for rule in self.ways.practice.sooner:
            met = [one for one in found if one.kind == rule.finding and (one.size_mm or 0) >= (rule.from_mm or 0)]
            if met:
                facts = {"weeks": self.ways.naming.weeks(rule.weeks), "finding": met[0].text}
                words.append(
                    self._limit(
                        rule.weeks,
                        "practice",
                        self._sentence("due_rule", **facts),
                        self._sentence("bound_rule", **facts),
                    )
                )
        return words

    def by_growth(self, growth: HorseGrowth) -> _Word | None:
        """None where the horse has an interval of its own, was never trimmed, or shows no cycle of growth."""
        if self.horse.usual_weeks or self.trimmed is None or growth.together.cycles == 0:
            return None
        allowed, whose = self._allowance()
        rate, start = growth.to_come, self.trimmed.date
        days = {
            pace: day_grown(start, allowed, pace, growth.season, self.high) for pace in (rate.low, rate.mean, rate.high)
        }
        best = max(days[rate.mean], self.low)
        held = self._leeway(best)
        fast = Bound(days[rate.high], self._sentence("bound_fast", rate=self._a_month(rate.high)))
        slow = Bound(days[rate.low], self._sentence("bound_slow", rate=self._a_month(rate.low)))
        facts = {"mm": self.ways.naming.mm(round(allowed)), "allowance": whose, "rate": self._a_month(rate.mean)}
        known = growth.together
        said = self._sentence("due_growth", low=self._a_month(known.low), high=self._a_month(known.high), **facts)
        return _Word(best, "growth", said, *self._inside(min(held[0], fast, key=_day), max(held[1], slow, key=_day)))

    def by_the_usual(self) -> _Word:
        wished = self.horse.usual_weeks or usual_weeks(self.ways.practice, self.name)
        low, high = self.group.weeks.at_least, self.group.weeks.at_most
        weeks = min(max(wished, low), high)
        facts = {"weeks": self.ways.naming.weeks(weeks), "class": self.group.name}
        if weeks != wished:
            said = self._sentence("due_clamped", low=f"{low:g}", high=f"{high:g}", **facts)
        elif self.horse.usual_weeks:
            said = self._sentence("due_usual_horse", **facts)
        else:
            said = self._sentence("due_usual_class", **facts)
        return self._with_leeway(self.last.date + days_of(weeks), "usual", said)

    def _allowance(self) -> tuple[float, str]:
        """Tell how much toe may grow from trim to trim, mm, and whose figure that is."""
        practice = self.ways.practice
        own: float | None = getattr(practice.allowances, FILED_UNDER[self.name])
        if own:
            return own, self._sentence("allowance_practice", **{"class": self.group.name})
        weeks = usual_weeks(practice, self.name)
        facts = {"class": self.group.name, "weeks": self.ways.naming.weeks(weeks)}
        return 7 * weeks * self.group.growth.mm_per_day, self._sentence("allowance_usual", **facts)

    def _limit(self, weeks: float, whose: Whose, said: str, most: str) -> _Word:
        word = self._with_leeway(self.last.date + days_of(weeks), whose, said)
        return replace(word, late=Bound(word.best, most))

    def _with_leeway(self, best: date, whose: Whose, said: str) -> _Word:
        return _Word(best, whose, said, *self._inside(*self._leeway(best)))

    def _leeway(self, best: date) -> tuple[Bound, Bound]:
        days = self.ways.practice.leeway_days
        told = self._sentence("bound_leeway", days=self.ways.naming.days(days))
        return Bound(best - timedelta(days=days), told), Bound(best + timedelta(days=days), told)

    def _inside(self, early: Bound, late: Bound) -> tuple[Bound, Bound]:
        """The bounds held within the range of the class."""
        least = self._sentence(
            "bound_least", weeks=self.ways.naming.weeks(self.group.weeks.at_least), **{"class": self.group.name}
        )
        most = self._sentence(
            "bound_most", weeks=self.ways.naming.weeks(self.group.weeks.at_most), **{"class": self.group.name}
        )
        return max(early, Bound(self.low, least), key=_day), min(late, Bound(self.high, most), key=_day)

    def _a_month(self, mm_per_day: float) -> str:
        return self.ways.naming.a_month(mm_per_day)

    def _sentence(self, key: str, **facts: str) -> str:
        return self.ways.naming.phrase(key, **facts)

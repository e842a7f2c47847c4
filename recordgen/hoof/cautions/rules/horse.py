"""Rules for the whole horse at one visit: signs, alone and together, soreness, condition, and being overdue."""

from __future__ import annotations

from datetime import timedelta

from recordgen.hoof.age_class import care_class
from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext
from recordgen.hoof.cautions.rules.lameness import lameness
from recordgen.hoof.due import Due, plan_in_force
from recordgen.hoof.naming import Naming

# Sources: Giles et al. 2015, BMC Vet Res 11 (crest 3 and over); Henneke et al. 1983, Equine Vet J 15:371-372 (7 is
# fleshy, 3 is thin).
CREST_FROM, HEAVY_FROM, THIN_TO = 3, 7, 3


def stance(seen: RuleContext) -> Answer:
    """Any sign of how the horse stood or moved; ends where it was looked at and showed none."""
    if seen.visit.signs:
        return Raised({"what": seen.naming.listed([seen.naming.value(sign) for sign in seen.visit.signs])})
    return Cleared() if seen.visit.showed_no_sign else None


def signs_together(seen: RuleContext) -> Answer:
    """Two or more kinds of sign at one visit: how the horse stood or moved, lameness, a strong pulse, a warm hoof."""
    feet = seen.visit.feet.values()
    pulses = {found.pulse for found in feet} & {"raised", "strong"}
    signs: list[str] = [seen.naming.value(sign) for sign in dict.fromkeys(seen.visit.signs)]
    grade = lameness(seen)
    if grade and grade.grade > 0:
        signs.append(seen.naming.phrase("lameness", grade=f"{grade.grade:g}", scale=grade.scale))
    if pulses:
        signs.append(seen.naming.phrase("pulse", how=seen.naming.value("strong" if "strong" in pulses else "raised")))
    if any(found.heat for found in feet):
        signs.append(seen.naming.phrase("heat"))
    return Raised({"what": seen.naming.listed(signs)}) if len(signs) > 1 else None


def sore_after_trim(seen: RuleContext) -> Answer:
    """Soreness after the trim before this visit."""
    sore = seen.visit.sore_after_last_trim
    if sore is None:
        return None
    return Raised({}) if sore else Cleared()


def heavy(seen: RuleContext) -> Answer:
    """Body condition 7 of 9 and over."""
    score = seen.visit.condition.henneke if seen.visit.condition else None
    return None if score is None else _answer_score(score, score >= HEAVY_FROM)


def thin(seen: RuleContext) -> Answer:
    """Body condition 3 of 9 and under."""
    score = seen.visit.condition.henneke if seen.visit.condition else None
    return None if score is None else _answer_score(score, score <= THIN_TO)


def crest(seen: RuleContext) -> Answer:
    """A crest of 3 of 5 and over."""
    score = seen.visit.condition.crest if seen.visit.condition else None
    return None if score is None else _answer_score(score, score >= CREST_FROM)


def overdue(seen: RuleContext) -> Answer:
    """Longer since the last visit than its class or a vet's plan allows, whatever else was set."""
    if seen.due is None or seen.today is None:
        return None
    last = seen.visit.date
    group = seen.ways.group(care_class(seen.horse, last))
    limit = group.weeks.at_most
    plan = plan_in_force(seen.horse.vet_plan, last, seen.today)
    if plan and plan.weeks:
        limit = min(limit, plan.weeks)
    since = last + timedelta(days=int(7 * limit) + 1)
    if seen.today < since:
        return None
    weeks = (seen.today - last).days // 7
    return Raised({"weeks": seen.naming.weeks(weeks), "late": _late(seen.due, group.name, seen.naming)}, since=since)


def _late(due: Due, group: str, naming: Naming) -> str:
    """Tell how late the trim is by the horse's own window, the limit its pages tell; by its class before that ends."""
    if due.overdue_days == 0:
        return naming.phrase("overdue_long", **{"class": group})
    return naming.phrase("overdue_late", late=naming.lasting(due.overdue_days))


def _answer_score(score: float, bad: bool) -> Answer:
    return Raised({"score": f"{score:g}"}) if bad else Cleared()

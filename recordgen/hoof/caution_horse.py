"""What one visit says of the whole horse: signs, lameness on its scale, soreness, condition, and being overdue.

A grade is read on its own scale alone: what was raised on one is not cleared by another.
"""

from __future__ import annotations

from collections.abc import Mapping
from datetime import timedelta

from recordgen.hoof.age import care_class
from recordgen.hoof.caution_seen import Answer, Cleared, Raised, Seen
from recordgen.hoof.due import plan_in_force
from recordgen.records.visit import Lameness

# By grade and scale. Sources: AAEP scale as reproduced in teaching texts (3: at every trot; 5: barely takes weight);
# Vet Times, 7 December 2015 (4 to 6 of 10 moderate, 7 to 10 severe); Meier et al. 2021, BMC Vet Res 17:16, Table 1
# (any Obel grade above 0; 3: reluctant to walk). Modified Obel from 1: Common practice, no source; no grade of it is
# published as severe.
MARKED_LAMENESS: Mapping[str, float] = {"AAEP": 3, "0-10": 4, "Obel": 1, "modified Obel": 1}
SEVERE_LAMENESS: Mapping[str, float] = {"AAEP": 5, "0-10": 7, "Obel": 3}
# A pain face is not lameness. Common practice, no source.
PAIN_SCALE, PAIN_FACE_FROM = "Horse Grimace", 4
# Sources: Giles et al. 2015, BMC Vet Res 11 (crest 3 and over); Henneke et al. 1983, Equine Vet J 15:371-372 (7 is
# fleshy, 3 is thin).
CREST_FROM, HEAVY_FROM, THIN_TO = 3, 7, 3


def stance(seen: Seen) -> Answer:
    """Any sign of how the horse stood or moved; only a word ends it, since a sign not written clears nothing."""
    return Raised({"what": seen.naming.listed(list(seen.visit.signs))}) if seen.visit.signs else None


def signs_together(seen: Seen) -> Answer:
    """Two or more kinds of sign at one visit: of how the horse stood or moved, a strong pulse, a warm hoof."""
    feet = seen.visit.feet.values()
    pulses = {found.pulse for found in feet} & {"raised", "strong"}
    signs: list[str] = list(dict.fromkeys(seen.visit.signs))
    if pulses:
        signs.append(seen.naming.phrase("pulse", how="strong" if "strong" in pulses else "raised"))
    if any(found.heat for found in feet):
        signs.append(seen.naming.phrase("heat"))
    return Raised({"what": seen.naming.listed(signs)}) if len(signs) > 1 else None


def severely_lame(seen: Seen) -> Answer:
    """Lameness of a grade that its scale calls severe, or of a horse that barely walks."""
    severe = SEVERE_LAMENESS.get(_scale(seen))
    return _graded(seen, severe, None) if severe else None


def lame(seen: Seen) -> Answer:
    """Lameness that is marked on its scale, and not yet severe."""
    return _graded(seen, MARKED_LAMENESS.get(_scale(seen)), SEVERE_LAMENESS.get(_scale(seen)))


def slightly_lame(seen: Seen) -> Answer:
    """Lameness below the marked grade of its scale."""
    return _graded(seen, 0.5, MARKED_LAMENESS.get(_scale(seen)))


def pain_face(seen: Seen) -> Answer:
    """A total of the Horse Grimace Scale of 4 and over."""
    grade = seen.visit.lameness
    if grade is None or grade.scale != PAIN_SCALE:
        return None
    return Raised({"grade": f"{grade.grade:g}"}) if grade.grade >= PAIN_FACE_FROM else Cleared()


def sore_after_trim(seen: Seen) -> Answer:
    """Soreness after the trim before this visit."""
    sore = seen.visit.sore_after_last_trim
    if sore is None:
        return None
    return Raised({}) if sore else Cleared()


def sore_and_lame(seen: Seen) -> Answer:
    """Soreness after the trim before, and lameness at this visit."""
    return _with_lameness(seen, "sore-and-lame", bool(seen.visit.sore_after_last_trim))


def crack_and_lame(seen: Seen) -> Answer:
    """A crack in this zone, and lameness at the same visit."""
    return _with_lameness(seen, "crack-and-lame", seen.wall.crack is not None)


def groove_and_lame(seen: Seen) -> Answer:
    """A deep and sore groove of the frog, and lameness at the same visit."""
    frog = seen.found.frog
    return _with_lameness(seen, "groove-and-lame", bool(frog and frog.infection == "deep groove" and frog.painful))


def heavy(seen: Seen) -> Answer:
    """Body condition 7 of 9 and over."""
    score = seen.visit.condition.henneke if seen.visit.condition else None
    return None if score is None else _scored(score, score >= HEAVY_FROM)


def thin(seen: Seen) -> Answer:
    """Body condition 3 of 9 and under."""
    score = seen.visit.condition.henneke if seen.visit.condition else None
    return None if score is None else _scored(score, score <= THIN_TO)


def crest(seen: Seen) -> Answer:
    """A crest of 3 of 5 and over."""
    score = seen.visit.condition.crest if seen.visit.condition else None
    return None if score is None else _scored(score, score >= CREST_FROM)


def overdue(seen: Seen) -> Answer:
    """Longer since the last visit than its class or a vet's plan allows, and than the window of the next visit."""
    if seen.due is None or seen.today is None:
        return None
    last = seen.visit.date
    limit = seen.ways.group(care_class(seen.horse, last)).weeks.at_most
    plan = plan_in_force(seen.horse.vet_plan, last, seen.today)
    if plan and plan.weeks:
        limit = min(limit, plan.weeks)
    days = (seen.today - last).days
    if days <= 7 * limit or seen.today <= seen.due.latest:
        return None
    since = max(last + timedelta(days=int(7 * limit)), seen.due.latest) + timedelta(days=1)
    facts = {"weeks": seen.naming.weeks(days // 7), "limit": seen.naming.weeks(limit)}
    return Raised(facts, since=since)


def _scale(seen: Seen) -> str:
    return seen.visit.lameness.scale if seen.visit.lameness else ""


def _lameness(seen: Seen) -> Lameness | None:
    grade = seen.visit.lameness
    return grade if grade and grade.scale != PAIN_SCALE else None


def _graded(seen: Seen, least: float | None, below: float | None) -> Answer:
    """Raised from one grade on and below another of the same scale."""
    grade = _lameness(seen)
    if grade is None or least is None:
        return None
    if grade.grade < least or (below is not None and grade.grade >= below):
        return Cleared(grade.scale)
    return Raised({"grade": f"{grade.grade:g}", "scale": grade.scale}, grade.scale)


def _with_lameness(seen: Seen, rule: str, found: bool) -> Answer:
    """Raised by something found at a visit with lameness; ends when the same scale says there is none any more."""
    grade = _lameness(seen)
    if grade is None:
        return None
    if found and grade.grade > 0:
        return Raised({"grade": f"{grade.grade:g}", "scale": grade.scale, "where": seen.where})
    before = seen.before(rule)
    return Cleared() if before and before.facts["scale"] == grade.scale and grade.grade == 0 else None


def _scored(score: float, bad: bool) -> Answer:
    return Raised({"score": f"{score:g}"}) if bad else Cleared()

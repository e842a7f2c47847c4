"""The meaning of a grade of lameness, on its own scale alone: what was raised on one is not cleared by another."""

from __future__ import annotations

from collections.abc import Mapping

from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext
from recordgen.records.models.visit import Lameness

# By grade and scale. Sources: AAEP scale as reproduced in teaching texts (3: at every trot; 5: barely takes weight);
# Vet Times, 7 December 2015 (4 to 6 of 10 moderate, 7 to 10 severe).
MARKED_LAMENESS: Mapping[str, float] = {"AAEP": 3, "0-10": 4}
SEVERE_LAMENESS: Mapping[str, float] = {"AAEP": 5, "0-10": 7}
# The scales of sore feet, with advice of their own from the first grade on. High: Meier et al. 2021, BMC Vet Res 17:16,
# Table 1 (Obel 3: reluctant to walk). Of the total: Judgement; 8 of 12 was the median of 80 cases on day 0 there.
OBEL_HIGH: Mapping[str, float] = {"Obel": 3, "modified Obel": 8}
# A pain face is not lameness. Common practice, no source.
PAIN_SCALE, PAIN_FACE_FROM = "Horse Grimace", 4


def severely_lame(seen: RuleContext) -> Answer:
    """Lameness of a grade that its scale calls severe."""
    return _answer_grade(seen, SEVERE_LAMENESS.get(_scale(seen)), None)


def lame(seen: RuleContext) -> Answer:
    """Lameness that is marked on its scale, and not yet severe."""
    return _answer_grade(seen, MARKED_LAMENESS.get(_scale(seen)), SEVERE_LAMENESS.get(_scale(seen)))


def slightly_lame(seen: RuleContext) -> Answer:
    """Lameness below the marked grade of its scale."""
    marked = MARKED_LAMENESS.get(_scale(seen))
    return _answer_grade(seen, 0.5, marked) if marked else None


def obel_high(seen: RuleContext) -> Answer:
    """A high grade of the Obel scale or its modified one."""
    return _answer_grade(seen, OBEL_HIGH.get(_scale(seen)), None)


def obel(seen: RuleContext) -> Answer:
    """Any lower grade of these two, from 1 on."""
    high = OBEL_HIGH.get(_scale(seen))
    return _answer_grade(seen, 1, high) if high else None


def pain_face(seen: RuleContext) -> Answer:
    """A total of the Horse Grimace Scale of 4 and over."""
    grade = seen.visit.lameness
    if grade is None or grade.scale != PAIN_SCALE:
        return None
    return Raised({"grade": f"{grade.grade:g}"}) if grade.grade >= PAIN_FACE_FROM else Cleared()


def sore_and_lame(seen: RuleContext) -> Answer:
    """Soreness after the trim before, and lameness at this visit."""
    return with_lameness(seen, "sore-and-lame", bool(seen.visit.sore_after_last_trim))


def crack_and_lame(seen: RuleContext) -> Answer:
    """A crack in this zone, and lameness at the same visit."""
    return with_lameness(seen, "crack-and-lame", seen.wall.crack is not None)


def with_lameness(seen: RuleContext, rule: str, found: bool) -> Answer:
    """Raised by something found at a visit with lameness; ends when the same scale says there is none any more."""
    grade = lameness(seen)
    if grade is None:
        return None
    if found and grade.grade > 0:
        return Raised({"grade": f"{grade.grade:g}", "scale": grade.scale, "where": seen.where})
    before = seen.before(rule)
    return Cleared() if before and before.facts["scale"] == grade.scale and grade.grade == 0 else None


def lameness(seen: RuleContext) -> Lameness | None:
    """The grade of lameness; None where there is none, or where it is that of a face."""
    grade = seen.visit.lameness
    return grade if grade and grade.scale != PAIN_SCALE else None


def _scale(seen: RuleContext) -> str:
    return seen.visit.lameness.scale if seen.visit.lameness else ""


def _answer_grade(seen: RuleContext, least: float | None, below: float | None) -> Answer:
    """Raised from one grade on and below another of the same scale."""
    grade = lameness(seen)
    if grade is None or least is None:
        return None
    if grade.grade < least or (below is not None and grade.grade >= below):
        return Cleared(grade.scale)
    return Raised({"grade": f"{grade.grade:g}", "scale": grade.scale}, grade.scale)

"""Rules for the young: a foal that is lame or has a hot foot, and a limb that bends."""

from __future__ import annotations

from recordgen.hoof.age_class import care_class, months_old
from recordgen.hoof.cautions.context import Answer, Cleared, Raised, RuleContext
from recordgen.hoof.cautions.rules.lameness import lameness

# A limb is young until this birthday. Common practice, no source.
YOUNG_YEARS = 2
# Until then a bend can hardly wait. Source: Ducharme, as reported by American Farriers Journal, article 7974: most
# growth at the fetlock is over by 100 days. Three whole months: Judgement.
SHORT_MONTHS = 3
STRAIGHT = ("none", "no", "straight")


def foal_lame(seen: RuleContext) -> Answer:
    """A foal that is lame, by any grade above nothing; ends when the same scale says it is no more."""
    grade = lameness(seen)
    if grade is None:
        return None
    if grade.grade == 0:
        return Cleared(grade.scale)
    return Raised({"grade": f"{grade.grade:g}", "scale": grade.scale}, grade.scale) if _is_foal(seen) else None


def foal_spares(seen: RuleContext) -> Answer:
    """A foal that takes less weight or none on a foot."""
    return _of_a_foal(seen, seen.found.bears_weight, "fully")


def foal_hot(seen: RuleContext) -> Answer:
    """A foal's hoof that is warmer than the others."""
    return _of_a_foal(seen, seen.found.heat, False)


def deviation_short(seen: RuleContext) -> Answer:
    """A bend or turn of a limb under three months, while there is time; later it goes on as that of an older limb."""
    if seen.found.deviation is None:
        return None
    months = _months(seen)
    if _straight(seen):
        return Cleared()
    return Raised({"what": seen.found.deviation}) if months is not None and months < SHORT_MONTHS else None


def deviation(seen: RuleContext) -> Answer:
    """A bend or turn of a limb from three months to two years, or of one whose birth is not told."""
    if seen.found.deviation is None:
        return None
    if _straight(seen):
        return Cleared()
    born, months = seen.horse.born, _months(seen)
    if months is not None and months < SHORT_MONTHS:
        return None
    if born and born.years_on(seen.visit.date) >= YOUNG_YEARS:
        return None
    return Raised({"what": seen.found.deviation}, follows="deviation-short")


def _of_a_foal(seen: RuleContext, found: object, well: object) -> Answer:
    """Raised by any answer but one while it is a foal; cleared by that one, also when it has grown up."""
    if found is None:
        return None
    return Cleared() if found == well else Raised({}) if _is_foal(seen) else None


def _is_foal(seen: RuleContext) -> bool:
    return care_class(seen.horse, seen.visit.date) == "foal"


def _months(seen: RuleContext) -> int | None:
    """Whole months from birth, by the youngest that it can be; None where its birth is not told."""
    day, born = seen.visit.date, seen.horse.born
    return months_old(born.youngest(day), day) if born else None


def _straight(seen: RuleContext) -> bool:
    return (seen.found.deviation or "").strip(" .").lower() in STRAIGHT

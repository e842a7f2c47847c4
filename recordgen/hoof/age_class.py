"""Age, and the class by which the usual interval goes."""

from __future__ import annotations

from datetime import date, timedelta

from recordgen.records.models.horse import Horse
from recordgen.records.models.names import CareClass

# From this birthday on a horse counts as aged. Derived from: white-line widening was commoner over 19 years, Holzhauer
# et al. 2017, Prev Vet Med, as reported by American Farriers Journal, April 2017.
AGED_FROM_YEARS = 20


def months_old(born: date, day: date) -> int:
    """Whole months from birth to a day."""
    begins = date(day.year, day.month, 1) + timedelta(days=born.day - 1)
    return 12 * (day.year - born.year) + day.month - born.month - (day < begins)


def care_class(horse: Horse, day: date) -> CareClass:
    """The class of an animal on a day: foal to its first birthday, then donkey, or yearling, adult and aged by years.

    Mules count as horses. An animal of which only the year of birth is told counts as young as it can be; one whose
    birth is not told counts as an adult.
    """
    years = horse.born.years_on(day) if horse.born else None
    if years is not None and years < 1:
        return "foal"
    if horse.kind == "donkey":
        return "donkey"
    if years is None or 2 <= years < AGED_FROM_YEARS:
        return "adult"
    return "yearling" if years < 2 else "aged"

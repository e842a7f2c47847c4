"""Age, and the class by which the usual interval goes."""

from __future__ import annotations

from datetime import date
from typing import Literal

from recordgen.records.horse import Horse

CareClass = Literal["adult", "donkey", "foal"]

# Usual weeks between visits, from and to. Sources: UK welfare code, hoofcare, 2008 consultation (4 to 8 weeks), as
# reported by Horsetalk, 12 April 2008; The Donkey Sanctuary, Notes for farriers, 2016 (6 to 10). Foals 3 to 6:
# a judgement from the literature on young stock, growing about twice as fast (Curtis 2017).
CLASS_RANGE_WEEKS: dict[CareClass, tuple[int, int]] = {"adult": (4, 8), "donkey": (6, 10), "foal": (3, 6)}


def years_old(born: date, day: date) -> int:
    """Whole years from birth to a day; a horse born on 29 February has its birthday on 1 March in other years."""
    return day.year - born.year - ((day.month, day.day) < (born.month, born.day))


def months_old(born: date, day: date) -> int:
    """Whole months from birth to a day."""
    return 12 * (day.year - born.year) + day.month - born.month - (day.day < born.day)


def care_class(horse: Horse, day: date) -> CareClass:
    """The class of an animal on a day: foal up to its first birthday, donkey (mules are adults), or adult."""
    if horse.born and years_old(horse.born, day) < 1:
        return "foal"
    return "donkey" if horse.kind == "donkey" else "adult"

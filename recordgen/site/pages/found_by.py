"""Words by which search finds a horse beside those of its page: everyday names of findings, and days as they are typed.

They stand in the index alone. An everyday name may say more than was observed, so no page shows one.
"""

from __future__ import annotations

from datetime import date

from recordgen.hoof.naming import Naming
from recordgen.hoof.observations import Finding
from recordgen.hoof.summary import HorseSummary
from recordgen.language.spoken import ENGLISH, Language

# A finding of a frog goes by other names than the same one elsewhere.
OF_THE_FROG = ("frog", "central groove", "medial groove", "lateral groove")


def search_names(horse: HorseSummary, naming: Naming) -> tuple[str, ...]:
    """The everyday names of all that was ever found on a horse, each once."""
    found = [one for visit in horse.history for foot in visit.feet.values() for one in foot.findings]
    return tuple(dict.fromkeys(name for one in found for name in everyday_names(one, naming)))


def everyday_names(finding: Finding, naming: Naming) -> list[str]:
    """The names by which people in the trade ask for a finding; none where ours is the everyday one."""
    key = f"everyday_{finding.kind}"
    place = "_frog" if finding.place in OF_THE_FROG else ""
    told = naming.phrases.get(key + place, naming.phrases.get(key, ""))
    return [name for name in told.split(", ") if name]


def day_spellings(day: date, language: Language = ENGLISH) -> tuple[str, ...]:
    """A day as people type it, without noughts before: in figures, the year long or short, and in words of a language.

    Words stand with and without the points that some languages put behind a number or a short month.
    """
    figures = [f"{day.day}{sign}{day.month}{sign}{year}" for sign in "/." for year in (day.year, f"{day:%y}")]
    words = [language.day(day), language.short_day(day)]
    bare = [one.replace(".", "") for one in words]
    return tuple(dict.fromkeys((f"{day.year}-{day.month}-{day.day}", *figures, *words, *bare)))

"""Names, days and lengths as a practice's readers see them: in its language, its naming of feet and its units."""

from __future__ import annotations

import re
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.language.quantities import Quantities
from recordgen.language.spoken import ENGLISH, Language, language_of
from recordgen.language.translator import translator_of
from recordgen.records.models.fields import Birth
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.settings import PracticeFile
from recordgen.sentences import in_words_of
from recordgen.units import METRIC, UNITS, Units

MONTH_DAYS = 365.25 / 12
_NUMBER = re.compile(r"-?\d+\.\d+")
# How long something lasts is told in days up to this many, in weeks from then on.
MOST_IN_DAYS = 13
FOOT_GROUPS = {
    "feet_fore": ("left_fore", "right_fore"),
    "feet_hind": ("left_hind", "right_hind"),
    "feet_all": FEET,
}


@dataclass(frozen=True)
class Naming:
    """The names of feet, places and days on the pages."""

    phrases: dict[str, str]
    near_and_off: bool = False
    language: Language = ENGLISH
    units: Units = METRIC

    @classmethod
    def of(cls, practice: PracticeFile, phrases: dict[str, str]) -> Naming:
        """The naming a practice chose."""
        return cls(phrases, practice.feet == "near and off", language_of(practice.language), UNITS[practice.units])

    def foot(self, foot: Foot) -> str:
        """A foot's name, such as left fore or near fore."""
        return self.phrases[f"foot_near_{foot}" if self.near_and_off else f"foot_{foot}"]

    def feet(self, feet: Sequence[Foot]) -> str:
        """Several feet as one: both fore feet, all four feet, or each by its name."""
        for key, group in FOOT_GROUPS.items():
            if set(feet) == set(group):
                return self.phrases[key]
        return self.listed([self.foot(foot) for foot in feet])

    def place(self, place: str) -> str:
        """A place's name for owners, such as outer quarter."""
        return self.phrases[f"place_{place.replace(' ', '_')}"]

    def measure(self, name: str, zone: str | None) -> str:
        """A measure's name, with the zone for those of the wall."""
        return self.phrase("measure_at", measure=name, place=self.place(zone)) if zone else name

    def phrase(self, key: str, **facts: str) -> str:
        """A phrase of the tables with its facts filled in, numbers among them as the language writes them."""
        return self.phrases[key].format(**self.facts(facts))

    def facts(self, facts: Mapping[str, str]) -> Mapping[str, str]:
        """Facts for a phrase, with numbers and sentences as the language has them."""
        if self.language is ENGLISH:
            return facts
        told = {key: in_words_of(translator_of(self.language.code), fact) for key, fact in facts.items()}
        return {key: self.figures(fact) if _NUMBER.fullmatch(str(fact)) else fact for key, fact in told.items()}

    def figures(self, text: str) -> str:
        """A number that is written with a point, as the language writes it."""
        return self.language.figures(text)

    def counted(self, key: str, count: float, **facts: str) -> str:
        """A phrase that goes by a number: its entries end in one and several, and what else the language has."""
        form = self.language.plural(count)
        several = f"{key}_{form}" if f"{key}_{form}" in self.phrases else f"{key}_several"
        return self.phrase(f"{key}_one" if form == "one" else several, count=f"{count:g}", **facts)

    def value(self, value: str) -> str:
        """One of the words that a record chooses from, such as mare or strong, as readers read it."""
        return self.phrases.get(_value_key(value), value)

    def has_value(self, value: str) -> bool:
        """Tell whether the tables hold words for such a word."""
        return _value_key(value) in self.phrases

    def weeks(self, count: float) -> str:
        """A number of weeks: 1 week, 6 weeks, 5.5 weeks."""
        return self.counted("week", count)

    def days(self, count: int) -> str:
        """A number of days: 1 day, 7 days."""
        return self.counted("day", count)

    def lasting(self, days: int) -> str:
        """Tell how long something lasts: 13 days, then whole weeks, as 2 weeks."""
        return self.days(days) if days <= MOST_IN_DAYS else self.weeks(days // 7)

    def a_month(self, mm_per_day: float) -> str:
        """A rate by the month: 7.9 mm."""
        return self.quantities.span(round(mm_per_day * MONTH_DAYS, 1))

    def listed(self, parts: Sequence[str]) -> str:
        """Several parts as one: one, two and three."""
        return self.language.listed(parts)

    def day(self, day: date) -> str:
        """A day in words: 14 October 2026."""
        return self.language.day(day)

    @property
    def quantities(self) -> Quantities:
        """The writer of lengths, heights and weights, in the units of the practice."""
        return Quantities(self.language, self.units)

    def mm(self, value: float) -> str:
        """A length, mm, in words: 18 mm, or 11/16 in."""
        return self.quantities.length(value)

    def born(self, birth: Birth) -> str:
        """A birth as far as it is known: 6 May 2015, May 2015 or 2015."""
        if birth.first == birth.last:
            return self.day(birth.first)
        return self.language.month_year(birth.first) if birth.first.month == birth.last.month else str(birth)

    def unit(self, unit: str) -> str:
        """A unit as readers read it: degrees, or in where mm are not shown; marks such as ° stay."""
        return self.phrases.get(f"unit_{unit.replace(' ', '_')}") or self.quantities.unit(unit)

    def level(self, level: str) -> str:
        """The urgency of a caution in few words: call now."""
        return self.phrases[f"level_short_{level.replace(' ', '_')}"]

    def caution(self, name: str) -> str:
        """The name of a caution as readers read it: painful frog."""
        return self.phrases.get(f"named_{name.replace('-', '_')}", name.replace("-", " "))

    def size(self, length: float | None, depth: float | None) -> str:
        """A size in words, of what was measured of it: 18 mm long and 3 mm deep."""
        if length is None and depth is None:
            return self.phrase("size_unknown")
        if depth is None:
            return self.phrase("size_long", length=self.mm(length or 0))
        if length is None:
            return self.phrase("size_deep", depth=self.mm(depth))
        return self.phrase("size_long_deep", length=self.mm(length), depth=self.mm(depth))


def _value_key(value: str) -> str:
    return f"value_{value.replace(',', '').replace(' ', '_').replace('-', '_')}"

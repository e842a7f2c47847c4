"""One language: how days, numbers, lists and plurals are written in it, by Unicode's CLDR through babel."""

from __future__ import annotations

import re
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta
from functools import cache, cached_property
from typing import TYPE_CHECKING, Literal

from recordgen import days
from recordgen.language.catalogs import ENGLISH_CODE

if TYPE_CHECKING:
    from babel import Locale

_LONG_WEEKDAY, _LONG_MONTH = re.compile(r"E+\.?"), re.compile("M{3,}")
_WORDS = {"in": "inches"}
# Units that a language may have words for, as CLDR calls them, and in which form. The short form of an inch is often
# the English in, which reads as another word, and the long one of a pound is in some languages another weight.
_UnitForm = Literal["short", "long", "narrow"]
_CLDR_UNITS: dict[str, tuple[str, _UnitForm]] = {
    "in": ("length-inch", "long"),
    "in²": ("area-square-inch", "long"),
    "lb": ("mass-pound", "short"),
}
# A Monday, from which the days of a week are named.
_MONDAY = date(2024, 1, 1)


@dataclass(frozen=True)
class Language:
    """English, as our own sentences are; it needs no library. code: as ISO 639 and a page's `lang` have it."""

    code: str = ENGLISH_CODE

    def day(self, day: date) -> str:
        """A day in words: 14 October 2026."""
        return days.spoken_day(day)

    def month_day(self, day: date) -> str:
        """A day without its year: 14 October."""
        return days.month_day(day)

    def weekday_day(self, day: date) -> str:
        """A day with its weekday: Wednesday, 14 October."""
        return days.weekday_day(day)

    def month_name(self, day: date) -> str:
        """A month alone: October."""
        return days.month_name(day)

    def month_year(self, day: date) -> str:
        """A month and its year: October 2026."""
        return days.month_year(day)

    def short_day(self, day: date) -> str:
        """A day where there is little room: 14 Oct 2026."""
        return days.short_day(day)

    def tiny_day(self, day: date) -> str:
        """A day where there is hardly any room: 14 Oct 26."""
        return f"{day.day} {self.short_month(day)} {day.year % 100:02}"

    def short_month_day(self, day: date) -> str:
        """A day without its year where there is little room: 14 Oct."""
        return f"{day.day} {self.short_month(day)}"

    def short_month(self, day: date) -> str:
        """A month where there is little room: Oct."""
        return days.SHORT_MONTHS[day.month - 1]

    def inside(self, words: str) -> str:
        """Words that may begin a sentence, as they stand inside one."""
        return words.lower()

    @property
    def weekdays(self) -> tuple[str, ...]:
        """The days of a week, Monday first."""
        return days.WEEKDAYS

    @property
    def short_weekdays(self) -> tuple[str, ...]:
        """The same where there is little room: Mo, Tu."""
        return tuple(name[:2] for name in self.weekdays)

    def figures(self, text: str) -> str:
        """A number that is written with a point, as the language writes it."""
        return text

    def unit(self, unit: str) -> str:
        """A unit as it stands alone: mm, in, lb."""
        return unit

    def unit_in_words(self, unit: str) -> str:
        """A unit within a sentence, where its sign could be read as a word: inches."""
        return _WORDS.get(unit, unit)

    def with_unit(self, figure: str, unit: str) -> str:
        """A figure with its unit: 3 3/16 in."""
        return f"{figure} {unit}"

    def listed(self, parts: Sequence[str], joined_by: str = "and") -> str:
        """Several parts as one: one, two and three. joined_by: and, or."""
        return days.listed(parts, joined_by)

    def plural(self, count: float) -> str:
        """The plural that a number asks for, as CLDR calls it: one, other, and in some languages few or many."""
        return "one" if count == 1 else "other"


@dataclass(frozen=True)
class OtherLanguage(Language):
    """A language that babel knows. Raises babel's UnknownLocaleError when first used where it does not."""

    @cached_property
    def _locale(self) -> Locale:
        from babel import Locale

        return Locale.parse(self.code)

    def _by(self, pattern: str, day: date) -> str:
        from babel.dates import format_date

        return format_date(day, pattern, locale=self._locale)

    def _skeleton(self, skeleton: str, day: date) -> str:
        """By a pattern of CLDR, which has one for each set of parts; the nearest set where it has none."""
        from babel.dates import match_skeleton

        known = self._locale.datetime_skeletons
        found = skeleton if skeleton in known else match_skeleton(skeleton, known)
        return self._by(known[found].pattern if found else "long", day)

    def day(self, day: date) -> str:  # noqa: D102
        return self._by("long", day)

    def month_day(self, day: date) -> str:  # noqa: D102
        return self._skeleton("MMMMd", day)

    def weekday_day(self, day: date) -> str:  # noqa: D102
        known = self._locale.datetime_skeletons
        pattern = next((known[one].pattern for one in ("MMMMEEEEd", "MMMMEd", "MMMEd") if one in known), "full")
        return self._by(_LONG_MONTH.sub("MMMM", _LONG_WEEKDAY.sub("EEEE", pattern)), day)

    def month_name(self, day: date) -> str:  # noqa: D102
        return self._by("LLLL", day)

    def month_year(self, day: date) -> str:  # noqa: D102
        return self._skeleton("yMMMM", day)

    def short_day(self, day: date) -> str:  # noqa: D102
        return self._skeleton("yMMMd", day)

    def tiny_day(self, day: date) -> str:  # noqa: D102
        return self._by("short", day)

    def short_month_day(self, day: date) -> str:  # noqa: D102
        return self._skeleton("MMMd", day)

    def short_month(self, day: date) -> str:  # noqa: D102
        return self._by("LLL", day)

    def inside(self, words: str) -> str:  # noqa: D102
        return words

    @property
    def weekdays(self) -> tuple[str, ...]:  # noqa: D102
        return tuple(self._by("cccc", _MONDAY + timedelta(days=count)) for count in range(7))

    @property
    def short_weekdays(self) -> tuple[str, ...]:  # noqa: D102
        return tuple(self._by("cccccc", _MONDAY + timedelta(days=count)) for count in range(7))

    def figures(self, text: str) -> str:  # noqa: D102
        from babel.numbers import get_decimal_symbol

        return text.replace(".", get_decimal_symbol(self._locale))

    def unit(self, unit: str) -> str:  # noqa: D102
        from babel.units import get_unit_name

        if "/" in unit:
            return "/".join(map(self.unit, unit.split("/")))
        name, form = _CLDR_UNITS.get(unit, ("", "short"))
        return (get_unit_name(name, form, self._locale) if name else None) or unit

    def unit_in_words(self, unit: str) -> str:  # noqa: D102
        return self.unit(unit)

    def with_unit(self, figure: str, unit: str) -> str:  # noqa: D102
        from babel.units import format_unit

        name, form = _CLDR_UNITS.get(unit, ("", "short"))
        return format_unit(figure, name, form, locale=self._locale) if name else f"{figure} {self.unit(unit)}"

    def listed(self, parts: Sequence[str], joined_by: str = "and") -> str:  # noqa: D102
        from babel.lists import format_list

        return format_list([*parts], "or" if joined_by == "or" else "standard", locale=self._locale)

    def plural(self, count: float) -> str:  # noqa: D102
        return str(self._locale.plural_form(count))


ENGLISH = Language()


@cache
def language_of(code: str) -> Language:
    """The language of a code, such as de."""
    return ENGLISH if code == ENGLISH_CODE else OtherLanguage(code)

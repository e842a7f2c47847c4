"""Days, numbers, lists and plurals in other languages, held against CLDR's charts and the language's own rules."""

from __future__ import annotations

from datetime import date, timedelta

import pytest
from babel import Locale
from babel.dates import format_date
from babel.lists import format_list

from recordgen.hoof.naming import Naming
from recordgen.language.spoken import ENGLISH, OtherLanguage, language_of

DAY = date(2026, 10, 4)
GERMAN = OtherLanguage("de")


def test_german_days_are_as_german_writes_them() -> None:
    """Source: DIN 5008, days with the month in words; the short ones: CLDR 47, German."""
    assert GERMAN.day(DAY) == "4. Oktober 2026"
    assert GERMAN.month_day(DAY) == "4. Oktober"
    assert GERMAN.weekday_day(DAY) == "Sonntag, 4. Oktober"
    assert GERMAN.month_year(DAY) == "Oktober 2026"
    assert (GERMAN.short_day(DAY), GERMAN.tiny_day(DAY)) == ("4. Okt. 2026", "04.10.26")
    assert (GERMAN.weekdays[0], GERMAN.short_weekdays[6]) == ("Montag", "So.")


def test_numbers_have_the_comma_of_the_language() -> None:
    """Source: CLDR, the decimal sign of German."""
    assert (GERMAN.figures("4.5"), ENGLISH.figures("4.5")) == ("4,5", "4.5")
    assert Naming({"at": "{size} bei {what}"}, language=GERMAN).phrase("at", size="7.5", what="v1.2") == "7,5 bei v1.2"


def test_lists_are_joined_as_the_language_does() -> None:
    """One, two and three."""
    assert [GERMAN.listed(["a", "b", "c"][:count]) for count in (1, 2, 3)] == ["a", "a und b", "a, b und c"]


def test_our_english_is_that_of_cldr() -> None:
    """Each day of a year and each list, as British English has them in CLDR."""
    british = Locale.parse("en_GB")
    days = [date(2026, 1, 1) + timedelta(days=count) for count in range(365)]

    assert [ENGLISH.day(day) for day in days] == [format_date(day, "long", locale=british) for day in days]
    assert ENGLISH.listed(["a", "b", "c"]) == format_list(["a", "b", "c"], locale=british)


@pytest.mark.parametrize(("count", "told"), [(1, "1 dzień"), (3, "3 dni"), (5, "5 dni"), (22, "22 dni")])
def test_a_language_may_have_more_plurals_than_english(count: int, told: str) -> None:
    """Polish has one, few and many (CLDR); where a form has no words of its own, those for several stand in."""
    words = {"day_one": "{count} dzień", "day_few": "{count} dni", "day_several": "{count} dni"}

    assert Naming(words, language=OtherLanguage("pl")).days(count) == told


def test_english_is_known_by_its_code() -> None:
    """And loads no library."""
    assert language_of("en") is ENGLISH
    assert language_of("de") == GERMAN

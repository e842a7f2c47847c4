"""Public holidays: the library's days against the lists that law or government published."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.public_holidays import PublicHolidays, of_year, regions_of

# Days of a year as month-day. Sources: gov.uk, bank holidays, 2026 for England and Wales and 2025 for Scotland (Banking
# and Financial Dealings Act 1971, schedule 1, with substitute days); Bavaria's Feiertagsgesetz, article 1 with 2026's
# Easter; 5 U.S.C. 6103(a) and (b) for 2026; Loi n. 2014-1, Code du travail L3133-1. From memory, not read.
PUBLISHED = {
    ("GB", "ENG", 2026): "01-01 04-03 04-06 05-04 05-25 08-31 12-25 12-28",
    ("GB", "SCT", 2025): "01-01 01-02 04-18 05-05 05-26 08-04 12-01 12-25 12-26",
    ("DE", "BY", 2026): "01-01 01-06 04-03 04-06 05-01 05-14 05-25 06-04 10-03 11-01 12-25 12-26",
    ("US", "", 2026): "01-01 01-19 02-16 05-25 06-19 07-03 07-04 09-07 10-12 11-11 11-26 12-25",
    ("FR", "", 2026): "01-01 04-06 05-01 05-08 05-14 05-25 07-14 08-15 11-01 11-11 12-25",
}


@pytest.mark.parametrize(("country", "region", "year"), PUBLISHED)
def test_the_holidays_of_a_year_are_those_that_were_published(country: str, region: str, year: int) -> None:
    """Each day of the list, and of working days no other."""
    published = {date.fromisoformat(f"{year}-{day}") for day in PUBLISHED[country, region, year].split()}
    found = set(of_year(country, region, "en", year))

    assert published <= found
    assert {day for day in found - published if day.weekday() < 5} == set()


def test_a_holiday_is_named_in_the_language_that_was_chosen() -> None:
    """Where the library has no name in it, in the country's own."""
    christmas = date(2026, 12, 25)

    assert PublicHolidays("DE", "BY", "en").name(christmas) == "Christmas Day"
    assert PublicHolidays("DE", "BY", "de").name(christmas) == "Erster Weihnachtstag"
    assert PublicHolidays("GB", None, "de").name(christmas) == "Christmas Day"


@pytest.mark.parametrize("holidays", [PublicHolidays(), PublicHolidays("ZZ"), PublicHolidays("GB", "Nowhere")])
def test_where_no_country_or_region_is_known_no_day_is_named(holidays: PublicHolidays) -> None:
    """Nor is anything raised, far in the future neither."""
    assert holidays.between(date(2026, 12, 20), date(2027, 1, 5)) == {}
    assert PublicHolidays("GB").name(date(9999, 12, 25)) is None


def test_regions_are_those_of_the_country() -> None:
    """The four of the United Kingdom (ISO 3166-2:GB), and none of a country that is not known."""
    assert {"ENG", "NIR", "SCT", "WLS"} <= set(regions_of("GB"))
    assert regions_of("ZZ") == ()

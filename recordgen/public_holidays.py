"""Public holidays of a country or one of its regions, by the library holidays; loaded when a day is first asked for."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from dataclasses import dataclass
from datetime import date
from functools import cache

# Years that the library's tables reach; of others nothing is told.
_YEARS = range(1970, 2100)

# The holidays of a year by day: of a country (two letters), a region in it or "", in a language such as en.
OfYear = Callable[[str, str, str, int], Mapping[date, str]]


@cache
def of_year(country: str, region: str, language: str, year: int) -> Mapping[date, str]:
    """The public holidays of a year, substitute days among them; none where the library does not know the country.

    country: two letters (ISO 3166). region: as `regions_of` lists them, or "" for what the whole country keeps.
    language: of the names; where the library has none in it, they are in the country's own.
    """
    import holidays

    if year not in _YEARS or region not in ("", *regions_of(country)):
        return {}
    try:
        known = holidays.country_holidays(country, subdiv=region or None)
    except NotImplementedError:
        return {}
    if spoken := _nearest(language, country, known.supported_languages) or known.default_language:
        # Else the library would take the language that the computer is set to.
        known = holidays.country_holidays(country, subdiv=region or None, years=year, language=spoken)
    return dict(sorted(known.items()))


def regions_of(country: str) -> tuple[str, ...]:
    """The regions of a country that have holidays of their own, as the library names them; none of an unknown one."""
    import holidays

    return tuple(holidays.list_supported_countries(include_aliases=False).get(country, ()))


def _nearest(language: str, country: str, known: tuple[str, ...]) -> str | None:
    """The nearest of the languages that the names are known in: of the country itself, plain, or of any country."""
    wanted = (f"{language}_{country}", language)
    return next((one for one in (*wanted, *known) if one in known and one.split("_")[0] == language), None)


@dataclass(frozen=True)
class PublicHolidays:
    """The public holidays where a practice works; none where it names no country. look_up: finds those of a year."""

    country: str | None = None
    region: str | None = None
    language: str = "en"
    look_up: OfYear = of_year

    def name(self, day: date) -> str | None:
        """The name of a day that is one; None of any other."""
        if self.country is None:
            return None
        return self.look_up(self.country, self.region or "", self.language, day.year).get(day)

    def between(self, first: date, last: date) -> dict[date, str]:
        """Those from one day to another, both included."""
        days = map(date.fromordinal, range(first.toordinal(), last.toordinal() + 1))
        return {day: name for day in days if (name := self.name(day))}

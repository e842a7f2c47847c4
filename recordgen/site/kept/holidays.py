"""The public holidays of a year, kept, since the library that knows them takes a tenth of a second to load."""

from __future__ import annotations

import json
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from functools import cached_property

from recordgen.cache.entries import Cache
from recordgen.cache.spelling import key_of
from recordgen.cache.versions import program_version
from recordgen.public_holidays import of_year

KIND = "holidays"


@dataclass(frozen=True)
class HolidayCache:
    """Finds the public holidays of a year, and asks the library where the cache does not hold them."""

    kept: Cache

    def __call__(self, country: str, region: str, language: str, year: int) -> Mapping[date, str]:
        """The names by day, as `of_year` finds them."""
        asked = (country, region, language, year)
        if asked not in self._known:
            self._known[asked] = self._find(asked)
        return self._known[asked]

    @cached_property
    def _known(self) -> dict[tuple[str, str, str, int], Mapping[date, str]]:
        return {}

    def _find(self, asked: tuple[str, str, str, int]) -> Mapping[date, str]:
        key = key_of(program_version(), *asked)
        kept = self.kept.get(KIND, key)
        if kept is not None:
            return {date.fromisoformat(day): name for day, name in json.loads(kept).items()}
        found = of_year(*asked)
        self.kept.put(KIND, key, json.dumps({day.isoformat(): name for day, name in found.items()}).encode())
        return found

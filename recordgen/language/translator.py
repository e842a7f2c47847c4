"""A language that sentences are told in: its catalog `terminal.po`, and how it writes days and lists."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache

from recordgen.language.catalogs import Catalog, catalog_of
from recordgen.language.spoken import Language, language_of

DOMAIN = "terminal"


@dataclass(frozen=True)
class Translator:
    """A language that `recordgen.sentences` says things in."""

    language: Language
    catalog: Catalog

    def gettext(self, message: str) -> str:
        """A message in this language."""
        return self.catalog.gettext(message)

    def ngettext(self, one: str, several: str, count: int) -> str:
        """A message that goes by a number."""
        return self.catalog.ngettext(one, several, count)

    def day(self, day: date) -> str:
        """A day in words."""
        return self.language.day(day)

    def listed(self, parts: Sequence[str], joined_by: str) -> str:
        """Several parts as one."""
        return self.language.listed(parts, joined_by)


@cache
def translator_of(code: str) -> Translator:
    """The translator of a language; English where it has no catalog. Its catalog is read when first asked for."""
    return Translator(language_of(code), catalog_of(code, DOMAIN))

"""The sentences of a language: gettext's catalogs among the templates, read and compiled in memory.

A catalog is a file of `site_templates/languages/<code>/`, named by what it translates. Each message is asked for by its
English; those of the tables by their place in a table too, such as `phrases.foot_left_fore`.
"""

from __future__ import annotations

import gettext
import re
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path
from typing import Any

from recordgen.packaged import packaged

ENGLISH_CODE = "en"
# The same in every language.
UNITS = ("mm", "mm²", "cm", "°", "%")
# The endings of plurals beside one and several, as CLDR calls them.
_PLURAL = re.compile(r"^[^.]*_(zero|two|few|many)$")
# The place of a message, or none, and its English.
Asked = tuple[str | None, str]


def catalogs_folder() -> Path:
    """The folder in which each language has one of its own."""
    return packaged() / "site_templates" / "languages"


@cache
def languages() -> tuple[str, ...]:
    """The codes of the languages that sites can be in: English, and those that have catalogs."""
    return (ENGLISH_CODE, *sorted({path.parent.name for path in catalogs_folder().glob("*/*.po")}))


@dataclass(frozen=True)
class Catalog:
    """The sentences of one language. Without any, everything stays in English.

    texts: the translations by what is asked for. plurals: the same, each with its forms. form: which form a number asks
    for.
    """

    texts: Mapping[Asked, str] = field(default_factory=dict)
    plurals: Mapping[Asked, tuple[str, ...]] = field(default_factory=dict)
    form: Callable[[int], int] = lambda count: int(count != 1)

    def gettext(self, message: str) -> str:
        """A message in this language."""
        return self.texts.get((None, message), message)

    def pgettext(self, place: str, message: str) -> str:
        """A message that stands at a place, or one that is the same wherever it stands."""
        return self.texts.get((place, message)) or self.gettext(message)

    def ngettext(self, one: str, several: str, count: int) -> str:
        """A message that goes by a number."""
        forms = self.plurals.get((None, one))
        return forms[self.form(count)] if forms else one if count == 1 else several

    def npgettext(self, place: str, one: str, several: str, count: int) -> str:
        """The same that stands at a place."""
        forms = self.plurals.get((place, one))
        return forms[self.form(count)] if forms else self.ngettext(one, several, count)

    def under(self, place: str) -> Iterator[tuple[str, str]]:
        """All that is translated at places below one, by the rest of the place."""
        for (at, _), text in self.texts.items():
            if at and at.startswith(place):
                yield at.removeprefix(place), text


@dataclass(frozen=True)
class Listening(Catalog):
    """A catalog that translates nothing and notes what it is asked for, in that order."""

    asked: list[Asked] = field(default_factory=list)

    def gettext(self, message: str) -> str:  # noqa: D102
        self.asked.append((None, message))
        return message

    def pgettext(self, place: str, message: str) -> str:  # noqa: D102
        self.asked.append((place, message))
        return message


def table_in(catalog: Catalog, value: Any, place: str) -> Any:
    """A table of texts in the language of a catalog, each asked for by its place; signs, units and numbers stay.

    value: as YAML holds it. Plurals that English has not are added beside its own.
    """
    if isinstance(value, dict):
        told = {key: table_in(catalog, part, f"{place}.{key}") for key, part in value.items()}
        more = {key: text for key, text in catalog.under(f"{place}.") if _PLURAL.search(key)}
        return {**more, **told}
    if isinstance(value, list):
        return [table_in(catalog, part, f"{place}.{number}") for number, part in enumerate(value)]
    wordless = not isinstance(value, str) or value in UNITS or not any(sign.isalpha() for sign in value)
    return value if wordless else catalog.pgettext(place, value)


@cache
def catalog_of(code: str, domain: str = "*") -> Catalog:
    """The catalog of a language; an empty one of English and of a language without any. domain: one of its files."""
    if code == ENGLISH_CODE:
        return Catalog()
    from babel.messages.pofile import read_po

    texts: dict[Asked, str] = {}
    plurals: dict[Asked, tuple[str, ...]] = {}
    form: Callable[[int], int] = Catalog().form
    for file in sorted((catalogs_folder() / code).glob(f"{domain}.po")):
        with file.open("rb") as opened:
            read = read_po(opened, locale=code)
        form = gettext.c2py(read.plural_expr)
        for message in read:
            if not message.id or message.fuzzy or not message.string:
                continue
            if isinstance(message.id, str):
                texts[message.context, message.id] = str(message.string)
            elif all(message.string):
                plurals[message.context, message.id[0]] = tuple(message.string)
    return Catalog(texts, plurals, form)

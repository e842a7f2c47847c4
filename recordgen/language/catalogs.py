"""The sentences of a language: gettext's catalogs among the templates, read and compiled in memory.

A catalog is a file of `site_templates/languages/<code>/`, named by what it translates. Each message is asked for by its
English; those of the tables by their place in a table too, such as `phrases.foot_left_fore`.
"""

from __future__ import annotations

import gettext
from collections.abc import Callable, Iterator, Mapping
from dataclasses import dataclass, field
from functools import cache
from pathlib import Path

from recordgen.packaged import packaged

ENGLISH_CODE = "en"
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


@cache
def catalog_of(code: str) -> Catalog:
    """The catalog of a language; an empty one of English and of a language without any."""
    if code == ENGLISH_CODE:
        return Catalog()
    from babel.messages.pofile import read_po

    texts: dict[Asked, str] = {}
    plurals: dict[Asked, tuple[str, ...]] = {}
    form: Callable[[int], int] = Catalog().form
    for file in sorted((catalogs_folder() / code).glob("*.po")):
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

"""The tables in another language: which of their words people read, and the same tables with these words translated.

A message is asked for by its place, such as `cautions.wound.seen`, and its English; a source by its English alone.
"""

from __future__ import annotations

import re
from collections.abc import Iterator, Mapping
from typing import Any, TypeVar

from recordgen.language.catalogs import Catalog
from recordgen.records.models.fields import Record
from recordgen.records.models.reference import Reference

Entry = TypeVar("Entry", bound=Record)
# The place of a message, none of a source; and its English.
Message = tuple[str | None, str]

# The fields of all tables that hold words for people, and those whose words are the same wherever they stand.
WORDS = {
    *("name", "plain", "landmarks", "text", "seen", "meanwhile", "do_not", "left_over", "what", "why", "how_often"),
    *("until", "stop_if", "caution", "meaning", "maybe", "rule", "share"),
}
SOURCES = {"source", "weeks_source", "growth_source"}
# A source of our own words; one that names a publication stays in the language it was written in.
OWN_WORDS = re.compile(r"(Assumed|As for|Common practice|Pages of)[^0-9]*")
# Tables whose entries are words themselves.
SENTENCES = ("phrases",)
# What only the terminal and the trimmer's list of codes say stays in English.
IN_ENGLISH = ("problems",)


def messages(tables: Reference) -> Iterator[Message]:
    """All that can be translated of some tables, in their order."""
    for table in (name for name in Reference.model_fields if name not in IN_ENGLISH):
        for key, entry in getattr(tables, table).items():
            if table in SENTENCES:
                yield f"{table}.{key}", entry
            else:
                yield from _messages(entry, f"{table}.{key}")


def _messages(entry: Record, place: str) -> Iterator[Message]:
    for name, value in entry:
        at = f"{place}.{name}"
        if name in SOURCES:
            if value and OWN_WORDS.fullmatch(value):
                yield None, value
        elif isinstance(value, str) and value and name in WORDS:
            yield at, value
        else:
            for key, part in _parts(value):
                if isinstance(part, Record):
                    yield from _messages(part, f"{at}.{key}")
                elif isinstance(part, str) and name == "grades":
                    yield f"{at}.{key}", part


def _parts(value: Any) -> Iterator[tuple[str, Any]]:
    """The parts of a field that may hold words, each with its name in the place."""
    if isinstance(value, Record):
        yield "is", value
    elif isinstance(value, Mapping):
        yield from ((f"{key:g}" if isinstance(key, float) else str(key), part) for key, part in value.items())
    elif isinstance(value, tuple):
        yield from ((str(at), part) for at, part in enumerate(value))


def translated(tables: Reference, catalog: Catalog) -> Reference:
    """The tables with all words that the catalog knows; plurals that English has not are added to the phrases."""
    told: dict[str, Any] = {}
    for table in Reference.model_fields:
        entries = getattr(tables, table)
        if table in SENTENCES:
            known = {key: catalog.pgettext(f"{table}.{key}", text) for key, text in entries.items()}
            told[table] = {**dict(catalog.under(f"{table}.")), **known}
        elif table in IN_ENGLISH:
            told[table] = entries
        else:
            told[table] = {key: _translated(entry, f"{table}.{key}", catalog) for key, entry in entries.items()}
    return Reference.model_construct(None, **told)


def _translated(entry: Entry, place: str, catalog: Catalog) -> Entry:
    changed: dict[str, Any] = {}
    for name, value in entry:
        at = f"{place}.{name}"
        if isinstance(value, str) and value and name in SOURCES:
            changed[name] = catalog.gettext(value)
        elif isinstance(value, str) and value and name in WORDS:
            changed[name] = catalog.pgettext(at, value)
        elif isinstance(value, Record):
            changed[name] = _translated(value, f"{at}.is", catalog)
        elif isinstance(value, Mapping):
            parts = zip(value, _parts(value), strict=True)
            changed[name] = {key: _part(part, f"{at}.{word}", name, catalog) for key, (word, part) in parts}
        elif isinstance(value, tuple):
            changed[name] = tuple(_part(part, f"{at}.{word}", name, catalog) for word, part in _parts(value))
    return entry.model_copy(update=changed)


def _part(part: Any, place: str, name: str, catalog: Catalog) -> Any:
    if isinstance(part, Record):
        return _translated(part, place, catalog)
    return catalog.pgettext(place, part) if name == "grades" else part

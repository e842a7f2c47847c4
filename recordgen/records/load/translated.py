"""The tables in another language: which of their words people read, and the same tables with these words translated.

A message is asked for by its place, such as `cautions.wound.seen`, and its English; a source by its English alone.
"""

from __future__ import annotations

import re
from collections.abc import Mapping
from typing import Any, TypeVar

from recordgen.language.catalogs import Asked, Catalog, Listening
from recordgen.records.models.fields import Record
from recordgen.records.models.reference import Reference

Entry = TypeVar("Entry", bound=Record)

# The fields of all tables that hold words for people, and those whose words are the same wherever they stand.
WORDS = {
    *("name", "plain", "landmarks", "text", "seen", "meanwhile", "do_not", "left_over", "what", "why", "how_often"),
    *("until", "stop_if", "caution", "meaning", "shown", "maybe", "rule", "share"),
}
SOURCES = {"source", "weeks_source", "growth_source"}
# A source of our own words; one that names a publication stays in the language it was written in.
OWN_WORDS = re.compile(r"(Assumed|As for|Common practice|Pages of)[^0-9]*")
# Tables whose entries are words themselves.
SENTENCES = ("phrases",)


def messages(tables: Reference) -> list[Asked]:
    """All that can be translated of some tables, in their order: what their translation asks for."""
    listening = Listening()
    translate_tables(tables, listening)
    return listening.asked


def translate_tables(tables: Reference, catalog: Catalog) -> Reference:
    """The tables with all words that the catalog knows; plurals that English has not are added to the phrases."""
    told: dict[str, Any] = {}
    for table in Reference.model_fields:
        entries = getattr(tables, table)
        if table in SENTENCES:
            known = {key: catalog.pgettext(f"{table}.{key}", text) for key, text in entries.items()}
            told[table] = {**dict(catalog.under(f"{table}.")), **known}
        else:
            told[table] = {key: _translate(entry, f"{table}.{key}", catalog) for key, entry in entries.items()}
    return Reference.model_construct(None, **told)


def _translate(entry: Entry, place: str, catalog: Catalog) -> Entry:
    changed: dict[str, Any] = {}
    for name, value in entry:
        at = f"{place}.{name}"
        if isinstance(value, str) and name in SOURCES and OWN_WORDS.fullmatch(value):
            changed[name] = catalog.gettext(value)
        elif isinstance(value, str) and value and name in WORDS:
            changed[name] = catalog.pgettext(at, value)
        elif isinstance(value, Record):
            changed[name] = _translate(value, f"{at}.is", catalog)
        elif isinstance(value, Mapping):
            changed[name] = {key: _part(part, f"{at}.{_step_text(key)}", name, catalog) for key, part in value.items()}
        elif isinstance(value, tuple):
            changed[name] = tuple(_part(part, f"{at}.{number}", name, catalog) for number, part in enumerate(value))
    return entry.model_copy(update=changed)


def _part(part: Any, place: str, name: str, catalog: Catalog) -> Any:
    if isinstance(part, Record):
        return _translate(part, place, catalog)
    return catalog.pgettext(place, part) if name == "grades" else part


def _step_text(key: Any) -> str:
    """A key as it stands in a place: a grade of 2.0 as 2."""
    return f"{key:g}" if isinstance(key, float) else str(key)

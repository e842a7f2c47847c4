"""The words of the field page in the language of its practice: its sentences, names for the records' keys, their help.

What is handed over stays in the records' own words; these are for the eye alone.
"""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from pathlib import Path
from typing import Any

from recordgen.hoof.naming import Naming
from recordgen.language.catalogs import Catalog, table_in
from recordgen.site.field.vocabulary import Entry, foot_entries, visit_entries
from recordgen.site.single_page import read_table

FOLDER = "field"
NAMES = f"{FOLDER}.names"


def key_of(word: str) -> str:
    """A key or a choice as the table of names holds it."""
    return word.replace(" ", "_")


def words_of_page(catalog: Catalog, own: Path | None = None) -> dict[str, Any]:
    """The table of the page's sentences, with the names it gives to keys. own: a practice's own templates."""
    return table_in(catalog, read_table(FOLDER, "words.yaml", own), FOLDER)  # type: ignore[no-any-return]


def names_of_page(named: Mapping[str, str], naming: Naming, catalog: Catalog) -> dict[str, str]:
    """Names for each key, choice, zone and unit that people say otherwise than the word itself with blanks.

    named: the names of the page's own table, which go first; then those that the pages of the sites use.
    """
    known = dict(named)
    for word in vocabulary():
        key = key_of(word)
        if key not in known:
            known[key] = naming.phrases.get(f"place_{key}") or _word_of_page(word, naming, catalog)
    return {key: name for key, name in known.items() if name != key.replace("_", " ")}


def _word_of_page(word: str, naming: Naming, catalog: Catalog) -> str:
    if naming.has_value(word):
        return naming.value(word)
    shown = naming.quantities.unit(word)
    return shown if shown != word else str(table_in(catalog, word.replace("_", " "), f"{NAMES}.{key_of(word)}"))


def vocabulary() -> list[str]:
    """All keys, choices, zones and units that the page may show, each once."""
    return list(dict.fromkeys(word for entries in (visit_entries(), foot_entries()) for word in _words(entries)))


def _words(entries: Sequence[Entry]) -> Iterator[str]:
    for entry in entries:
        yield from (entry[part] for part in ("key", "unit") if part in entry)
        yield from (word for part in ("choices", "keys", "scales") for word in entry.get(part, ()))
        yield from _words([*entry.get("fields", ()), *([entry["of"]] if "of" in entry else ())])


def translate_help(entries: Sequence[Entry], catalog: Catalog, naming: Naming) -> list[Entry]:
    """The vocabulary with the help of each field in the language of a catalog and the units that are shown."""
    return [_translate_entry(entry, catalog, naming) for entry in entries]


def _translate_entry(entry: Entry, catalog: Catalog, naming: Naming) -> Entry:
    told = dict(entry)
    if entry.get("help"):
        told["help"] = _in_units(catalog.gettext(entry["help"]), naming)
    if "fields" in entry:
        told["fields"] = [_translate_entry(inner, catalog, naming) for inner in entry["fields"]]
    if "of" in entry:
        told["of"] = _translate_entry(entry["of"], catalog, naming)
    return told


def _in_units(help_text: str, naming: Naming) -> str:
    """A field's help, whose last word in brackets is its unit, with the unit that is shown."""
    for unit in ("mm", "cm"):
        help_text = help_text.replace(f"({unit})", f"({naming.unit(unit)})")
    return help_text

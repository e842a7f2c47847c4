"""A language in which every message stands in marks, so that a sentence that no catalog holds stands outside them."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from functools import cache
from io import BytesIO
from pathlib import Path
from typing import Any

import pytest
import yaml
from babel import Locale
from babel.messages.catalog import Catalog
from babel.messages.pofile import write_po

from recordgen.language import catalogs
from recordgen.records.load.tables import read_reference
from recordgen.records.models.reference import Reference
from tests.catalogs import DOMAINS, HEADER
from tests.conftest import RECORDS

# A language without catalogs of its own, whose days babel knows. Each message is wrapped in these marks.
CODE, OPEN, CLOSE = "eo", "\u27e6", "\u27e7"
MARKED = re.compile(f"{OPEN}[^{OPEN}{CLOSE}]*{CLOSE}")
WORD = re.compile(r"[^\W\d_]{3,}")
# Names, units and signs that are the same in every language.
SAME = {"recordgen", "mm²", "ueln", "json", "csv", "sms", "mailto", "tel"}


def marked(message: str | tuple[str, ...]) -> str:
    """A message in marks, as a catalog writes it."""
    return f"{OPEN}{message if isinstance(message, str) else message[-1]}{CLOSE}"


def write_catalogs(folder: Path) -> None:
    """Write the catalogs of the language of marks."""
    (folder / CODE).mkdir()
    for domain, asked in DOMAINS.items():
        catalog = Catalog(locale=CODE)
        for place, message in asked():
            told = marked(message) if isinstance(message, str) else (marked(message[0]), marked(message))
            catalog.add(message, told, context=place)
        out = BytesIO()
        write_po(out, catalog, omit_header=True, width=0)
        text = HEADER.format(code=CODE, plurals=catalog.plural_forms) + out.getvalue().decode()
        (folder / CODE / f"{domain}.po").write_text(text, "utf-8")


@contextmanager
def marked_practice(folder: Path, stable: str, horses: tuple[str, ...]) -> Iterator[Path]:
    """The demo's records with so many horses of one stable, in the language of marks as long as it lasts."""
    write_catalogs(folder)
    records = shutil.copytree(RECORDS, folder / "records")
    for horse in [path for path in (records / stable).iterdir() if path.is_dir() and path.name not in horses]:
        shutil.rmtree(horse)
    file = records / "practice.yaml"
    file.write_text(f"{file.read_text('utf-8')}language: {CODE}\n", "utf-8")
    with pytest.MonkeyPatch.context() as patch:
        patch.setattr(catalogs, "catalogs_folder", lambda: folder)
        catalogs.languages.cache_clear()
        catalogs.catalog_of.cache_clear()
        yield records
    catalogs.languages.cache_clear()
    catalogs.catalog_of.cache_clear()


def strings(value: Any) -> Iterator[str]:
    """All texts of a YAML value, keys left out."""
    if isinstance(value, dict):
        for part in value.values():
            yield from strings(part)
    elif isinstance(value, list):
        for part in value:
            yield from strings(part)
    elif isinstance(value, str):
        yield value


@cache
def said_by_records() -> list[str]:
    """All that the records say, whole and sentence by sentence, and sources as published; the longest first."""
    files = sorted(RECORDS.rglob("*.yaml"))
    whole = [text for file in files for text in strings(yaml.safe_load(file.read_text("utf-8")))]
    whole += [text for _, text in _citations(read_reference(None)[0])]
    whole += [text.replace("-", " ") for text in whole]
    whole += [file.read_text("utf-8").splitlines()[0].lstrip("# ") for file in sorted(RECORDS.rglob("*.md"))]
    parts = [part for text in whole for part in re.split(r"(?<=[.!?]) |; |, ", text)]
    found = {" ".join(text.split()).rstrip(".").lower() for text in (*whole, *parts)}
    return sorted((text for text in found if len(text) > 1), key=len, reverse=True)


@cache
def words_of_days() -> set[str]:
    """The words with which the language writes days."""
    locale = Locale.parse(CODE)
    names = [form for by in (locale.months, locale.days) for forms in by.values() for form in forms.values()]
    texts = [str(pattern) for pattern in locale.date_formats.values()]
    return {word for text in [*texts, *(name for form in names for name in form.values())] for word in words_in(text)}


def words_in(text: str) -> set[str]:
    """The words of three letters and more, small."""
    return {word.lower() for word in WORD.findall(text)}


def _citations(tables: Reference) -> Iterator[tuple[str, str]]:
    for name in Reference.model_fields:
        for entry in getattr(tables, name).values():
            yield from _sources(entry)


def _sources(entry: Any) -> Iterator[tuple[str, str]]:
    if hasattr(entry, "model_dump"):
        yield from (("source", text) for key, text in _walk(entry.model_dump()) if "source" in key)


def _walk(value: Any, key: str = "") -> Iterator[tuple[str, str]]:
    if isinstance(value, dict):
        for name, part in value.items():
            yield from _walk(part, str(name))
    elif isinstance(value, (list, tuple)):
        for part in value:
            yield from _walk(part, key)
    elif isinstance(value, str):
        yield key, value


class Left:
    """The words of texts that stand outside all marks, and that neither the records nor a day say."""

    def __init__(self) -> None:
        self.said, self.same = said_by_records(), words_of_days() | SAME

    def of(self, text: str) -> set[str]:
        """Such words of one text."""
        before = None
        while before != text:
            before, text = text, MARKED.sub(" ", text)
        text = " ".join(text.split()).lower()
        for known in self.said if words_in(text) - self.same else ():
            text = text.replace(known, " ")
        return words_in(text) - self.same

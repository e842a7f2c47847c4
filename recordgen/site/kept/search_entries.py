"""The entries of a site's search by page, taken out of its index and put in again."""

from __future__ import annotations

import json
from collections.abc import Iterable, Mapping, Sequence
from pathlib import Path
from typing import Any

from recordgen.site.model import Page, link

# By a page's uri, the entries of the page and of its sections, as the engine writes them.
Entries = Mapping[str, Sequence[Mapping[str, Any]]]
_INDEX = Path("search", "search_index.json")


def read_entries(site: Path, pages: Iterable[Page]) -> Entries | None:
    """The entries of a built site; None where its index has another form than we know and could not be put together."""
    text = (site / _INDEX).read_text("utf-8")
    index, found = json.loads(text), {link("index.md", page.uri): page.uri for page in pages}
    entries: dict[str, list[Mapping[str, Any]]] = {uri: [] for uri in found.values()}
    for entry in index["docs"]:
        uri = found.get(entry["location"].partition("#")[0])
        if uri is None:
            return None
        entries[uri].append(entry)
    whole = _written(index, [entry for each in entries.values() for entry in each])
    return entries if whole == text else None


def add_entries(site: Path, pages: Iterable[Page], before: Entries) -> None:
    """Put the entries of the finished pages beside those of the pages that were built, in the order of the pages."""
    index = json.loads((site / _INDEX).read_text("utf-8"))
    fresh: dict[str, list[Mapping[str, Any]]] = {}
    for entry in index["docs"]:
        fresh.setdefault(entry["location"].partition("#")[0], []).append(entry)
    docs = [
        entry
        for page in pages
        for entry in (before.get(page.uri, ()) if page.finished else fresh.get(link("index.md", page.uri), ()))
    ]
    (site / _INDEX).write_text(_written(index, docs), "utf-8")


def _written(index: Mapping[str, Any], docs: Sequence[Mapping[str, Any]]) -> str:
    return json.dumps({**index, "docs": docs}, separators=(",", ":"))

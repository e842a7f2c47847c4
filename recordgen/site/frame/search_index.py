"""The index of search: a small script that holds, by page, where it lies, its title, its days, its names and its words.

    recordgenFound({"days": {"2026-11-18": ["18/11/2026", …]},
                    "pages": [[address, title, weight, [day, …], names, words], …]});

It is a script, so that search works from a disk too. Each word of a page stands there once, in no order: enough to find
it by, and a fraction of the page's text.
"""

from __future__ import annotations

import json
import re
import unicodedata
from collections.abc import Iterable, Sequence
from dataclasses import replace
from datetime import date
from html.parser import HTMLParser
from typing import Any

from recordgen.language.spoken import ENGLISH, Language
from recordgen.site.model import Page, link
from recordgen.site.pages.found_by import day_spellings

PLACE = "search/index.js"
# Address, title, weight among what is found, days of visits (ISO), everyday names, words.
Entry = Sequence[Any]

_WORD = re.compile(r"\w+")
_SILENT = {"script", "style", "svg", "template"}
# These words stand on every page or tell none from another. Judgement.
_COMMON = frozenset(
    """a an and are as at be been by do for from had has have in is it its no not of on or so than that the them then
    there they this to was were what when where which with you your""".split()  # noqa: SIM905 -- a list would be a page long
)


def indexed(page: Page) -> Page:
    """The page with its entry in the index; as it is where search does not read it, or where it is finished."""
    if page.finished or not page.searched:
        return page
    address, names = link("index.md", page.uri), " ".join(page.found_by)
    return replace(page, entry=[address, page.title, page.weight, list(page.visits), names, words_of(page.html)])


def index_script(entries: Iterable[Entry], language: Language = ENGLISH) -> str:
    """The script of a site's search. language: in which its readers type days."""
    pages = [list(entry) for entry in entries]
    days = sorted({day for entry in pages for day in entry[3]})
    spelled = {day: [folded(one) for one in day_spellings(date.fromisoformat(day), language)] for day in days}
    told = json.dumps({"days": spelled, "pages": pages}, ensure_ascii=False, separators=(",", ":"))
    return f"recordgenFound({told});\n"


def words_of(html: str) -> str:
    """The words of a page's text, folded, each once; none of what is marked `data-search-exclude`."""
    reader = _Text()
    reader.feed(html)
    found = dict.fromkeys(_WORD.findall(folded(" ".join(reader.texts))))
    return " ".join(word for word in found if len(word) > 1 and word not in _COMMON)


def folded(text: str) -> str:
    """Small letters without accents, by the steps of search.js: Márta as marta, weiß as weiss."""
    plain = unicodedata.normalize("NFD", text)
    return "".join(sign for sign in plain if not unicodedata.category(sign).startswith("M")).upper().lower()


class _Text(HTMLParser):
    """The texts of a page that search reads."""

    def __init__(self) -> None:
        super().__init__()
        self.texts: list[str] = []
        self._left_out: list[str] = []

    def handle_starttag(self, tag: str, attrs: list[tuple[str, str | None]]) -> None:
        """Leave an element out, or count those of its name within it."""
        begins = tag in _SILENT or any(name == "data-search-exclude" for name, _ in attrs)
        if begins if not self._left_out else tag == self._left_out[0]:
            self._left_out.append(tag)

    def handle_endtag(self, tag: str) -> None:
        """End what is left out."""
        if self._left_out and tag == self._left_out[0]:
            self._left_out.pop()

    def handle_data(self, data: str) -> None:
        """Take a text."""
        if not self._left_out:
            self.texts.append(data)

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
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import replace
from datetime import date
from html import unescape
from typing import Any

from recordgen.language.spoken import ENGLISH, Language
from recordgen.site.model import Page, link
from recordgen.site.pages.found_by import day_spellings

PLACE = "search/index.js"
# Address, title, weight among what is found, days of visits (ISO), everyday names, words.
Entry = Sequence[Any]

_WORD = re.compile(r"\w+")
# A comment, or a tag: its stroke where it ends an element, its name, and the rest; a sign > may stand in quotes there.
# Source: HTML Living Standard, section 13.1.2, for pages as our templates write them.
_TAG = re.compile(r"""<!--.*?-->|<![^>]*>|<(/?)([a-zA-Z][^\s/>]*)((?:[^"'>]|"[^"]*"|'[^']*')*)>""", re.DOTALL)
_EXCLUDED = re.compile(r"\sdata-search-exclude(?=[\s=/]|$)")
_BEYOND_ASCII = re.compile(r"[^\x00-\x7f]+")
_SILENT = {"script", "style", "svg", "template"}
# These words stand on every page or tell none from another. Judgement.
_COMMON = frozenset(
    """a an and are as at be been by do for from had has have in is it its no not of on or so than that the them then
    there they this to was were what when where which with you your""".split()  # noqa: SIM905 -- a list would be a page long
)


def with_search_entry(page: Page) -> Page:
    """The page with its entry in the index; as it is where search does not read it, or where it is finished."""
    if page.finished or not page.searched:
        return page
    address, names = link("index.md", page.uri), " ".join(page.found_by)
    return replace(page, entry=(address, page.title, page.weight, page.visits, names, words_of(page.html)))


def index_script(entries: Iterable[Entry], language: Language = ENGLISH) -> str:
    """The script of a site's search. language: in which its readers type days."""
    pages = [list(entry) for entry in entries]
    days = sorted({day for entry in pages for day in entry[3]})
    spelled = {day: [fold_letters(one) for one in day_spellings(date.fromisoformat(day), language)] for day in days}
    told = json.dumps({"days": spelled, "pages": pages}, ensure_ascii=False, separators=(",", ":"))
    return f"recordgenFound({told});\n"


def words_of(html: str) -> str:
    """The words of a page's text, folded, each once; none of what is marked `data-search-exclude`."""
    found = dict.fromkeys(_WORD.findall(fold_letters(" ".join(_texts(html)))))
    return " ".join(word for word in found if len(word) > 1 and word not in _COMMON)


def fold_letters(text: str) -> str:
    """Small letters without accents, by the steps of search.js: Márta as marta, weiß as weiss."""
    return _BEYOND_ASCII.sub(_without_accents, unicodedata.normalize("NFD", text)).upper().lower()


def _without_accents(found: re.Match[str]) -> str:
    return "".join(sign for sign in found[0] if not unicodedata.category(sign).startswith("M"))


def _texts(html: str) -> Iterator[str]:
    """The texts of a page that search reads, in their order."""
    at, inside, left_out = 0, 0, ""
    for tag in _TAG.finditer(html):
        if not left_out and tag.start() > at:
            yield unescape(html[at : tag.start()])
        at, (ends, name) = tag.end(), (tag[1], (tag[2] or "").lower())
        if left_out:
            inside += 0 if name != left_out else -1 if ends else 1
            left_out = left_out if inside else ""
        elif name and not ends and not tag[3].endswith("/") and (name in _SILENT or _EXCLUDED.search(tag[3])):
            left_out, inside = name, 1
    if not left_out:
        yield unescape(html[at:])

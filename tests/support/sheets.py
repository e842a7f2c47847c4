"""The vet's sheets of the demo practice, as values and as documents."""

from __future__ import annotations

from functools import cache
from pathlib import Path
from typing import Any

from bs4 import BeautifulSoup

from recordgen.cache.entries import user_cache
from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet import Sheet, sheet_of
from recordgen.hoof.summary import HorseSummary, summarise
from recordgen.pictures.cache import PictureCache
from recordgen.records.load.everything import read_whole
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.stable import Stable
from recordgen.site.build_context import BuildContext
from recordgen.site.context import ways_of
from recordgen.site.drawings.dated import DaySayer
from recordgen.site.drawings.pictures import Pictures
from recordgen.site.model import Page, link
from recordgen.site.sheet import sheet_alone, sheet_values
from recordgen.site.templates import environment, render
from tests.conftest import RECORDS, TODAY


@cache
def kept() -> PictureCache:
    """The pictures that the tests of one run share."""
    return PictureCache(user_cache())


@cache
def _practice() -> tuple[Context, dict[str, tuple[HorseRecord, Stable]]]:
    whole = read_whole(RECORDS, TODAY)
    ways = ways_of(whole)
    return ways, {horse.slug: (horse, one.stable) for one in whole.practice.stables for horse in one.horses}


def demo_ways() -> Context:
    """The ways of the demo practice."""
    return _practice()[0]


def demo_horses() -> list[str]:
    """The folders of all horses of the demo practice."""
    return sorted(_practice()[1])


@cache
def demo_summary(slug: str) -> HorseSummary:
    """The summary of one horse of the demo practice."""
    return summarise(_practice()[1][slug][0], demo_ways(), TODAY)


def demo_sheet(slug: str, **values: Any) -> Sheet:
    """The sheet of one horse of the demo practice."""
    return sheet_of(demo_summary(slug), _practice()[1][slug][1], demo_ways(), **values)


@cache
def demo_alone(slug: str) -> str:
    """The sheet of one horse of the demo as a document that stands alone."""
    return alone(demo_sheet(slug), demo_ways())


def alone(sheet: Sheet, ways: Context) -> str:
    """A sheet as a document that stands alone."""
    return sheet_alone(sheet, BuildContext(Path("none"), ways, TODAY, user_cache()))


def soup_of(html: str) -> BeautifulSoup:
    """A document, parsed."""
    return BeautifulSoup(html, "lxml")


def sheet_page(slug: str, uri: str) -> Page:
    """The sheet of one horse of the demo as a page of a site."""
    ways = demo_ways()
    templates = environment(Path("none"), ways.naming)
    pictures = Pictures(kept(), ways.naming, DaySayer(templates, TODAY))
    shared = {
        "here": uri,
        "title": slug,
        "menu": [[(uri, "Willowmere")]],
        "private": False,
        "practice": ways.practice,
        "today": TODAY,
        "pictures": pictures,
        "link": lambda there: link(uri, there),
    }
    values = {**shared, **sheet_values(demo_sheet(slug), ways)}
    html, paper = (render(templates, name, **values) for name in ("sheet.html", "sheet/paper.html"))
    return Page(uri, slug, html, tuple(pictures.late), head=paper)

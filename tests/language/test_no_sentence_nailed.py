"""No sentence is nailed into Python or a template: with every message in marks, nothing stands outside the marks."""

from __future__ import annotations

import re
from collections.abc import Iterator
from datetime import date
from pathlib import Path

import icalendar
import pytest
from bs4 import BeautifulSoup
from bs4.element import NavigableString

from recordgen.cache.entries import Cache
from recordgen.hoof.export.sheet import sheet_of
from recordgen.records.load.everything import read_whole
from recordgen.records.load.tables import read_reference
from recordgen.records.models.names import FEET
from recordgen.site.build_context import BuildContext
from recordgen.site.calendar import due_calendar
from recordgen.site.model import Site
from recordgen.site.pages.sites import render_site
from recordgen.site.sheet import sheet_alone
from tests.support.commands import run
from tests.support.marked_language import OPEN, Left, marked_practice

STABLE, HORSES = "willowmere", ("bramble", "moss")
TODAY = date(2026, 11, 27)
SAID = ("aria-label", "title", "alt", "placeholder", "data-label")


@pytest.fixture(scope="module")
def records(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Path]:
    """The demo practice's records in the language of marks."""
    with marked_practice(tmp_path_factory.mktemp("marks"), STABLE, HORSES) as folder:
        yield folder


@pytest.fixture(scope="module")
def context(records: Path) -> BuildContext:
    """The same, as its sites are made of it."""
    return BuildContext.of(read_whole(records, TODAY, STABLE), TODAY, Cache(None))


def told(html: str) -> Iterator[str]:
    """All that a page says to eyes and ears: its text block by block, and the words of its attributes."""
    page = BeautifulSoup(html, "html5lib")
    for hidden in page(["script", "style", "code"]):
        hidden.decompose()
    for element in page.find_all(True):
        yield from (str(element[name]) for name in SAID if element.get(name))
    # The words of a picture may stand in two lines.
    for picture in page("svg"):
        yield picture.get_text(" ")
        picture.decompose()
    yield " ".join(str(text) for text in page.find_all(string=True) if type(text) is NavigableString)


def stable_pages(context: BuildContext) -> Iterator[tuple[str, str]]:
    """The pages of one stable's site, and the sheets that stand alone, each by its name."""
    site: Site = render_site(context, STABLE)
    yield from ((page.uri, page.complete(page.html)) for page in site.pages if not page.uri.startswith("pages/"))
    stable = context.stable(STABLE)
    for horse in stable.horses:
        yield f"{horse.slug} alone", sheet_alone(sheet_of(horse, stable.stable, context.ways), context)


def test_every_word_of_an_owner_s_site_comes_from_a_catalog_or_the_records(context: BuildContext) -> None:
    """Pages, pictures with their titles, sheets: what stands outside the marks are words of the records."""
    left, pages = Left(), dict(stable_pages(context))
    found = {name: {word for text in told(html) for word in left.of(text)} for name, html in pages.items()}

    assert min(html.count(OPEN) for html in pages.values()) > 10
    assert {name: words for name, words in found.items() if words} == {}


def test_every_word_of_a_calendar_file_does_too(context: BuildContext) -> None:
    """Summaries and descriptions of the days."""
    lines = icalendar.Calendar.from_ical(due_calendar(context.stable(STABLE), context.ways, TODAY)).walk("VEVENT")
    texts = [str(event[name]) for event in lines for name in ("SUMMARY", "DESCRIPTION")]

    assert texts
    assert set().union(*map(Left().of, texts)) == set()


@pytest.mark.parametrize(
    "words", ["due --stable willowmere", "summary willowmere/bramble", "rounds --stable willowmere"]
)
def test_every_word_of_what_a_trimmer_asks_most_does_too(records: Path, words: str) -> None:
    """But for names that are typed, such as a caution's and its foot's, and folders."""
    said = run(*words.split(), "--records", str(records), "--today", TODAY.isoformat()).output
    typed = {word for name in (*read_reference(None)[0].cautions, *FEET) for word in re.split("[-_]", name)}

    assert said.count(OPEN) > 3
    assert Left().of(said) - typed - {STABLE} == set()

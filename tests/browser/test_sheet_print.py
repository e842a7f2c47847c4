"""The vet's sheet printed by Chromium and read back: two pages of A4, every row whole, black on white."""

from __future__ import annotations

import io
import re
import shutil
import unicodedata
from collections.abc import Iterator
from functools import cache
from pathlib import Path
from typing import Literal

import pytest
from playwright.sync_api import Browser, Page
from pypdf import PdfReader

from recordgen.site.engine import write_site
from recordgen.site.model import Site
from tests.conftest import RECORDS
from tests.support.commands import run_today
from tests.support.full_visits import heavy
from tests.support.horse_records import WAYS
from tests.support.sheets import alone, demo_alone, demo_horses, demo_summary, sheet_page
from tests.support.small_text import SMALL_TEXT, SMALLEST_TEXT_PX

Scheme = Literal["light", "dark"]
HORSES = ["bramble", "pippin"]
# The names under which their sheets lie in a site; a site has a front page.
IN_SITE = {"bramble": "index", "pippin": "pippin"}
# A4 in points of a 72nd of an inch. Source: ISO 216, 210 x 297 mm.
A4 = (210 / 25.4 * 72, 297 / 25.4 * 72)
# The printed width inside the margins, 190 mm, in CSS pixels of a 96th of an inch.
PRINTED_PX = round(190 / 25.4 * 96)
# Cells and lines whose content is wider than they are, and steps that run into the next.
OVERFLOWING = """() => [...document.querySelectorAll('.rg-sheet :is(td, th, li, dd, p, .rg-sheet-step)')]
  .filter(one => one.scrollWidth > one.clientWidth + 1 && getComputedStyle(one).display !== 'inline')
  .map(one => one.textContent.trim().slice(0, 40))"""
# 8 points, in pixels of a 96th of an inch. Judgement
SMALLEST_ON_PAPER_PX = 8 / 72 * 96 - 0.1


@pytest.fixture(scope="module")
def places(tmp_path_factory: pytest.TempPathFactory) -> dict[str, str]:
    """Where each sheet lies: alone, and as a page of a site."""
    folder = tmp_path_factory.mktemp("sheets")
    for slug in demo_horses():
        (folder / f"{slug}.html").write_text(demo_alone(slug), "utf-8")
    pages = tuple(sheet_page(slug, f"{name}.md") for slug, name in IN_SITE.items())
    write_site(Site("willowmere", "Willowmere", pages), folder / "site", RECORDS)
    (folder / "heavy.html").write_text(alone(heavy(), WAYS), "utf-8")
    files = {slug: folder / f"{slug}.html" for slug in (*demo_horses(), "heavy")}
    files |= {f"site {slug}": folder / "site" / f"{name}.html" for slug, name in IN_SITE.items()}
    return {name: file.as_uri() for name, file in files.items()}


@pytest.fixture(scope="module")
def window(browser: Browser) -> Iterator[Page]:
    """One window for all sheets: none keeps anything, and a new one takes as long as showing a sheet."""
    context = browser.new_context()
    yield context.new_page()
    context.close()


def opened(window: Page, address: str, scheme: Scheme = "light", width: int = 1280) -> Page:
    """The window with a sheet in it, on a screen of this width."""
    window.set_viewport_size({"width": width, "height": 900})
    window.emulate_media(media="null", color_scheme=scheme)
    window.goto(address)
    return window


class Press:
    """Prints sheets, each once however many tests read it."""

    def __init__(self, window: Page, places: dict[str, str]) -> None:
        self.window = window
        self.places = places
        self.texts = cache(self._texts)
        self.printed = cache(self._printed)

    def _printed(self, name: str, scheme: Scheme) -> PdfReader:
        """The sheet as a PDF, with backgrounds, read back."""
        page = opened(self.window, self.places[name], scheme)
        return PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True, print_background=True)))

    def _texts(self, name: str) -> list[str]:
        """The words of each page."""
        return [page.extract_text() for page in self.printed(name, "light").pages]


@pytest.fixture(scope="module")
def press(window: Page, places: dict[str, str]) -> Press:
    """Prints the sheets."""
    return Press(window, places)


def close(text: str) -> str:
    """A text without its blanks and joined letters, and without the arrow that the style puts between two readings."""
    return re.sub(r"[\s→]", "", unicodedata.normalize("NFKC", text))


@pytest.mark.parametrize(
    ("name", "scheme"),
    [
        ("bramble", "light"),
        ("pippin", "light"),
        ("site bramble", "light"),
        ("site pippin", "light"),
        ("site pippin", "dark"),
        ("heavy", "light"),
    ],
)
def test_two_pages_of_a4(press: Press, name: str, scheme: Scheme) -> None:
    """And a third with the tracings; alone and inside a site, whatever the reader chose and however much was found."""
    pages = press.printed(name, scheme).pages
    starts = [number for number, text in enumerate(press.texts(name), start=1) if "Latest tracings" in text]

    assert len(pages) == 3
    assert starts == [3]
    assert [tuple(map(float, page.mediabox[2:])) for page in pages] == [pytest.approx(A4, abs=1.5)] * 3


@pytest.mark.parametrize("slug", [slug for slug in demo_horses() if slug not in HORSES])
def test_each_horse_of_the_demo_has_two_pages(press: Press, slug: str) -> None:
    """And a third where feet were traced alone."""
    traced = any(one.traced for visit in demo_summary(slug).history for one in visit.feet.values())

    assert len(press.printed(slug, "light").pages) == 2 + traced


@pytest.mark.parametrize("name", [*HORSES, "heavy"])
def test_the_third_page_tells_how_concentric_each_sole_is(press: Press, name: str) -> None:
    """A drawing and each zone with its error beside it, and that nobody shall cut by it."""
    third = press.texts(name)[2]
    page = opened(press.window, press.places[name])
    drawn = page.locator(".rg-sheet-off figure title").evaluate_all("all => all.map(one => one.textContent)")
    rows = page.locator(".rg-sheet-zones tbody tr").evaluate_all("all => all.map(one => one.innerText)")
    figures = page.locator(".rg-sheet-zones td").all_inner_texts()

    assert "To think by, never an instruction to cut." in " ".join(third.split())
    assert len(drawn) == len(rows) > 0
    assert all("off concentric" in title for title in drawn)
    assert [row for row in rows if close(row) not in close(third)] == []
    assert [figure for figure in figures if not re.fullmatch(r"−?\d\.\d ± \d\.\d", figure)] == []


def test_longer_words_of_another_language_fit_too(window: Page, tmp_path: Path) -> None:
    """The fullest sheet of the demo in German has no page more."""
    others = shutil.ignore_patterns("fallow-end", "tithe-barn", "bramble", "fennel", "moss", "tansy")
    records = shutil.copytree(RECORDS, tmp_path / "records", ignore=others)
    with (records / "practice.yaml").open("a", encoding="utf-8") as file:
        file.write("language: de\n")
    run_today("sheet", "willowmere/pippin", "--out", tmp_path / "pippin.html", records=records)
    page = opened(window, (tmp_path / "pippin.html").as_uri())
    printed = PdfReader(io.BytesIO(page.pdf(prefer_css_page_size=True)))

    assert "Alle Maße" in printed.pages[1].extract_text()
    assert len(printed.pages) == 3


@pytest.mark.parametrize("name", [*HORSES, "site pippin", "moss"])
def test_no_row_is_cut_between_pages(press: Press, name: str) -> None:
    """All words of a row, a line of a list or a heading stand on one page, in a stretch."""
    pages = [close(text) for text in press.texts(name)]
    page = opened(press.window, press.places[name])
    page.emulate_media(media="print")
    rows = page.locator(".rg-sheet :is(tbody tr, li, h2)").evaluate_all("all => all.map(one => one.innerText)")

    assert len(rows) > 40
    assert [row for row in rows if not any(close(row) in text for text in pages)] == []


@pytest.mark.parametrize("name", [*HORSES, "moss", "tansy", "site bramble", "heavy"])
def test_nothing_runs_over_its_cell_on_paper(window: Page, places: dict[str, str], name: str) -> None:
    """No text is wider than its place at the width of the paper, nor smaller than 8 pt."""
    page = opened(window, places[name], width=PRINTED_PX)
    page.emulate_media(media="print")

    assert page.evaluate(OVERFLOWING) == []
    assert page.evaluate(SMALL_TEXT, SMALLEST_ON_PAPER_PX) == []
    assert page.evaluate("document.documentElement.scrollWidth") <= PRINTED_PX


@pytest.mark.parametrize("slug", HORSES)
def test_each_page_says_whose_it_is(press: Press, slug: str) -> None:
    """Name, microchip, edition and the number of the page, should the leaves part."""
    for number, text in enumerate(press.texts(slug), start=1):
        foot = text[-200:] + text[:200]
        assert close(f"page {number} of 3") in close(foot)
        assert close(f"{slug.title()}, microchip 999") in close(foot)


def test_the_first_page_answers_in_order(press: Press) -> None:
    """Of a horse with laminitis: who, why, the vet's plan word for word, how lame, which feet, what changed."""
    first, plan = close(press.texts("pippin")[0]), demo_summary("pippin").horse.vet_plan
    assert plan
    wanted = ["999000000104520", "Why it is sent", "The vet's plan of 26 June 2026 ends on 31 December 2026."]
    wanted += [plan.words, "Imogen Sayle, Three Larches, 26 Jun 2026; at most 4 weeks between visits"]
    wanted += ["Obel, 0 to 4: 0 28 Oct 26", "Toe: gap at the white line, 20 mm long and 4 mm deep"]
    wanted += ["Toe length, mm", "Toe angle, degrees", "the vet: 27 Aug 26, 26 Jun 26", "What changed by more than"]
    wanted += [
        "length of the gap at the white line at the toe, mm ↓ 20.5 −25.6 to −15.4 since 8 Jul 26 20, 14 rule 2.0"
    ]
    places = [first.find(close(one)) for one in wanted]

    assert -1 not in places
    assert places == sorted(places)


@pytest.mark.parametrize("slug", demo_horses())
def test_the_second_page_is_for_looking_up(press: Press, slug: str) -> None:
    """The whole table, visits, what was not measured and amendments stand there, and what changed before them."""
    first, second = (close(text) for text in press.texts(slug)[:2])

    assert close("What changed by more than the error of measuring") in first
    for heading in ("All measures", "Visits and intervals", "What was not measured", "Amended later"):
        assert close(heading) in second
        assert close(heading) not in first


@pytest.mark.parametrize("media", ["screen", "print"])
@pytest.mark.parametrize("name", ["pippin", "site pippin"])
def test_black_on_white_in_the_dark_too(window: Page, places: dict[str, str], name: str, media: str) -> None:
    """On a screen and on paper; the pictures as well."""
    page = opened(window, places[name], "dark")
    page.emulate_media(media="print" if media == "print" else "screen", color_scheme="dark")
    ground = page.locator(".rg-sheet").evaluate("one => getComputedStyle(one).backgroundColor")
    ink = "all => [...new Set(all.map(one => getComputedStyle(one).color))]"
    inks = page.locator(".rg-sheet :is(td, b, h1, h2, li)").evaluate_all(ink)
    drawn = "all => [...new Set(all.map(one => getComputedStyle(one).stroke))]"
    lines = page.locator(".rg-sheet-pictures svg path").evaluate_all(drawn)

    assert (ground, inks) == ("rgb(255, 255, 255)", ["rgb(0, 0, 0)"])
    assert set(lines) <= {"none", *(f"rgb({grey}, {grey}, {grey})" for grey in (0, 51, 153, 255))}


def test_the_paper_stays_white_to_its_edge(window: Page, places: dict[str, str]) -> None:
    """No ground of the dark scheme is painted behind the sheet."""
    page = opened(window, places["site pippin"], "dark")
    page.emulate_media(media="print", color_scheme="dark")
    grounds = page.evaluate("[document.documentElement, document.body].map(e => getComputedStyle(e).backgroundColor)")
    scheme = page.evaluate("getComputedStyle(document.documentElement).colorScheme")

    assert grounds == ["rgb(255, 255, 255)"] * 2
    assert "light" in scheme


@pytest.mark.parametrize("scheme", ["light", "dark"])
@pytest.mark.parametrize("name", ["pippin", "site pippin"])
def test_it_reads_on_a_phone(window: Page, places: dict[str, str], name: str, scheme: Scheme) -> None:
    """No sideways scroll and no text too small at 390 pixels; each figure says what it is."""
    page = opened(window, places[name], scheme, width=390)
    sideways = page.evaluate("document.documentElement.scrollWidth - innerWidth")
    sizes = "all => Math.min(...all.map(one => parseFloat(getComputedStyle(one).fontSize)))"
    smallest = page.locator(".rg-sheet :is(small, td, li, p, dd)").evaluate_all(sizes)
    label = page.locator(".rg-sheet-step").first.evaluate("one => getComputedStyle(one, '::before').content")

    assert sideways <= 1
    assert smallest >= SMALLEST_TEXT_PX
    assert label == '"last "'

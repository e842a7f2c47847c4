"""Pages in Chromium on a phone and on a desk, light and dark."""

from __future__ import annotations

import io
import re
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any, Literal

import pytest
from playwright.sync_api import Browser, Error, Page, expect
from pypdf import PdfReader

from recordgen.language.spoken import language_of
from recordgen.site.frame.search_index import index_script, words_of
from tests.support.access import violations
from tests.support.contrast import contrast
from tests.support.small_text import SMALL_TEXT, SMALLEST_TEXT_PX

Scheme = Literal["light", "dark"]
PAGES = ("willowmere/index.html", "willowmere/horses/bramble.html", "practice/index.html", "willowmere/method.html")


@contextmanager
def opened(browser: Browser, address: str, width: int, scheme: Scheme) -> Iterator[tuple[Page, list[str]]]:
    """A page, and the troubles it met: requests to other hosts, errors of scripts, missing files."""
    context = browser.new_context(viewport={"width": width, "height": 844}, color_scheme=scheme)
    page = context.new_page()
    troubles: list[str] = []
    page.on("request", lambda request: _note_foreign(request.url, troubles))
    page.on("pageerror", lambda error: troubles.append(f"script: {error}"))
    page.on("response", lambda response: troubles.append(response.url) if response.status >= 400 else None)
    page.goto(address)
    yield page, troubles
    context.close()


def _note_foreign(url: str, troubles: list[str]) -> None:
    if not url.startswith(("http://127.0.0.1", "data:", "blob:")):
        troubles.append(f"other host: {url}")


@pytest.mark.parametrize(("width", "scheme"), [(390, "light"), (1280, "dark")])
@pytest.mark.parametrize("address", PAGES)
def test_nothing_trips_a_reader(browser: Browser, served: str, address: str, width: int, scheme: Scheme) -> None:
    """No foreign host, no script error, no missing file, no sideways scroll, no text too small to read."""
    with opened(browser, f"{served}/{address}", width, scheme) as (page, troubles):
        page.wait_for_load_state("networkidle")
        sideways = page.evaluate("document.documentElement.scrollWidth - innerWidth")
        small = page.evaluate(SMALL_TEXT, SMALLEST_TEXT_PX)

    assert (troubles, small) == ([], [])
    assert sideways <= 1


def test_text_twice_as_large_fits_an_old_phone(browser: Browser, served: str) -> None:
    """Letters set to 200 % in the browser grow all of them, and nothing goes out sideways. Source: WCAG 2.2, 1.4.4."""
    found = {}
    for address in ("willowmere/index.html", "willowmere/jobs.html", "willowmere/words.html", PAGES[1]):
        with opened(browser, f"{served}/{address}", 360, "light") as (page, _):
            sizes = [page.evaluate(_LARGE, share) for share in ("100%", "200%")]
            found[address] = (sizes[1][0] / sizes[0][0], max(width for _, width, _ in sizes), sizes[1][2])

    assert {address: told for address, told in found.items() if told[:2] != (2, 360) or told[2] > 200} == {}


# The size of running text, the width of the page, and how high its header is, with the letters of the browser so large.
_LARGE = """share => {
  document.documentElement.style.fontSize = share;
  const size = (one) => parseFloat(getComputedStyle(document.querySelector(one)).fontSize);
  return [size(".rg p"), document.documentElement.scrollWidth, document.querySelector(".rg-head").offsetHeight];
}"""


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_text_stands_out_from_its_ground(browser: Browser, served: str, scheme: Scheme) -> None:
    """Text reaches a contrast of 4.5 to 1 on paper, card and caution. Source: WCAG 2.2, criterion 1.4.3."""
    with opened(browser, f"{served}/{PAGES[1]}", 1280, scheme) as (page, _):
        names = ["ink", "quiet", "clay", "moss", "paper", "card", "clay-paper"]
        read = "names => names.map(n => getComputedStyle(document.body).getPropertyValue('--' + n).trim())"
        colour = dict(zip(names, page.evaluate(read, names), strict=True))

    pairs = [(text, ground) for text in ("ink", "quiet", "moss") for ground in ("paper", "card")]
    pairs += [("ink", "clay-paper"), ("clay", "clay-paper"), ("quiet", "clay-paper")]
    weak = {pair: contrast(colour[pair[0]], colour[pair[1]]) for pair in pairs}
    assert {pair: ratio for pair, ratio in weak.items() if ratio < 4.5} == {}


def test_search_takes_what_people_type(browser: Browser, served: str) -> None:
    """A name, its beginning, an everyday name of a finding, and days; the horse comes first, at that visit."""
    typed = ("Bramble", "bram", "thrush", "18/11/2026", "18.11.26", "18 November 2026", "2026-11-18")
    visit = "horses/fennel.html#visit-2026-11-18"
    with opened(browser, f"{served}/willowmere/method.html", 390, "light") as (page, troubles):
        page.locator("[data-search-open]").focus()
        page.keyboard.press("Enter")
        page.wait_for_function("globalThis.recordgenFound !== undefined")
        found = {}
        for text in typed:
            page.locator("#search input").fill(text)
            found[text] = page.locator("#search li a").first.get_attribute("href")
        page.locator("#search input").fill("zebra")
        told = page.locator("#search [role=status]").inner_text()
        bad = violations(page)
        page.keyboard.press("Escape")

        expect(page.locator("#search")).to_be_hidden()
    fennel, bramble = "./horses/fennel.html", "./horses/bramble.html"
    assert list(found.values()) == [bramble, bramble, fennel, *[f"./{visit}"] * 4]
    assert (told, bad, troubles) == ("Nothing found", [], [])


def test_search_in_german_takes_what_people_type(browser: Browser, served: str) -> None:
    """A sharp s either way and in capitals is found by its word, a day in words at its visit."""
    entry = ["horses/alma.html", "Alma", 1.0, ["2026-11-08"], "", words_of("<p>Die weiße Linie</p>")]
    found = {}
    with opened(browser, f"{served}/willowmere/method.html", 390, "light") as (page, _):
        page.locator("[data-search-open]").click()
        page.wait_for_function("globalThis.recordgenFound !== undefined")
        page.wait_for_load_state("networkidle")
        page.evaluate(index_script([entry], language_of("de")))
        for text in ("weiße", "weisse", "WEISSE", "8. November 2026", "08. nov. 2026", "8 November 2026"):
            page.locator("#search input").fill(text)
            found[text] = [one.get_attribute("href") for one in page.locator("#search li a").all()]

    alma = "./horses/alma.html"
    assert list(found.values()) == [[alma]] * 3 + [[f"{alma}#visit-2026-11-08"]] * 3


def test_dark_and_light_can_be_chosen(browser: Browser, served: str) -> None:
    """The button in the header changes the colours, and the pictures follow."""
    with opened(browser, f"{served}/{PAGES[1]}", 1280, "light") as (page, _):
        ink = "getComputedStyle(document.querySelector('svg.picture text')).fill"
        before = page.evaluate(ink)
        page.locator("[data-scheme-change]").click()

        assert page.evaluate("document.body.dataset.scheme") == "dusk"
        assert page.evaluate(ink) != before


def test_pages_that_were_opened_are_read_without_a_signal(browser: Browser, served: str) -> None:
    """They say that they come from the device; a page that was not opened is not there, and search goes on."""
    with opened(browser, f"{served}/willowmere/index.html", 390, "light") as (page, _):
        page.evaluate("navigator.serviceWorker.ready.then(() => true)")
        page.reload(wait_until="load")
        before = page.locator(".rg-kept").is_visible()
        page.context.set_offline(True)
        page.reload(wait_until="load")

        expect(page.locator("h1")).to_have_text("Willowmere")
        assert (before, page.locator(".rg-kept").is_visible()) == (False, True)
        kept = page.evaluate("caches.keys().then(async ([name]) => (await (await caches.open(name)).keys()).length)")
        assert 0 < kept < 10
        with pytest.raises(Error):
            page.goto(f"{served}/willowmere/jobs.html")


def test_links_lead_through_the_site(browser: Browser, served: str) -> None:
    """From the stable to a horse and on to another."""
    with opened(browser, f"{served}/willowmere/index.html", 390, "light") as (page, troubles):
        page.locator(".rg-due > a", has_text="Bramble").click()
        expect(page.locator("h1")).to_have_text("Bramble")
        page.locator(".rg-line a", has_text="Fennel").click()
        expect(page.locator("h1")).to_have_text("Fennel")

    assert troubles == []


def test_an_unknown_address_tells_so(browser: Browser, demo_sites: Any) -> None:
    """The page for unknown addresses says what to do."""
    context = browser.new_context()
    page = context.new_page()
    page.goto((demo_sites / "willowmere" / "404.html").as_uri())

    expect(page.locator("h1")).to_have_text("No such page")
    context.close()


def test_pages_open_from_a_disk(browser: Browser, demo_sites: Any) -> None:
    """Without any server the pages open, link and show their pictures."""
    context = browser.new_context()
    page = context.new_page()
    page.goto((demo_sites / "willowmere" / "index.html").as_uri())
    page.locator(".rg-due > a", has_text="Bramble").click()

    expect(page.locator("h1")).to_have_text("Bramble")
    assert page.locator("svg.picture").count() > 10
    context.close()


def test_a_horse_prints_on_few_pages(browser: Browser, served: str) -> None:
    """Folded parts stay folded on paper, so that the page is worth its paper."""
    with opened(browser, f"{served}/{PAGES[1]}", 1280, "light") as (page, _):
        printed = page.pdf(format="A4")

    assert len(re.findall(rb"/Type ?/Page\b", printed)) <= 9


def test_a_page_to_look_things_up_in_prints_whole(browser: Browser, served: str) -> None:
    """On screen its parts are folded; on paper nothing opens any more."""
    with opened(browser, f"{served}/{PAGES[3]}", 1280, "light") as (page, _):
        expect(page.get_by_text("Carroll & Huntington")).to_be_hidden()
        printed = PdfReader(io.BytesIO(page.pdf(format="A4")))

    text = " ".join(" ".join(one.extract_text() for one in printed.pages).split())

    assert "Carroll & Huntington 1988" in text
    assert "hand-held protractor" in text


def test_a_link_to_a_visit_opens_what_it_is_folded_into(browser: Browser, served: str) -> None:
    """An address with the day of a visit shows that visit, its year opened."""
    with opened(browser, f"{served}/{PAGES[1]}#visit-2025-10-22", 1280, "light") as (page, _):
        expect(page.locator("#visit-2025-10-22 > p").first).to_be_visible()


def test_no_word_is_broken_on_a_phone(browser: Browser, served: str) -> None:
    """Each horse's name stands on one line of the list."""
    with opened(browser, f"{served}/willowmere/index.html", 390, "light") as (page, _):
        heights = page.locator(".rg-due b").evaluate_all("names => names.map(n => n.getClientRects().length)")

    assert heights == [1, 1, 1, 1, 1]

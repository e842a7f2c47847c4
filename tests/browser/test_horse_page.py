"""A horse's page in Chromium, as its owner uses it: on a phone, on a desk, on paper, and without a script."""

from __future__ import annotations

import re
from collections.abc import Iterator
from contextlib import contextmanager
from typing import Any

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.support.first_level import (
    DESK,
    MOST_DESK_SCREENS,
    MOST_FIGURES,
    MOST_PAGES_OF_PAPER,
    MOST_PHONE_SCREENS,
    MOST_WORDS,
    PHONE,
    FirstLevel,
    first_level,
)
from tests.support.small_text import SMALL_TEXT, SMALLEST_TEXT_PX

PIPPIN, BRAMBLE = "willowmere/horses/pippin.html", "willowmere/horses/bramble.html"
# Laminitis, traced, a crack, a foal, one visit, ended, overdue, a donkey.
HORSES = (
    *(PIPPIN, BRAMBLE, "tithe-barn/horses/dunlin.html", "fallow-end/horses/otter.html"),
    *("tithe-barn/horses/nutmeg.html", "tithe-barn/horses/bracken.html", "tithe-barn/horses/rowan.html"),
    "fallow-end/horses/clover.html",
)
# Words of the reckoning, of a programmer, or that need a glossary. Judgement.
NOT_FIRST = re.compile(
    r"\b(error|interval|median|estimate|net growth|cycle|outer less inner|mirror|lateral|medial|dorsal|palmar|"
    r"smallest|significan\w*|confidence|forecast|window|record holds|turn of the sole|yaml|none|null|nan)\b|±|95 ?%",
    re.IGNORECASE,
)
TWICE = "[...document.querySelectorAll('[id]')].map(e => e.id).filter((id, at, all) => all.indexOf(id) !== at)"
# Each word on some drawings, its size on the screen, and how many others it covers.
WORDS_DRAWN = """pictures => [...document.querySelectorAll(pictures)].flatMap(picture => {
  const across = picture.getBoundingClientRect().width;
  if (!across) return [];
  const words = [...picture.querySelectorAll("text")].filter(one => one.textContent.trim());
  const boxes = words.map(one => one.getBoundingClientRect());
  const covers = (a, b) => Math.min(a.right, b.right) - Math.max(a.left, b.left) > 0.5
    && Math.min(a.bottom, b.bottom) - Math.max(a.top, b.top) > 4;
  return words.map((one, at) => [
    one.textContent, parseFloat(getComputedStyle(one).fontSize) * across / picture.viewBox.baseVal.width,
    words.filter((other, number) => number > at && covers(boxes[at], boxes[number])).length,
  ]);
})"""
OPEN_PART = "document.querySelectorAll('.rg-part details, #compare').forEach(one => { one.open = true; })"
OPEN_ALL = "document.querySelectorAll('details').forEach(one => { one.open = true; })"
SIDEWAYS = "document.documentElement.scrollWidth - innerWidth"


@contextmanager
def opened(browser: Browser, address: str, size: tuple[int, int] = PHONE, **how: Any) -> Iterator[Page]:
    """A page in a browser of its own."""
    context = browser.new_context(viewport={"width": size[0], "height": size[1]}, **how)
    page = context.new_page()
    page.goto(address)
    yield page
    context.close()


@pytest.fixture(scope="module")
def seen(browser: Browser, served: str) -> dict[str, FirstLevel]:
    """The first level of each page."""
    return {horse: first_level(browser, f"{served}/{horse}") for horse in HORSES}


@pytest.mark.parametrize("horse", HORSES)
def test_the_first_level_is_short(seen: dict[str, FirstLevel], horse: str) -> None:
    """Words, figures, screens of a phone and of a desk, and pages of A4, within their limits."""
    one = seen[horse]

    assert one.words <= MOST_WORDS
    assert one.figures <= MOST_FIGURES
    assert one.phone_screens <= MOST_PHONE_SCREENS
    assert one.desk_screens <= MOST_DESK_SCREENS
    assert one.paper <= MOST_PAGES_OF_PAPER


@pytest.mark.parametrize(
    ("day", "on_page", "on_board"),
    [
        ("2026-12-04", "Next visit about 13 December", "about 13 December"),
        ("2026-12-14", "Next visit by 20 December", "now, until 20 December"),
        ("2026-12-21", "Was due by 20 December", "was due by 20 December"),
    ],
)
def test_no_day_that_is_past_when_it_is_read_stands_in_the_future(
    browser: Browser, served: str, day: str, on_page: str, on_board: str
) -> None:
    """By the reader's own calendar, on the horse's page and on the stable's."""
    with opened(browser, "about:blank") as page:
        page.clock.set_fixed_time(f"{day}T12:00:00")
        page.goto(f"{served}/willowmere/horses/moss.html")
        heading = page.locator("#next h2").inner_text()
        page.goto(f"{served}/willowmere/index.html")

        assert heading.strip() == on_page
        assert page.locator(".rg-due", has_text="Moss").locator(".rg-when").inner_text().strip() == on_board


@pytest.mark.parametrize("horse", HORSES)
def test_no_word_of_the_reckoning_stands_on_the_first_level(seen: dict[str, FirstLevel], horse: str) -> None:
    """An owner reads what was seen and done; how sure a figure is stands a tap away."""
    assert NOT_FIRST.findall(seen[horse].text) == []


def test_a_tick_is_kept_on_the_device(browser: Browser, served: str) -> None:
    """The same job is ticked when the page is opened again."""
    with opened(browser, f"{served}/{PIPPIN}") as page:
        page.locator("#jobs input").first.check()
        page.reload()

        expect(page.locator("#jobs input").first).to_be_checked()
        expect(page.locator("#jobs input").nth(1)).not_to_be_checked()
        expect(page.get_by_text("ticks stay on this device")).to_be_visible()


def test_a_warning_opens_under_its_job(browser: Browser, served: str) -> None:
    """Folded on a screen."""
    with opened(browser, f"{served}/{PIPPIN}") as page:
        warning = page.locator("#jobs details p", has_text="Ring the vet first if something sticks in the foot")
        expect(warning).to_be_hidden()
        page.locator("#jobs li", has_text="Pick out").get_by_text("Take care").click()

        expect(warning).to_be_visible()


def test_the_slider_is_moved_by_a_keyboard(browser: Browser, served: str) -> None:
    """It uncovers the later photograph, and tells how far with both days."""
    with opened(browser, f"{served}/{PIPPIN}") as page:
        slider = page.locator(".rg-slide input")
        slider.focus()
        for _ in range(10):
            page.keyboard.press("ArrowRight")

        cut = page.locator(".rg-overlay").evaluate("one => one.style.getPropertyValue('--cut')")
        assert cut == "60%"
        expect(slider).to_have_attribute("aria-valuetext", "60 % 13 May 2026, 40 % 28 Oct 2026")


def test_two_dates_are_set_side_by_side(browser: Browser, served: str) -> None:
    """Figures, drawings and photographs of the days that are chosen; no request is made but for pictures."""
    with opened(browser, f"{served}/{PIPPIN}", DESK) as page:
        page.locator("#compare > summary").click()
        page.locator("#compare select").first.select_option(label="8 Jul 2026")
        row = page.locator("#compare tbody tr", has_text="toe length").first

        expect(page.locator("#compare caption")).to_have_text("8 Jul 2026 → 28 Oct 2026")
        expect(row.locator("td").first).to_have_text("78 → 71")
        assert page.locator("#compare [data-pictures] > div").count() >= 3
        expect(page.locator("#compare [data-pictures] img").first).to_be_visible()
        page.locator("#compare select").first.select_option(label="30 Sep 2026")
        expect(page.locator("#compare [data-pictures] svg").first).to_be_visible()
        assert page.evaluate(TWICE) == []


def test_a_visit_is_jumped_to(browser: Browser, served: str) -> None:
    """It opens with the year it is folded into."""
    with opened(browser, f"{served}/{BRAMBLE}") as page:
        page.locator("#history > summary").click()
        page.locator("[data-jump] select").select_option(label="22 Oct 2025")

        expect(page.locator("#visit-2025-10-22 > p").first).to_be_visible()


def test_without_a_script_a_foot_opens_and_closes(browser: Browser, served: str) -> None:
    """Its measures, tracing, photographs and history; two photographs stand side by side, and so do the last visits."""
    with opened(browser, f"{served}/{PIPPIN}", java_script_enabled=False) as page:
        expect(page.locator("#left-fore")).to_be_hidden()
        page.locator("#feet").get_by_role("link", name="Left fore").click()
        part = page.locator("#left-fore")

        expect(part.locator("table").first).to_be_visible()
        expect(part.locator(".rg-traced svg").first).to_be_visible()
        expect(part.locator(".rg-pair img").first).to_be_visible()
        expect(part.get_by_text("toe taken back").first).to_be_visible()
        part.get_by_role("link", name="Close").click()
        expect(part).to_be_hidden()
        expect(page.locator(".rg-slide")).to_be_hidden()
        expect(page.locator(".rg-overlay img").nth(1)).to_be_visible()
        page.locator("#compare > summary").click()
        expect(page.locator("#compare caption")).to_have_text("30 Sep 2026 → 28 Oct 2026")


@pytest.mark.parametrize("width", [320, 390])
@pytest.mark.parametrize("horse", [PIPPIN, BRAMBLE])
def test_nothing_scrolls_sideways_when_all_is_open(browser: Browser, served: str, horse: str, width: int) -> None:
    """Folded and unfolded, with a foot's part open."""
    with opened(browser, f"{served}/{horse}#left-hind", (width, 844)) as page:
        folded = page.evaluate(SIDEWAYS)
        page.evaluate(OPEN_ALL)

        assert folded <= 0
        assert page.evaluate(SIDEWAYS) <= 0


@pytest.mark.parametrize("size", [PHONE, DESK])
def test_no_text_of_a_foots_part_is_too_small(browser: Browser, served: str, size: tuple[int, int]) -> None:
    """In pictures too, at least 11 px."""
    with opened(browser, f"{served}/{PIPPIN}#left-fore", size) as page:
        page.evaluate(OPEN_PART)

        assert page.evaluate(SMALL_TEXT, SMALLEST_TEXT_PX) == []


@pytest.mark.parametrize("width", [320, 353, 360, 388])
def test_no_text_is_too_small_on_a_small_phone(browser: Browser, served: str, width: int) -> None:
    """Pictures grow narrower, their words do not: feet, angles, heels and growth."""
    with opened(browser, f"{served}/{PIPPIN}", (width, 740)) as page:
        page.evaluate("document.querySelectorAll('#angles, #growth').forEach(one => one.open = true)")

        assert page.evaluate(SMALL_TEXT, SMALLEST_TEXT_PX) == []


@pytest.mark.parametrize("width", [320, 360, 390, 1280])
def test_words_on_traced_drawings_are_large_and_apart(browser: Browser, served: str, width: int) -> None:
    """At least 11 px, and none on another: zones, sides, angles and bars of a foot's part and of the pair."""
    for horse, foot in ((PIPPIN, "left-fore"), (BRAMBLE, "right-hind")):
        with opened(browser, f"{served}/{horse}#{foot}", (width, 844)) as page:
            page.evaluate(OPEN_ALL)
            drawn = page.evaluate(WORDS_DRAWN, f"#{foot} svg.picture, .rg-traced-pair svg.picture")

        assert len(drawn) > 40
        assert [words for words, px, covers in drawn if px < SMALLEST_TEXT_PX or covers] == []


def test_the_column_stays_on_a_desk_and_scrolls_by_itself(browser: Browser, served: str) -> None:
    """However far the page is scrolled, the name and the telephone stand at the left."""
    with opened(browser, f"{served}/{PIPPIN}", DESK) as page:
        page.evaluate("scrollTo(0, 600)")

        expect(page.locator(".rg-side h1")).to_be_in_viewport()
        assert page.locator(".rg-side").evaluate("one => getComputedStyle(one).overflowY") == "auto"


def test_paper_shows_the_warnings_and_the_vets_number(browser: Browser, served: str) -> None:
    """They are folded on a screen; buttons and folds are left out."""
    with opened(browser, f"{served}/{PIPPIN}", DESK) as page:
        page.emulate_media(media="print")

        expect(page.locator(".rg-on-paper", has_text="01632 960771")).to_be_visible()
        expect(page.locator("#jobs .rg-on-paper", has_text="Never starve")).to_be_visible()
        expect(page.locator(".rg-buttons")).to_be_hidden()
        expect(page.locator("#more")).to_be_hidden()


def test_the_last_name_of_a_long_menu_is_in_sight(browser: Browser, served: str) -> None:
    """On a phone too the menu shows on whose page one is."""
    with opened(browser, f"{served}/willowmere/horses/tansy.html") as page:
        box = page.locator(".rg-line [aria-current]").bounding_box()
        assert box is not None

        assert box["x"] >= 0
        assert box["x"] + box["width"] <= PHONE[0]

"""The stable's board and its jobs of the week: ticked, printed on one page, whole on a small phone."""

from __future__ import annotations

import datetime as dt
import io
import shutil
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, expect
from pypdf import PdfReader

from recordgen.cache.entries import user_cache
from recordgen.hoof.rounds.rounds import Calendar, plan_of
from recordgen.records.load.everything import read_whole
from recordgen.site.build_context import BuildContext
from recordgen.site.engine import write_site
from recordgen.site.model import Page as SitePage
from recordgen.site.model import Site
from recordgen.site.pages.practice import render_practice
from recordgen.site.pages.renderer import PageRenderer
from recordgen.site.pages.stable import StablePlaces, render_jobs, render_stable
from tests.conftest import RECORDS
from tests.support.contrast import contrast

STABLES = ("willowmere", "fallow-end", "tithe-barn")
BOARDS = [f"{stable}/{page}.html" for stable in STABLES for page in ("index", "jobs")]
TARGET_PX = 44
# A day on which the demo's Pippin is late as well.
TODAY = dt.date(2026, 11, 27)
URGENT = "date: 2026-11-24\nsigns: [leans back]\nfeet: {LF: {heat: yes, pulse: strong}}\ncare: [dry-bed]\n"
SMALL_TARGETS = """least => [...document.querySelectorAll(
  ".rg label, .rg-due > a, .rg-due summary, .rg-button, .rg-caution .rg-vet a")]
  .map(one => [one.textContent.trim(), one.getBoundingClientRect()])
  .filter(([, box]) => box.height && box.height < least - 0.5)
  .map(([text, box]) => `${text} ${box.height}`)"""


@contextmanager
def device(browser: Browser, width: int = 1280) -> Iterator[BrowserContext]:
    """A device with a store of its own."""
    context = browser.new_context(viewport={"width": width, "height": 844})
    yield context
    context.close()


def page_at(context: BrowserContext, address: str) -> Page:
    """A page opened on the device."""
    page = context.new_page()
    page.goto(address)
    return page


@pytest.mark.parametrize("address", BOARDS)
def test_a_board_prints_on_one_page(browser: Browser, served: str, address: str) -> None:
    """One A4, with nothing of the engine's frame."""
    with device(browser) as context:
        printed = PdfReader(io.BytesIO(page_at(context, f"{served}/{address}").pdf(format="A4")))

    assert len(printed.pages) == 1


@pytest.mark.parametrize("width", [320, 390])
@pytest.mark.parametrize("address", BOARDS)
def test_a_board_fits_a_phone(browser: Browser, served: str, address: str, width: int) -> None:
    """No sideways scroll, and what is tapped is 44 px high. Source: WCAG 2.2, 2.5.5, and 1.4.10 for 320 px."""
    with device(browser, width) as context:
        page = page_at(context, f"{served}/{address}")

        assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
        assert page.evaluate(SMALL_TARGETS, TARGET_PX) == []


def test_a_job_ticked_on_the_board_is_ticked_on_the_week(browser: Browser, served: str) -> None:
    """Today's box of the same horse and job; the next day's stays free."""
    with device(browser) as context:
        board = page_at(context, f"{served}/willowmere/index.html")
        label = board.locator("#jobs label", has_text="Moss").first
        key = label.locator("input").get_attribute("data-tick")
        label.click()
        week = page_at(context, f"{served}/willowmere/jobs.html")

        expect(board.get_by_text("Ticks stay on this device")).to_be_visible()
        expect(week.locator(f'label[data-today] input[data-tick="{key}"]')).to_be_checked()
        expect(week.locator("input:checked")).to_have_count(1)


def test_paper_has_free_boxes_on_the_days_that_are_meant(browser: Browser, served: str) -> None:
    """A tick made on the screen is not printed, and a weekly job has one box."""
    with device(browser) as context:
        page = page_at(context, f"{served}/willowmere/jobs.html")
        page.locator(".rg-week .meant").first.click()
        page.emulate_media(media="print")
        weekly = page.locator("tbody", has_text="once a week").locator("label")
        shown = weekly.evaluate_all("all => all.map(one => getComputedStyle(one).visibility)")
        ground = page.locator("input:checked").evaluate("one => getComputedStyle(one).backgroundColor")

    assert shown.count("visible") == 1
    assert ground == "rgba(0, 0, 0, 0)"


def test_overdue_horses_stand_first_and_no_day_gone_by_is_to_come(browser: Browser, served: str) -> None:
    """Rowan waits since October; Hawthorn's best day was yesterday or is near, and is told as now."""
    with device(browser) as context:
        page = page_at(context, f"{served}/tithe-barn/index.html")
        names = page.locator(".rg-due > a").all_inner_texts()
        told = page.locator(".rg-when").all_inner_texts()

    assert (names[0], told[0]) == ("Rowan", "3 weeks late")
    assert [text.split(" ")[0] for text in told] == ["3", "now,", "about", "about"]


def test_a_tap_on_a_date_opens_its_reason(browser: Browser, served: str) -> None:
    """The window in words and why it is that one; the name leads to the horse."""
    with device(browser, 390) as context:
        page = page_at(context, f"{served}/willowmere/index.html")
        row = page.locator(".rg-due", has_text="Pippin")
        row.locator("summary").click()
        expect(row.locator("p")).to_contain_text("4 weeks after the last visit")
        row.locator("a").click()

        expect(page.locator("h1")).to_have_text("Pippin")


@pytest.mark.parametrize("scheme", ["light", "dark"])
def test_windows_stand_out(browser: Browser, served: str, scheme: str) -> None:
    """Band, best day and today reach 3 to 1 on the card, and the best day on its band. Source: WCAG 2.2, 1.4.11."""
    with device(browser) as context:
        page = context.new_page()
        page.emulate_media(color_scheme="dark" if scheme == "dark" else "light")
        page.goto(f"{served}/willowmere/index.html")
        names = ["band", "mark", "day", "card"]
        read = "names => names.map(n => getComputedStyle(document.body).getPropertyValue('--' + n).trim())"
        colour = dict(zip(names, page.evaluate(read, names), strict=True))

    pairs = [("band", "card"), ("mark", "card"), ("day", "card"), ("mark", "band")]
    weak = {pair: contrast(colour[pair[0]], colour[pair[1]]) for pair in pairs}
    assert {pair: ratio for pair, ratio in weak.items() if ratio < 3} == {}


def boards(context: BuildContext) -> list[SitePage]:
    """The board and the jobs of the one stable, without the pages of its horses."""
    (stable,) = context.stables
    places = StablePlaces("index.md", "jobs.md", {horse.slug: f"horses/{horse.slug}.md" for horse in stable.horses})
    renderer = PageRenderer(context, private=False, menu=[[("index.md", stable.stable.name)]])
    return [render_stable(renderer, stable, places), render_jobs(renderer, stable, places)]


def the_desk(context: BuildContext) -> SitePage:
    """The trimmer's front page alone."""
    plan = plan_of(context.stables, Calendar.of(context.ways, context.today))
    return render_practice(PageRenderer(context, private=True, menu=[[("index.md", "Today")]]), context.stables, plan)


@pytest.fixture(scope="module")
def large(tmp_path_factory: pytest.TempPathFactory) -> str:
    """The folder of a stable of fifteen horses: Willowmere three times over, and one of them to call the vet for."""
    folder = tmp_path_factory.mktemp("large")
    records = folder / "records"
    shutil.copytree(RECORDS, records, ignore=shutil.ignore_patterns("fallow-end", "tithe-barn", "*.jpg"))
    for horse in [path.parent for path in records.glob("willowmere/*/horse.yaml")]:
        for number in (2, 3):
            other = shutil.copytree(horse, horse.with_name(f"{horse.name}-{number}"))
            (other / "horse.yaml").write_text(f"name: {horse.name.title()} {number}\n")
    (records / "willowmere/moss-3/2026-11-24.yaml").write_text(URGENT)
    context = BuildContext.of(read_whole(records, TODAY), TODAY, user_cache())
    for slug, pages in {"willowmere": boards(context), "practice": [the_desk(context)]}.items():
        write_site(Site(slug, slug.title(), tuple(pages)), folder / "sites" / slug, records)
    return (folder / "sites").as_uri()


@pytest.mark.parametrize("page", ["index", "jobs"])
def test_a_large_stable_prints_on_one_page_too(browser: Browser, large: str, page: str) -> None:
    """Fifteen horses, seven with something to do now."""
    with device(browser) as context:
        printed = PdfReader(io.BytesIO(page_at(context, f"{large}/willowmere/{page}.html").pdf(format="A4")))

    assert len(printed.pages) == 1


def test_a_busy_day_leaves_what_is_urgent_on_the_first_screen(browser: Browser, large: str) -> None:
    """The call to the vet stands over the round, and the watch list still begins on the first screen."""
    with device(browser, 390) as context:
        page = page_at(context, f"{large}/practice/index.html")
        bottoms = page.locator(".rg-urgent, .rg-watch").evaluate_all(
            "all => all.map(one => one.getBoundingClientRect().bottom)"
        )

        expect(page.locator(".rg-urgent")).to_have_text("Call your vet now: Moss 3")
        assert bottoms[0] < bottoms[1] <= 844


def test_a_horse_with_several_cautions_has_one_card(browser: Browser, large: str) -> None:
    """One number to ring, and late trims told together."""
    with device(browser) as context:
        page = page_at(context, f"{large}/willowmere/index.html")

        assert page.locator("#act .rg-caution", has_text="Moss 3").locator(".rg-vet").count() == 1
        assert page.locator("#late a").first.inner_text() == "Pippin"

"""Jobs ticked off in a browser: kept on the device, by day, the same on every page."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, BrowserContext, Page, Route, expect

from tests.conftest import ROOT

# A host that is nowhere: what it would serve is filled in below.
HOST = "http://stable.example"
SCRIPT = (ROOT / "site_templates/static/assets/ticks.js").read_text("utf-8")
THURSDAY = dt.datetime(2026, 11, 26, 9, 0)
NO_STORAGE = "Storage.prototype.setItem = () => { throw new DOMException('', 'QuotaExceededError') };"
HORSE = '<p data-ticks-kept hidden>kept</p><input id="brush" data-tick="k1" type="checkbox">'
WEEK = "".join(f'<input id="brush{day}" data-tick="k1" data-weekday="{day}" type="checkbox">' for day in range(7))
OTHER = '<input id="walk" data-tick="k2" type="checkbox">'
PAGES = {"/horse": HORSE, "/week": WEEK + OTHER}


def served(route: Route) -> None:
    """Answers with one of the two pages."""
    path = route.request.url.removeprefix(HOST)
    body = f"<!doctype html><title>{path}</title>{PAGES.get(path, '')}<script>{SCRIPT}</script>"
    route.fulfill(body=body, content_type="text/html")


@contextmanager
def device(browser: Browser) -> Iterator[BrowserContext]:
    """A device that keeps what its pages store, on the morning of a Thursday."""
    context = browser.new_context()
    context.route(f"{HOST}/**", served)
    context.clock.set_fixed_time(THURSDAY)
    yield context
    context.close()


def page_at(context: BrowserContext, path: str) -> Page:
    """A page opened on the device."""
    page = context.new_page()
    page.goto(HOST + path)
    return page


def ticked(page: Page) -> list[str]:
    """The ids of the boxes that are ticked."""
    found: list[str] = page.locator("input:checked").evaluate_all("all => all.map(one => one.id)")
    return found


def test_a_tick_is_kept_when_the_page_is_opened_again(browser: Browser) -> None:
    """A box that was ticked is ticked in a new tab of the device."""
    with device(browser) as context:
        page_at(context, "/horse").check("#brush")

        assert ticked(page_at(context, "/horse")) == ["brush"]


def test_a_tick_on_the_horses_page_stands_on_the_week_of_jobs(browser: Browser) -> None:
    """Today's box of the same job is ticked there, and no other; taken back there, it is gone here."""
    with device(browser) as context:
        horse = page_at(context, "/horse")
        horse.check("#brush")
        week = page_at(context, "/week")
        there = ticked(week)
        week.uncheck("#brush3")

        assert there == ["brush3"]
        expect(horse.locator("#brush")).not_to_be_checked()


def test_a_tick_is_of_its_day(browser: Browser) -> None:
    """The next day the box is free again; the week still shows both days, and the next week none."""
    with device(browser) as context:
        page_at(context, "/horse").check("#brush")
        page_at(context, "/week").check("#brush0")
        context.clock.set_fixed_time(THURSDAY + dt.timedelta(days=1))
        next_day = ticked(page_at(context, "/horse")), ticked(page_at(context, "/week"))
        context.clock.set_fixed_time(THURSDAY + dt.timedelta(days=4))

        assert next_day == ([], ["brush0", "brush3"])
        assert ticked(page_at(context, "/week")) == []


def test_old_ticks_are_let_go(browser: Browser) -> None:
    """After five weeks a tick is taken off the device with the next one that is made."""
    with device(browser) as context:
        page_at(context, "/horse").check("#brush")
        context.clock.set_fixed_time(THURSDAY + dt.timedelta(days=36))
        page = page_at(context, "/week")
        page.check("#walk")

        assert page.evaluate("Object.keys(JSON.parse(localStorage['rg-ticks']))") == ["k2"]


def test_today_is_marked_among_the_days(browser: Browser) -> None:
    """The box of this weekday is marked, so that a style can show it."""
    with device(browser) as context:
        marked = page_at(context, "/week").locator("[data-today]")

        assert marked.evaluate_all("all => all.map(one => one.id)") == ["brush3"]


@pytest.mark.parametrize("kept", ["no json", "null", "3", '{"k1": "2026-11-26"}', '{"k1": {"a": 1}}'])
def test_what_others_left_in_its_place_stops_nothing(browser: Browser, kept: str) -> None:
    """A value of another shape is taken for nothing, and a tick replaces it."""
    with device(browser) as context:
        page = page_at(context, "/horse")
        page.evaluate("kept => localStorage.setItem('rg-ticks', kept)", kept)
        page.reload()
        before = ticked(page)
        page.check("#brush")

        assert (before, ticked(page_at(context, "/horse"))) == ([], ["brush"])


def test_a_device_that_keeps_nothing_lets_jobs_be_ticked(browser: Browser) -> None:
    """The box takes its tick until the page goes, and no page says that it is kept."""
    with device(browser) as context:
        context.add_init_script(NO_STORAGE)
        page = page_at(context, "/horse")
        page.check("#brush")

        assert ticked(page) == ["brush"]
        expect(page.get_by_text("kept")).to_be_hidden()


def test_that_ticks_are_kept_is_told_where_they_are(browser: Browser) -> None:
    """The line about it shows once the device has shown that it keeps something."""
    with device(browser) as context:
        expect(page_at(context, "/horse").get_by_text("kept")).to_be_visible()

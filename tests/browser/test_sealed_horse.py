"""A sealed horse's page does what the unsealed one does, within its policy."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from tests.support.sealed_host import WORDS, Host, fetched, hosted, opened, reader, sealed

PIPPIN = "horses/pippin.html"
# Of keys from the top of a page to what is looked for on it.
MOST_STOPS = 30


@pytest.fixture(scope="module")
def willowmere(demo_sites: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Host]:
    """A host of a stable of the demo, sealed."""
    folder = tmp_path_factory.mktemp("willowmere")
    shutil.copytree(demo_sites / "willowmere", folder / "site")
    with hosted(sealed(folder, folder / "site", "/")) as host:
        yield host


def test_a_sealed_page_ticks_slides_compares_and_opens_a_foot(browser: Browser, willowmere: Host) -> None:
    """All of it without a script or a style that its policy refuses."""
    with reader(browser, width=390) as context:
        refused: list[str] = []
        context.on("console", lambda told: refused.append(told.text) if "Content Security" in told.text else None)
        page = opened(context, willowmere, "Pippin", PIPPIN)
        page.locator("#jobs input").first.check()
        page.reload()

        expect(page.locator("#jobs input").first).to_be_checked()
        page.locator(".rg-slide input").press("ArrowRight")
        assert page.locator(".rg-overlay").evaluate("one => one.style.getPropertyValue('--cut')") == "51%"
        page.locator("#compare > summary").click()
        page.locator("#compare select").first.select_option(label="8 Jul 2026")
        expect(page.locator("#compare tbody td").first).to_have_text("78 → 71")
        page.locator("#feet").get_by_role("link", name="Left fore").click()
        expect(page.locator("#left-fore")).to_be_visible()
        assert refused == []


def stepped(page: Page, name: str, key: str = "Tab") -> list[str]:
    """Press a key until what has this name holds the keyboard; the names of all stops up to there."""
    names: list[str] = []
    while not names or (names[-1] != name and len(names) < MOST_STOPS):
        page.keyboard.press(key)
        names.append(page.evaluate("document.activeElement.textContent.trim()"))
    assert names[-1] == name
    return names


def test_the_keyboard_alone_goes_from_the_words_to_the_sheet(browser: Browser, willowmere: Host) -> None:
    """A horse, a foot of it and back, two dates compared; links to further pages come after the horse, as seen."""
    with reader(browser) as context:
        page = context.new_page()
        page.goto(willowmere.address)
        expect(page.locator("#words")).to_be_focused()
        page.keyboard.type(WORDS)
        page.keyboard.press("Enter")
        expect(page.locator("h1")).to_have_text("Willowmere")
        stepped(page, "Pippin")
        page.keyboard.press("Enter")
        expect(page.locator("h1")).to_have_text("Pippin")
        before = stepped(page, "Left fore")
        page.keyboard.press("Enter")
        expect(page.locator("#left-fore")).to_be_focused()
        stepped(page, "Close")
        page.keyboard.press("Enter")
        expect(page.locator("#left-fore")).to_be_hidden()
        stepped(page, "Two dates side by side")
        for key in ("Enter", "Tab", "ArrowDown"):
            page.keyboard.press(key)

        expect(page.locator("#compare caption")).to_have_text("2 Sep 2026 → 28 Oct 2026")
        stepped(page, "Vet's sheet", "Shift+Tab")
        page.keyboard.press("Enter")
        page.wait_for_url("**/pippin_sheet.html")
        assert "Before we come" not in before


def test_a_sealed_calendar_file_comes_as_one(browser: Browser, willowmere: Host) -> None:
    """The link beside the next visit leads to a file that a calendar program takes."""
    with reader(browser) as context:
        page = opened(context, willowmere, "Pippin", PIPPIN)
        answer = fetched(page, str(page.locator("#next a[download]").get_attribute("href")))

        assert answer["headers"]["content-type"].startswith("text/calendar")
        assert "BEGIN:VEVENT" in answer["text"]


def test_a_sealed_site_may_live_on_the_home_screen(browser: Browser, willowmere: Host) -> None:
    """Its manifest comes through the worker, under its own name, and opens its front page."""
    with reader(browser) as context:
        page = opened(context, willowmere, "Pippin", PIPPIN)
        found = context.new_cdp_session(page).send("Page.getAppManifest")

        assert found["errors"] == []
        assert '"Willowmere"' in found["data"]
        assert found["manifest"]["startUrl"].endswith("/index.html")

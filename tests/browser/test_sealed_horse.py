"""A sealed horse's page does what the unsealed one does, within its policy."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, expect

from tests.support.sealed_host import Host, fetched, hosted, opened, reader, sealed

PIPPIN = "horses/pippin.html"


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

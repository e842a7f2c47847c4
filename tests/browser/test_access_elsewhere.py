"""Pages outside a site's frame against WCAG 2.2 AA: sealed, shared in a file, the tracing screen of the computer."""

from __future__ import annotations

import shutil
from collections.abc import Iterator
from pathlib import Path

import pytest
from playwright.sync_api import Browser, Page, expect

from recordgen.private.sharing.single_file import single_file
from tests.support.access import kept_out, violations
from tests.support.sealed_host import Host, hosted, sealed
from tests.support.seen import unseen_stops
from tests.support.sheets import demo_alone
from tests.support.single_file import WORDS
from tests.support.tracing_screen import marks_of, opened, served, traced_practice


@pytest.fixture(scope="module")
def page(browser: Browser) -> Iterator[Page]:
    """A phone that has never seen any of them."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    yield context.new_page()
    context.close()


@pytest.fixture(scope="module")
def board(demo_sites: Path, tmp_path_factory: pytest.TempPathFactory) -> Iterator[Host]:
    """A host of the board of a stable of the demo, sealed."""
    folder = tmp_path_factory.mktemp("board")
    shutil.copytree(demo_sites / "willowmere" / "assets", folder / "site" / "assets")
    for name in ("index.html", "404.html"):
        shutil.copy(demo_sites / "willowmere" / name, folder / "site")
    with hosted(sealed(folder, folder / "site", "/")) as host:
        yield host


def test_nobody_is_kept_out_by_a_seal(page: Page, board: Host) -> None:
    """Neither where the words are asked for, nor told that none were typed, nor on a page that is opened."""
    page.goto(board.address)
    expect(page.locator("#words")).to_be_visible()
    asking = kept_out(page)
    page.locator("#open").click()
    expect(page.locator("#told")).to_have_text("Type the words first.")
    refused = kept_out(page)
    page.goto("about:blank")
    page.goto(f"{board.address}#k={board.link}")
    expect(page.locator(".private-foot")).to_be_visible()

    assert (asking, refused, kept_out(page)) == ({}, {}, {})


def test_nobody_is_kept_out_of_a_shared_file(page: Page, tmp_path: Path) -> None:
    """Neither where it asks for the words, nor told that none were typed, nor of the sheet that is in it."""
    file = tmp_path / "shared.html"
    file.write_text(single_file(demo_alone("bramble"), WORDS, tmp_path), "utf-8")
    page.goto(file.as_uri())
    asking = kept_out(page)
    page.locator("#open").click()
    refused = kept_out(page)
    page.locator("#words").fill(WORDS)
    page.locator("#open").click()
    expect(page.locator("h1")).to_have_text("Bramble")

    assert (asking, refused, kept_out(page)) == ({}, {}, {})


def test_nobody_is_kept_out_of_tracing_on_the_computer(browser: Browser, tmp_path: Path) -> None:
    """With mouse and keyboard: at the first step, on a sheet, and further on."""
    context = browser.new_context(viewport={"width": 1280, "height": 800})
    with served(tmp_path, traced_practice(tmp_path)) as shown:
        hand = opened(context, shown.address)
        found = violations(hand.page) + unseen_stops(hand.page)
        hand.press("camera")
        found += violations(hand.page) + unseen_stops(hand.page)
        hand.press("close")
        for spot in marks_of()["scale"]:
            hand.page.mouse.click(*hand.at(spot))
        found += violations(hand.page) + unseen_stops(hand.page)
        context.close()

    assert found == []

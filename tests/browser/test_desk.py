"""The trimmer's desk in a browser: the watch list on the first screen of a phone, whole on a small one."""

from __future__ import annotations

from collections.abc import Iterator
from contextlib import contextmanager

import pytest
from playwright.sync_api import Browser, Page, expect

TARGET_PX = 44
SMALL_TARGETS = """least => [...document.querySelectorAll(".rg-desk summary, .rg-desk .rg-button, .rg-due > a")]
  .map(one => [one.textContent.trim(), one.getBoundingClientRect()])
  .filter(([, box]) => box.height && box.height < least - 0.5)
  .map(([text, box]) => `${text} ${box.height}`)"""
# Buttons that lie over a text of their row.
COVERED = """() => [...document.querySelectorAll(".rg-watch")].filter(row => {
  const button = row.querySelector(".rg-button").getBoundingClientRect();
  return [...row.querySelectorAll("b, .rg-age, summary > span:nth-child(2)")].some(one => {
    const range = document.createRange();
    range.selectNodeContents(one);
    return [...range.getClientRects()].some(box => box.right > button.left && box.top < button.bottom &&
      box.bottom > button.top && box.width > 0 && box.height > 8);
  });
}).map(row => row.textContent.trim().slice(0, 20))"""


@contextmanager
def desk(browser: Browser, served: str, width: int = 390) -> Iterator[Page]:
    """The desk, on a screen of this width."""
    context = browser.new_context(viewport={"width": width, "height": 844})
    page = context.new_page()
    page.goto(f"{served}/practice/index.html")
    yield page
    context.close()


def test_the_watch_list_begins_on_the_first_screen_of_a_phone(browser: Browser, served: str) -> None:
    """Below the next round, with its first two cautions and whom to call, at 390 x 844."""
    with desk(browser, served) as page:
        rows = page.locator(".rg-watch").evaluate_all("all => all.map(one => one.getBoundingClientRect().bottom)")
        today = page.locator("#today").evaluate("one => one.getBoundingClientRect().top")

    assert len(rows) >= 3
    assert today < rows[0] < rows[1] <= 844


@pytest.mark.parametrize("width", [320, 390, 1280])
def test_the_desk_fits_its_screen(browser: Browser, served: str, width: int) -> None:
    """No sideways scroll, no button over a text, and 44 px for a finger. Source: WCAG 2.2, 1.4.10 and 2.5.5."""
    with desk(browser, served, width) as page:
        assert page.evaluate("document.documentElement.scrollWidth - innerWidth") <= 0
        assert page.evaluate(COVERED) == []
        assert page.evaluate(SMALL_TARGETS, TARGET_PX) == []


def test_all_windows_stand_under_one_today(browser: Browser, served: str) -> None:
    """Each horse's mark of today is at the same place, in the full width of the page."""
    with desk(browser, served, 1280) as page:
        xs = page.locator("#due .rg-due .today").evaluate_all(
            "all => all.map(one => Math.round(one.getBoundingClientRect().x))"
        )
        wide = page.locator("#due").evaluate("one => one.getBoundingClientRect().width / one.parentElement.clientWidth")

    assert len(xs) == 14
    assert len(set(xs)) == 1
    assert wide > 0.95


def test_a_tap_on_a_caution_tells_what_is_safe_meanwhile(browser: Browser, served: str) -> None:
    """Closed until it is tapped; how it ends is told without a line to type."""
    with desk(browser, served) as page:
        row = page.locator(".rg-watch", has_text="Fennel")
        told = row.get_by_text("Keep the groove clean and dry")
        expect(told).to_be_hidden()
        row.locator("summary").click()

        expect(told).to_be_visible()
        expect(row).to_contain_text("Ends when a later visit records it otherwise")

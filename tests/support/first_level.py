"""Measures what of a page is read before anything is opened: its words, its figures, and its height."""

from __future__ import annotations

import re
from dataclasses import dataclass

from playwright.sync_api import Browser

# The heights of a usual phone and of a usual desk, in CSS px.
PHONE, DESK = (390, 844), (1280, 844)
# The limits of a horse's page. Judgement: what one reads standing at the horse.
MOST_WORDS, MOST_FIGURES, MOST_PHONE_SCREENS, MOST_DESK_SCREENS, MOST_PAGES_OF_PAPER = 500, 60, 4.0, 2.0, 2

# Every text of the page's own part that shows, without what is folded and what only a screen reader hears.
VISIBLE = """() => {
  const found = [], walker = document.createTreeWalker(document.querySelector("article"), NodeFilter.SHOW_TEXT);
  const folded = (holder) => {
    const heading = holder.closest("summary");
    const from = heading ? heading.parentElement.parentElement : holder;
    return from.closest("details:not([open])") !== null;
  };
  while (walker.nextNode()) {
    const holder = walker.currentNode.parentElement, text = walker.currentNode.textContent.trim();
    if (!text || holder.closest("title, script, option") || folded(holder)) continue;
    if (holder.checkVisibility({ visibilityProperty: true })) found.push(text);
  }
  return found.join("\\n");
}"""
HEIGHT = "document.documentElement.scrollHeight"
_FIGURE = re.compile(r"\d+(?:[.,]\d+)*")
_WORD = re.compile(r"\w[\w'’.-]*")


@dataclass(frozen=True)
class FirstLevel:
    """One page before anything is opened. screens: its height in screens of a phone and of a desk."""

    text: str
    phone_screens: float
    desk_screens: float
    paper: int

    @property
    def words(self) -> int:
        """The words and figures that are read."""
        return len(_WORD.findall(self.text))

    @property
    def figures(self) -> int:
        """The figures among them: each number once, a day and its year as two."""
        return len(_FIGURE.findall(self.text))


def first_level(browser: Browser, address: str) -> FirstLevel:
    """The measures of a page at an address."""
    page = browser.new_page(viewport={"width": PHONE[0], "height": PHONE[1]})
    page.goto(address)
    page.wait_for_load_state("load")
    text, phone = str(page.evaluate(VISIBLE)), page.evaluate(HEIGHT)
    page.set_viewport_size({"width": DESK[0], "height": DESK[1]})
    desk, printed = page.evaluate(HEIGHT), page.pdf(format="A4")
    page.close()
    return FirstLevel(text, phone / PHONE[1], desk / DESK[1], len(re.findall(rb"/Type ?/Page\b", printed)))

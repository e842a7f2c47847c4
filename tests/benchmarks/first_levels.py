"""The first level of each horse's page: words, figures, screens and pages of paper, against their limits."""

from __future__ import annotations

from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.conftest import chromium
from tests.support.first_level import (
    MOST_DESK_SCREENS,
    MOST_FIGURES,
    MOST_PAGES_OF_PAPER,
    MOST_PHONE_SCREENS,
    MOST_WORDS,
    first_level,
)

ROW = "{:<40} {:>7} {:>8} {:>7} {:>7} {:>7}"


def print_first_levels(sites: Path) -> None:
    """Print a row a horse of built sites, under the limits; a sentence where no browser is installed."""
    path = chromium()
    if path is None:
        print("the first level of the pages is not measured: no Chromium on this machine")
        return
    print(ROW.format("the first level of a horse's page", "words", "figures", "phones", "desks", "A4"))
    limits = (MOST_WORDS, MOST_FIGURES, MOST_PHONE_SCREENS, MOST_DESK_SCREENS, MOST_PAGES_OF_PAPER)
    print(ROW.format("at the most", *limits))
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=path, args=["--no-sandbox"])
        for page in sorted(sites.glob("*/horses/*.html")):
            if not page.stem.endswith("_sheet"):
                one = first_level(browser, page.as_uri())
                heights = (f"{one.phone_screens:.2f}", f"{one.desk_screens:.2f}")
                print(ROW.format(page.stem, one.words, one.figures, *heights, one.paper))
        browser.close()

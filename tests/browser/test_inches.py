"""Pages of a practice that measures in inches, whose figures are longer, on a narrow phone."""

from __future__ import annotations

from pathlib import Path

import pytest
from playwright.sync_api import Browser

from tests.support.access import violations
from tests.support.field import hosted


@pytest.mark.parametrize("page", ["horses/bramble.html", "horses/pippin_sheet.html"])
def test_longer_figures_fit_a_narrow_phone(browser: Browser, inch_sites: Path, page: str) -> None:
    """At 340 px nothing scrolls sideways, with all that is folded opened, and axe-core finds nothing."""
    context = browser.new_context(viewport={"width": 340, "height": 700})
    with hosted(inch_sites / "willowmere") as address:
        shown = context.new_page()
        shown.goto(f"{address}{page}")
        shown.evaluate("document.querySelectorAll('details').forEach((one) => { one.open = true; })")
        wide = shown.evaluate("document.documentElement.scrollWidth - innerWidth")
        found = violations(shown)
    context.close()

    assert wide <= 1
    assert found == []

"""Holds an open page against WCAG with axe-core, and lists what a finger or a keyboard would miss."""

from __future__ import annotations

from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Page

WCAG_2_2_AA = ["wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa"]
OPEN_ALL_FOLDS = "document.querySelectorAll('details').forEach(fold => { fold.open = true; })"
# Rows, entries and folds of a kind are alike; six beside one another are enough, and axe-core is slow on long pages.
SIX_OF_A_KIND = """{
  const kind = one => one.tagName + one.className;
  const surplus = [...document.querySelectorAll("tr, li, dt, dd, details, .rg-visit")].filter(
    one => [...one.parentElement.children].filter(other => kind(other) === kind(one)).indexOf(one) >= 6);
  surplus.forEach(one => one.remove());
}"""
_VIOLATIONS = """async options => (await axe.run(document, options)).violations.flatMap(
  rule => rule.nodes.map(node => `${rule.id}: ${node.html.slice(0, 160)}`))"""


def violations(page: Page, *, contrast_alone: bool = False) -> list[str]:
    """Each violation of WCAG 2.2 A and AA that axe-core finds on a page, as its rule and the element.

    contrast_alone: for the other scheme of a width that was tried, since colours are all that differs.
    """
    page.evaluate(AXE_SCRIPT)
    options = {"runOnly": ["color-contrast"] if contrast_alone else WCAG_2_2_AA, "resultTypes": ["violations"]}
    found: list[str] = page.evaluate(_VIOLATIONS, options | {"preload": False})
    return found

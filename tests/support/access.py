"""Holds an open page against WCAG with axe-core, and lists what a finger or a keyboard would miss."""

from __future__ import annotations

from collections.abc import Sequence

from axe_playwright_python.base import AXE_SCRIPT
from playwright.sync_api import Page

from tests.support.narrow import NARROWEST, cut_off
from tests.support.seen import faint_marks, unseen_stops

WCAG_2_2_AA = ("wcag2a", "wcag2aa", "wcag21a", "wcag21aa", "wcag22aa")
# All that can differ in another scheme, and at another width.
COLOUR_RULES = ("color-contrast",)
SIZE_RULES = ("target-size", "scrollable-region-focusable")
OPEN_ALL_FOLDS = "document.querySelectorAll('details').forEach(fold => { fold.open = true; })"
# Rows, entries and folds of a kind are alike; six beside one another are enough, and axe-core is slow on long pages.
SIX_OF_A_KIND = """{
  const kind = one => one.tagName + one.className;
  const surplus = [...document.querySelectorAll("tr, li, dt, dd, details, .rg-visit")].filter(
    one => [...one.parentElement.children].filter(other => kind(other) === kind(one)).indexOf(one) >= 6);
  surplus.forEach(one => one.remove());
}"""
_SCHEME = "scheme => { document.body.dataset.scheme = scheme; }"
_VIOLATIONS = """async options => (await axe.run(document, options)).violations.flatMap(
  rule => rule.nodes.map(node => `${rule.id}: ${node.html.slice(0, 160)}`))"""


def violations(page: Page, rules: Sequence[str] = WCAG_2_2_AA, without: Sequence[str] = ()) -> list[str]:
    """Each violation that axe-core finds on a page, as its rule and the element. rules: their tags or names.

    without: names of rules that a page is held to elsewhere, since they are slow.
    """
    page.evaluate(AXE_SCRIPT)
    options = {"runOnly": [*rules], "resultTypes": ["violations"], "preload": False}
    options |= {"rules": {rule: {"enabled": False} for rule in without}}
    found: list[str] = page.evaluate(_VIOLATIONS, options)
    return found


def kept_out(page: Page) -> dict[str, list[str]]:
    """Things that keep somebody out of a page that is open on a phone in light colours, by how it was looked at.

    All rules once, then of the other colours, the other width, forced colours and 400 % only what these can change.
    """
    size = page.viewport_size
    assert size is not None
    found = {"phone": violations(page), "keyboard": unseen_stops(page), "marks": faint_marks(page)}
    page.emulate_media(color_scheme="dark", forced_colors="active")
    found["forced colours"] = faint_marks(page)
    page.emulate_media(color_scheme="dark", forced_colors="none")
    page.evaluate(_SCHEME, "dusk")
    found |= {"dark": violations(page, COLOUR_RULES), "dark marks": faint_marks(page)}
    page.set_viewport_size({"width": 1280, "height": 844})
    found["desk"] = violations(page, SIZE_RULES)
    page.set_viewport_size(NARROWEST)
    found["400 %"] = cut_off(page)
    page.set_viewport_size(size)
    page.emulate_media(color_scheme="light")
    return {way: told for way, told in found.items() if told}

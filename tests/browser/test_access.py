"""Each kind of page against WCAG 2.2 AA: by axe-core, by the keyboard, in forced colours, at 400 %, folds open."""

from __future__ import annotations

import re
from collections.abc import Iterator

import pytest
from playwright.sync_api import Browser, Page

from tests.support.access import OPEN_ALL_FOLDS, SIX_OF_A_KIND, kept_out
from tests.support.kinds import KINDS
from tests.support.narrow import cut_off
from tests.support.seen import faint_marks, unseen_stops

# The heaviest horse is of the same kind as the others.
LOOKED_AT = [kind for kind in KINDS if kind != "heaviest horse"]
# What a traced horse's page has beyond another horse's: a long page is slow to look through.
TRACED_ALONE = """document.querySelectorAll(
  ".rg-side, .rg-main > :not(#feet, .rg-folds), #feet > :not(.rg-part:target), .rg-folds > :not(:has(#tracings))")
  .forEach(one => one.remove())"""
ROOT_ASSETS = re.compile(r"^(http://[^/]+)/assets/")


@pytest.fixture(scope="module")
def page(browser: Browser) -> Iterator[Page]:
    """One window for all pages."""
    context = browser.new_context(viewport={"width": 390, "height": 844})
    # The page for a wrong address asks for its scripts at the root of a host.
    context.route(
        ROOT_ASSETS, lambda route: route.continue_(url=ROOT_ASSETS.sub(r"\1/willowmere/assets/", route.request.url))
    )
    yield context.new_page()
    context.close()


@pytest.mark.parametrize("kind", LOOKED_AT)
def test_nobody_is_kept_out(page: Page, served: str, kind: str) -> None:
    """Whatever the width, the colours and the hand. Source: WCAG 2.2, levels A and AA, as axe-core tries them."""
    # A foot of a horse is open where its address stands.
    page.goto(f"{served}/{KINDS[kind]}#left-fore")
    if kind == "traced horse":
        page.evaluate(TRACED_ALONE)
    page.evaluate(SIX_OF_A_KIND)
    page.evaluate(OPEN_ALL_FOLDS)

    assert kept_out(page) == {}


def test_what_would_be_missed_is_found(page: Page) -> None:
    """A stop that is clear, one under a bar, one without a ring; a faint mark; a line that is cut off."""
    page.set_content(
        "<div style='position:fixed;inset:0 0 auto;height:200px;background:#fff'></div><a href='#a'>under</a>"
        "<div style='height:300px'></div><a href='#b' style='opacity:0'>clear</a>"
        "<a href='#c' style='outline:0'>bare</a>"
        "<style>:focus-visible { outline: 2px solid }</style><p><i style='background:#bbb'>x</i></p>"
        "<p style='width:40px;overflow:hidden;white-space:nowrap'>longer than its place</p>"
    )
    stops = [one.rsplit(">", 1)[1] for one in unseen_stops(page)]

    assert stops == [" has no ring", " is not seen", " is covered by DIV"]
    assert [one.rsplit(" ", 1)[1] for one in faint_marks(page)] == ["1.92"]
    assert "P. longer than its place: cut at its side" in cut_off(page)

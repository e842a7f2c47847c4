"""Each kind of page against WCAG 2.2 AA, by axe-core; on a phone and a desk, light and dark, with all folds open."""

from __future__ import annotations

import re
from collections.abc import Iterator
from typing import Literal

import pytest
from playwright.sync_api import Browser, Page

from tests.support.access import OPEN_ALL_FOLDS, SIX_OF_A_KIND, violations
from tests.support.kinds import KINDS

# The heaviest horse is of the same kind as the others.
LOOKED_AT = [kind for kind in KINDS if kind != "heaviest horse"]
ROOT_ASSETS = re.compile(r"^(http://[^/]+)/assets/")
# Width, scheme, and whether colours alone are looked at: the other scheme of a width differs in nothing else.
VIEWS: tuple[tuple[int, Literal["light", "dark"], bool], ...] = (
    (390, "light", False),
    (390, "dark", True),
    (1280, "light", True),
    (1280, "dark", False),
)


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
    """No violation, whatever the width and the scheme. Source: WCAG 2.2, levels A and AA, as axe-core tries them."""
    found = []
    for width, scheme, contrast_alone in VIEWS:
        page.set_viewport_size({"width": width, "height": 844})
        page.emulate_media(color_scheme=scheme)
        page.goto(f"{served}/{KINDS[kind]}")
        page.evaluate(SIX_OF_A_KIND)
        page.evaluate(OPEN_ALL_FOLDS)
        found += [f"{width} {scheme}, {one}" for one in violations(page, contrast_alone=contrast_alone)]

    assert found == []

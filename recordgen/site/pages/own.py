"""The pages that a practice wrote itself."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from recordgen.records.pages.files import PAGES
from recordgen.records.pages.model import OwnPage
from recordgen.site.model import Page
from recordgen.site.pages.renderer import PageRenderer
from recordgen.site.prose.own_pages import own_html
from recordgen.site.prose.render import FRAME


def render_own_pages(renderer: PageRenderer, own: Mapping[str, OwnPage]) -> list[Page]:
    """The own pages at these places; in the engine's menu stand those that all readers of the site see."""
    pages = [
        renderer.render(uri, page.text.title, FRAME, prose=own_html(uri, renderer.own), kind="own")
        for uri, page in own.items()
    ]
    return [replace(page, in_menu=page.uri.startswith(f"{PAGES}/")) for page in pages]

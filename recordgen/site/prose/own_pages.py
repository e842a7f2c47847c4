"""A practice's own pages at their places in a site: addresses, menu, pictures, and each as HTML."""

from __future__ import annotations

from collections.abc import Callable, Mapping

from markupsafe import Markup

from recordgen.records.pages.files import PAGES
from recordgen.records.pages.markdown import Link, render_page
from recordgen.records.pages.model import OwnPage, OwnPages
from recordgen.site.model import link
from recordgen.site.prose.sections import Sections


def pages_by_place(own: OwnPages, under: str = "") -> dict[str, OwnPage]:
    """The pages of a folder by their places in a site, such as pages/winter-mud.md. under: a folder of the site."""
    return {f"{under}{PAGES}/{page.name}.md": page for page in own.pages}


def own_pictures(own: OwnPages, under: str = "") -> dict[str, bytes]:
    """The pictures of a folder of pages by their places in a site. Raises OSError."""
    return {f"{under}{PAGES}/{file.name}": file.read_bytes() for file in own.pictures}


def own_menu(pages: Mapping[str, OwnPage]) -> list[tuple[str, str]]:
    """Place and title of each page."""
    return [(uri, page.text.title) for uri, page in pages.items()]


def own_html(here: str, pages: Mapping[str, OwnPage]) -> Markup:
    """The HTML of the page at a place. pages: all that a link of it can lead to, by place."""
    return Markup(render_page(pages[here].source, _leading(here, pages), [Sections()]).html)


def _leading(here: str, pages: Mapping[str, OwnPage]) -> Callable[[Link], str]:
    """The place where a link of the page at a place leads."""
    places = {f"{page.name}.md": uri for uri, page in pages.items()}

    def address(link_of_page: Link) -> str:
        file, sign, part = link_of_page.address.partition("#")
        # A picture lies beside its page, and a telephone number lies nowhere: both stay as they are.
        return f"{link(here, places.get(file, file))}{sign}{part}" if file.endswith(".md") else link_of_page.address

    return address

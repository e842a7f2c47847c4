"""The Markdown of a practice's own page: text, lists, tables, links and pictures. HTML in it is text like any other.

Source: the rules of Markdown as Python-Markdown reads them, less raw HTML, and with tables and lists of terms.
"""

from __future__ import annotations

import re
from collections.abc import Callable, Iterable
from dataclasses import dataclass
from functools import lru_cache
from html import unescape
from xml.etree.ElementTree import Element

from markdown import Markdown
from markdown.extensions import Extension
from markdown.extensions.toc import slugify_unicode, unique
from markdown.treeprocessors import Treeprocessor

HEADINGS = ("h1", "h2", "h3", "h4", "h5", "h6")
# All that a page may be made of. Markdown without HTML makes nothing else; what did would lose its name and attributes.
ELEMENTS = {
    *(*HEADINGS, "p", "br", "hr", "em", "strong", "code", "pre", "blockquote", "a", "img", "ul", "ol", "li"),
    *("dl", "dt", "dd", "table", "thead", "tbody", "tr", "th", "td"),
}
ATTRIBUTES = {"href", "src", "alt", "title", "id", "start"}
# What telephones and mail programs open; nothing of a site is sent by it.
CALLS = re.compile(r"tel:\+?[0-9 ()/-]+|mailto:[A-Za-z0-9.+_-]+@[A-Za-z0-9.-]+")
# Markdown's own list of priorities puts the reading of links at 20, and of signs with a backslash at 0.
_LAST = -5
_EXTENSIONS = ("def_list", "sane_lists", "tables")


@dataclass(frozen=True)
class Link:
    """A link or a picture of a page, as it is written: where to, and whether it is a picture."""

    address: str
    is_picture: bool = False


@dataclass(frozen=True)
class PageText:
    """The contents of a page. title: of its first line, or empty. further: other headings of the first level.

    headings: ids of all other headings. links: links and pictures in order. html: the page.
    """

    title: str
    further: tuple[str, ...]
    headings: tuple[str, ...]
    links: tuple[Link, ...]
    html: str


@lru_cache(maxsize=200)
def read_page(source: str) -> PageText:
    """The contents of a page, its links as they are written. source: its Markdown."""
    return render_page(source, lambda link: link.address)


def render_page(source: str, address: Callable[[Link], str], extensions: Iterable[Extension] = ()) -> PageText:
    """The same, each link leading where `address` says. extensions: what else is done to the page once it is read."""
    reading = _Reading(address)
    reader = Markdown(extensions=[*_EXTENSIONS, reading, *extensions])
    html = reader.convert(source)
    return PageText(reading.title, tuple(reading.further), tuple(reading.headings), tuple(reading.links), html)


class _Reading(Extension):
    """Reads no HTML, and keeps what stands on the page."""

    def __init__(self, address: Callable[[Link], str]) -> None:
        super().__init__()
        self.address = address
        self.title = ""
        self.further: list[str] = []
        self.headings: list[str] = []
        self.links: list[Link] = []

    def extendMarkdown(self, md: Markdown) -> None:
        """Take out what reads HTML, and addresses of mail, which it would write as riddles; add the step that looks."""
        md.preprocessors.deregister("html_block")
        for name in ("html", "entity", "automail"):
            md.inlinePatterns.deregister(name)
        md.treeprocessors.register(_Looking(md, self), "own-page", _LAST)


class _Looking(Treeprocessor):
    def __init__(self, md: Markdown, kept: _Reading) -> None:
        super().__init__(md)
        self.kept = kept

    def run(self, root: Element) -> None:
        first = root[0] if len(root) else None
        for element in root.iter():
            if element is not root:
                _keep_allowed(element)
            if element.tag in HEADINGS:
                self._heading(element, element is first)
            for name in ("href", "src"):
                if name in element.attrib:
                    self._link(element, name)

    def _heading(self, heading: Element, is_first: bool) -> None:
        words = " ".join(unescape("".join(heading.itertext())).split())
        if heading.tag == "h1":
            if is_first:
                self.kept.title = words
            else:
                self.kept.further.append(words)
            return
        heading.set("id", unique(slugify_unicode(words, "-") or "part", {*self.kept.headings}))
        self.kept.headings.append(heading.attrib["id"])

    def _link(self, element: Element, name: str) -> None:
        link = Link(element.attrib[name], is_picture=name == "src")
        self.kept.links.append(link)
        element.set(name, self.kept.address(link))


def _keep_allowed(element: Element) -> None:
    """Leave of an element what a page may hold."""
    if element.tag not in ELEMENTS:
        element.tag = "span"
    for name in [name for name in element.attrib if name not in ATTRIBUTES]:
        del element.attrib[name]

"""The guide for the trimmer: plain Markdown among the templates; its links lead from file to file, as on a site.

In another language its paragraphs come from a catalog; addresses of its parts stay as in English, so that links hold.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import cache
from pathlib import Path

from markdown.extensions.fenced_code import FencedCodeExtension

from recordgen.language.catalogs import ENGLISH_CODE, Catalog, catalog_of
from recordgen.packaged import packaged
from recordgen.records.pages.markdown import Link, PageText, render_page
from recordgen.site.prose.in_language import in_language
from recordgen.site.prose.sections import Sections
from recordgen.site.prose.sized_pictures import SizedPictures

# No stable's folder can have this name, since an address of a folder takes no underscore (`load/folders.py`, SLUG).
FOLDER = "user_guide"
START = f"{FOLDER}/start.md"
PICTURES = f"{FOLDER}/pictures"
# In the order in which they are read.
GUIDE = (START, *(f"{FOLDER}/{name}.md" for name in ("first-week", "tasks", "trouble", "commands", "data")))
# The terminal answers in English.
_ANSWER = '<code class="language-text"'


@cache
def guide_text(uri: str, code: str = ENGLISH_CODE) -> PageText:
    """A page of the guide in a language.

    uri: its place in a site, such as user_guide/start.md.
    """
    english = _render_source(guide_source(uri))
    if code == ENGLISH_CODE:
        return english
    other = _render_source(guide_source(uri, catalog_of(code)))
    html = other.html.replace(_ANSWER, f'{_ANSWER} lang="{ENGLISH_CODE}"')
    for told, heading in zip(other.headings, english.headings, strict=True):
        html = html.replace(f'id="{told}"', f'id="{heading}"', 1)
    return replace(other, html=html, headings=english.headings)


def guide_source(uri: str, catalog: Catalog | None = None) -> str:
    """The Markdown of a page of the guide, in the language of a catalog."""
    source = guide_file(uri).read_text("utf-8")
    return in_language(source, catalog) if catalog else source


@cache
def guide_pictures() -> Mapping[str, Path]:
    """The files of the guide's pictures by their places in a site, such as user_guide/pictures/horse.webp."""
    return {f"{PICTURES}/{file.name}": file for file in sorted(guide_file(PICTURES).glob("*.webp"))}


def guide_file(uri: str) -> Path:
    """The file of a page of the guide among the templates, or their folder of pictures."""
    return packaged() / "site_templates" / "pages" / "guide" / uri.removeprefix(f"{FOLDER}/")


def _render_source(source: str) -> PageText:
    return render_page(source, _leading, [FencedCodeExtension(), SizedPictures(guide_file(START).parent), Sections()])


def _leading(link: Link) -> str:
    file, sign, part = link.address.partition("#")
    return f"{file.removesuffix('.md')}.html{sign}{part}" if file.endswith(".md") else link.address

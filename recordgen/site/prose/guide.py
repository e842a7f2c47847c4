"""The guide for the trimmer: plain Markdown among the templates; its links lead from file to file, as on a site."""

from __future__ import annotations

from functools import cache

from markdown.extensions.fenced_code import FencedCodeExtension

from recordgen.packaged import packaged
from recordgen.records.pages.markdown import Link, PageText, render_page
from recordgen.site.prose.sections import Sections

FOLDER = "guide"
START = f"{FOLDER}/start.md"
# In the order in which they are read.
GUIDE = (START, *(f"{FOLDER}/{name}.md" for name in ("first-week", "tasks", "trouble", "commands", "data")))


@cache
def guide_text(uri: str) -> PageText:
    """A page of the guide. uri: its place in a site, such as guide/start.md, and in the folder of the templates too."""
    source = (packaged() / "site_templates" / "pages" / uri).read_text("utf-8")
    return render_page(source, _leading, [FencedCodeExtension(), Sections()])


def _leading(link: Link) -> str:
    file, sign, part = link.address.partition("#")
    return f"{file.removesuffix('.md')}.html{sign}{part}" if file.endswith(".md") else link.address

"""A page of prose to HTML: the values filled in, Markdown read, and the whole put into the frame of the pages."""

from __future__ import annotations

from functools import lru_cache
from pathlib import PurePath

from jinja2 import Environment
from markdown import Markdown
from markupsafe import Markup

from recordgen.site.prose.sections import Sections
from recordgen.site.prose.values import cover, uncover
from recordgen.site.templates import Compiled, render

FRAME = "prose.html"
# Compiled apart: the same template compiles to another program where its values are covered.
_COMPILED = {sandboxed: Compiled() for sandboxed in (False, True)}


def render_prose(made: Environment, template: str, **values: object) -> str:
    """The HTML of a page whose template is Markdown, such as words.md. Raises Trouble as `render` does.

    made: the environment of the pages. values: what both the text and the frame are filled in with.
    """
    covering = made.overlay(finalize=cover, bytecode_cache=_COMPILED[made.sandboxed])
    text = render(covering, template, **values)
    return render_in_frame(made, _html(text), PurePath(template).stem, **values)


def render_in_frame(made: Environment, prose: Markup, kind: str, **values: object) -> str:
    """The HTML of prose in the frame of the pages. kind: what the styles know the page by."""
    return render(made, FRAME, prose=prose, kind=kind, **values)


def _html(text: str) -> Markup:
    return uncover(_convert(text))


@lru_cache(maxsize=64)
def _convert(text: str) -> str:
    """Markdown as HTML. Pages that every stable has are read once, however many sites are built."""
    return Markdown(extensions=["attr_list", "def_list", "sane_lists", "tables", Sections()]).convert(text)

"""The pages of the guide, on the trimmer's own site alone."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace
from functools import partial

from markupsafe import Markup

from recordgen.site.model import Page
from recordgen.site.pages.explanations import HELP_LAST
from recordgen.site.pages.renderer import PageRenderer
from recordgen.site.prose.guide import GUIDE, START, guide_text
from recordgen.site.prose.render import FRAME


def render_guide(renderer: PageRenderer, finished: Mapping[str, Page]) -> list[Page]:
    """All pages of the guide; the first one stands in the engine's menu. finished: those that stand."""
    return [finished.get(uri) or renderer.explain(partial(_render, uri)) for uri in GUIDE]


def _render(uri: str, renderer: PageRenderer) -> Page:
    text = guide_text(uri, renderer.context.ways.naming.language.code)
    page = renderer.render(uri, text.title, FRAME, prose=Markup(text.html), kind="guide")
    return replace(page, in_menu=uri == START, weight=HELP_LAST)

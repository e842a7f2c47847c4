"""The pages that explain the others: the words, the method, what keeps horses and people safe, codes of problems."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from recordgen.hoof.law_notes import scope_notes
from recordgen.site.model import Page
from recordgen.site.pages.method import METHOD, render_method
from recordgen.site.pages.renderer import PageRenderer

# Search tells what explains after what is known of a horse.
HELP_LAST = 0.2
WORDS, SAFETY, PROBLEMS = "words.md", "safety.md", "problems.md"
EXPLAIN = (WORDS, METHOD, SAFETY)


def render_explanations(renderer: PageRenderer, finished: Mapping[str, Page]) -> list[Page]:
    """The same three pages on every site. finished: those that stand."""
    ways = {WORDS: render_words, METHOD: render_method, SAFETY: render_safety}
    return [finished.get(uri) or replace(renderer.explain(ways[uri]), weight=HELP_LAST) for uri in EXPLAIN]


def render_words(renderer: PageRenderer) -> Page:
    """The meaning of each measure and each word."""
    tables, title = renderer.context.ways.reference, renderer.phrase("menu_words")
    return renderer.render(WORDS, title, "words.md", measures=tables.measures, glossary=tables.glossary)


def render_safety(renderer: PageRenderer) -> Page:
    """Points to mind, and what the law of the practice's country asks."""
    ways = renderer.context.ways
    return renderer.render(
        SAFETY,
        renderer.phrase("menu_safety"),
        "safety.md",
        notes=tuple(ways.reference.safety.values()),
        scope=scope_notes(ways.practice.country, ways.reference.scope),
    )


def render_problems(renderer: PageRenderer) -> Page:
    """The meaning of each code of a problem, with an example and its mend; for the trimmer alone."""
    table = renderer.context.ways.reference.problems
    return renderer.render(PROBLEMS, renderer.phrase("menu_problems"), "problems.html", problems=table)

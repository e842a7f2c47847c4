"""The pages that explain the others: the words, the method, what keeps horses and people safe, codes of problems."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import replace

from recordgen.hoof.cautions.cautions import LEVELS
from recordgen.hoof.law_notes import scope_notes
from recordgen.hoof.tracing.errors.camera import TRUE_ANGLES, camera_table
from recordgen.hoof.tracing.errors.draws import DRAWS
from recordgen.hoof.tracing.errors.tilt import AWAY_MM, OFF_PLANE_MM, TILT_DEG
from recordgen.records.models.annotations import range_at
from recordgen.site.model import Page
from recordgen.site.pages.renderer import PageRenderer

# Search tells what explains after what is known of a horse.
HELP_LAST = 0.2
WORDS, METHOD, SAFETY, PROBLEMS = "words.md", "method.md", "safety.md", "problems.md"
EXPLAIN = (WORDS, METHOD, SAFETY)


def render_explanations(renderer: PageRenderer, finished: Mapping[str, Page]) -> list[Page]:
    """The same three pages on every site. finished: those that stand."""
    ways = {WORDS: render_words, METHOD: render_method, SAFETY: render_safety}
    return [finished.get(uri) or replace(ways[uri](renderer), weight=HELP_LAST) for uri in EXPLAIN]


def render_words(renderer: PageRenderer) -> Page:
    """The meaning of each measure and each word."""
    tables, title = renderer.context.ways.reference, renderer.phrase("menu_words")
    return renderer.render(WORDS, title, "words.md", measures=tables.measures, glossary=tables.glossary)


def render_method(renderer: PageRenderer) -> Page:
    """Tell how figures are read, how sure they are, and where that comes from."""
    tables = renderer.context.ways.reference
    return renderer.render(
        METHOD,
        renderer.phrase("menu_method"),
        "method.md",
        measures=tables.measures,
        ranges={key: range_at(words.path) for key, words in tables.measures.items() if words.path},
        cautions=tables.cautions,
        classes=tables.classes,
        levels=LEVELS,
        safety=SAFETY,
        hand_error=renderer.context.ways.hand_error,
        draws=DRAWS,
        tilt_deg=TILT_DEG,
        away_mm=AWAY_MM,
        off_plane_mm=OFF_PLANE_MM,
        camera=camera_table(),
        camera_angles=TRUE_ANGLES,
    )


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

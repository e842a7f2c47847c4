"""The pages of one horse: its own, and its sheet for the vet."""

from __future__ import annotations

from dataclasses import replace
from typing import Any

from recordgen.hoof.export.sheet import sheet_of
from recordgen.hoof.measures.leading_changes import leading_changes
from recordgen.hoof.scales import grade_words
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.hoof.whom_to_ring import vet_of
from recordgen.site.amendments import amendments, trail_finder
from recordgen.site.horse.comparing import comparison_of
from recordgen.site.horse.courses import toe_courses
from recordgen.site.horse.glance import days_seen, kinds_found
from recordgen.site.horse.overlay import overlay_of
from recordgen.site.horse.parts import foot_parts, opening_of_note
from recordgen.site.model import Page
from recordgen.site.pages.found_by import search_names
from recordgen.site.pages.renderer import PageRenderer
from recordgen.site.photographs import Album
from recordgen.site.sheet import sheet_values
from recordgen.site.tables import figures, side_by_side
from recordgen.site.tracing.page import tracings_of

# No folder of a horse can end so: it would have the address of another's sheet.
SHEET = "_sheet"
# Search tells a horse before the pages that name it.
HORSES_FIRST = 4.0


def render_horse_and_sheet(
    renderer: PageRenderer, uri: str, horse: HorseSummary, stable: StableSummary
) -> tuple[Page, Page]:
    """A horse's page, and its sheet for the vet."""
    sheet = sheet_uri(uri)
    return render_horse(renderer, uri, sheet, horse, stable), render_sheet(renderer, sheet, horse, stable)


def sheet_uri(uri: str) -> str:
    """The place where the sheet of the horse lies whose page is there."""
    return f"{uri.removesuffix('.md')}{SHEET}.md"


def render_sheet(renderer: PageRenderer, uri: str, horse: HorseSummary, stable: StableSummary) -> Page:
    """The sheet for the vet, which search leaves alone."""
    ways, trails = renderer.context.ways, renderer.context.trails_of(horse)
    changed = amendments(horse, trails, ways.naming) if any(trails) else None
    title = renderer.phrase("sheet_title", horse=horse.horse.name)
    sheet = sheet_of(horse, stable.stable, ways, amendments=changed)
    page = renderer.render(uri, title, "sheet.html", "sheet/paper.html", **sheet_values(sheet, ways))
    return replace(page, searched=False)


def render_horse(renderer: PageRenderer, uri: str, sheet: str, horse: HorseSummary, stable: StableSummary) -> Page:
    """All that is known of a horse. sheet: where its sheet for the vet lies."""
    ways, photographs = renderer.context.ways, renderer.find_album(uri, horse)
    page = renderer.render(
        uri,
        horse.horse.name,
        "horse.html",
        summary=horse,
        horse=horse.horse,
        stable=stable.stable,
        sheet=sheet,
        **_opening_values(renderer, uri, horse, stable),
        **_feet(renderer, horse, photographs),
        **_folded_values(renderer, horse),
        measures={measure.key: measure for measure in ways.measures},
    )
    days = tuple(visit.visit.date.isoformat() for visit in horse.history)
    return replace(page, found_by=search_names(horse, ways.naming), visits=days, weight=HORSES_FIRST)


def calendar_name(uri: str) -> str:
    """The name of the file for a calendar program beside a horse's page."""
    return f"{uri.rpartition('/')[2].removesuffix('.md')}.ics"


def has_calendar(renderer: PageRenderer, horse: HorseSummary) -> bool:
    """Tell whether an owner can take the next visit into a calendar: not past its best day, nor if nothing is trimmed.

    The trimmer's own site has the rounds instead.
    """
    return not renderer.private and horse.due is not None and horse.due.best >= renderer.context.today


def _opening_values(renderer: PageRenderer, uri: str, horse: HorseSummary, stable: StableSummary) -> dict[str, Any]:
    """The values of what an owner reads first: whom to ring, what the trimmer says, what is next, what changed."""
    ways = renderer.context.ways
    return {
        "ring_of": renderer.ring_finder(stable),
        "vet": vet_of(horse.horse, stable.stable),
        "urgent": [note for note in ways.reference.safety.values() if note.section == "vet now"],
        "said": opening_of_note(horse),
        "dates": calendar_name(uri) if has_calendar(renderer, horse) else None,
        "leading": leading_changes(horse.changes),
        "foot_names": ways.naming.feet,
    }


def _feet(renderer: PageRenderer, horse: HorseSummary, photographs: Album) -> dict[str, Any]:
    """The values of what is shown of the feet."""
    ways = renderer.context.ways
    tracings = tracings_of(horse, ways, photographs)
    return {
        "photographs": photographs,
        "tracings": tracings,
        "parts_of_feet": foot_parts(horse, tracings, photographs),
        "toes": toe_courses(horse, ways.naming),
        "overlay": overlay_of(photographs),
        "seen": days_seen(horse, ways.naming),
    }


def _folded_values(renderer: PageRenderer, horse: HorseSummary) -> dict[str, Any]:
    """The values of what is folded: tables, history, context."""
    ways = renderer.context.ways
    scales = ways.reference.scales
    return {
        "kinds_found": lambda visit: kinds_found(visit, ways.naming),
        "measured": {key for one in horse.feet.values() for key in one.measures},
        "comparison": comparison_of(horse, ways.measures, ways.naming),
        "trail_of": trail_finder(horse, renderer.context.trails_of(horse)),
        "rows": side_by_side(horse, ways.measures),
        "figures": lambda measure: figures(horse, measure),
        "measure_words": ways.reference.measures,
        "scale_words": scales,
        "grade_words": lambda scale, grade: grade_words(scale, grade, scales, ways.naming),
        "class_words": ways.group(horse.care_class),
    }

"""The pages of one horse: its own, and its sheet for the vet."""

from __future__ import annotations

from dataclasses import replace

from recordgen.hoof.export.sheet import sheet_of
from recordgen.hoof.scales import grade_words
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.site.amendments import amendments, trail_finder
from recordgen.site.drawings.due_strip import strip
from recordgen.site.model import Page
from recordgen.site.pages.renderer import PageRenderer
from recordgen.site.sheet import sheet_values
from recordgen.site.tables import figures, side_by_side
from recordgen.site.tracing.page import tracings_of


def render_horse_and_sheet(
    renderer: PageRenderer, uri: str, horse: HorseSummary, stable: StableSummary
) -> tuple[Page, Page]:
    """A horse's page, and its sheet for the vet."""
    sheet = f"{uri.removesuffix('.md')}-sheet.md"
    return render_horse(renderer, uri, sheet, horse, stable), render_sheet(renderer, sheet, horse, stable)


def render_sheet(renderer: PageRenderer, uri: str, horse: HorseSummary, stable: StableSummary) -> Page:
    """The sheet for the vet, which search leaves alone."""
    ways, trails = renderer.context.ways, renderer.context.trails_of(horse)
    changed = amendments(horse, trails, ways.naming) if any(trails) else None
    title = renderer.phrase("sheet_title", horse=horse.horse.name)
    sheet = sheet_of(horse, stable.stable, ways, amendments=changed)
    return replace(renderer.render(uri, title, "sheet.html", **sheet_values(sheet, ways)), searched=False)


def render_horse(renderer: PageRenderer, uri: str, sheet: str, horse: HorseSummary, stable: StableSummary) -> Page:
    """All that is known of a horse. sheet: where its sheet for the vet lies."""
    ways, photographs = renderer.context.ways, renderer.find_album(uri, horse)
    scales = ways.reference.scales
    return renderer.render(
        uri,
        horse.horse.name,
        "horse.html",
        summary=horse,
        horse=horse.horse,
        stable=stable.stable,
        ring_of=renderer.ring_finder(stable),
        photographs=photographs,
        tracings=tracings_of(horse, ways, photographs),
        sheet=sheet,
        trail_of=trail_finder(horse, renderer.context.trails_of(horse)),
        days=strip(horse.due) if horse.due else (),
        rows=side_by_side(horse, ways.measures),
        figures=lambda measure: figures(horse, measure),
        measures={measure.key: measure for measure in ways.measures},
        measure_words=ways.reference.measures,
        scale_words=scales,
        grade_words=lambda scale, grade: grade_words(scale, grade, scales, ways.naming),
        class_words=ways.group(horse.care_class),
    )

"""The vet's sheet as a page of a site, and as one file that stands alone with its style and pictures inside."""

from __future__ import annotations

import json
from collections.abc import Mapping, Sequence
from datetime import date
from typing import Any

from markupsafe import Markup

from recordgen import __version__
from recordgen.csv_text import csv_of
from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet import Sheet, SheetRow
from recordgen.hoof.export.sheet_changes import same_since
from recordgen.hoof.export.sheet_csv import COLUMNS
from recordgen.hoof.export.sheet_json import DICTIONARY_COLUMNS, PARTS, said_digest
from recordgen.hoof.measures.change import Step
from recordgen.hoof.measures.leading_changes import FOUND, leading_changes
from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.naming import MONTH_DAYS, Naming
from recordgen.hoof.scales import CONDITION_SCALES, Grade, grade_words
from recordgen.language.direction import with_isolated_facts
from recordgen.site.build_context import BuildContext
from recordgen.site.drawings.dated import DaySayer
from recordgen.site.drawings.pictures import Pictures
from recordgen.site.frame.styles import EVERY_PAGE, style_text
from recordgen.site.horse.parts import opening_of_note
from recordgen.site.model import Page
from recordgen.site.templates import difference, render, signed
from recordgen.site.tracing.page import tracings_of

# Two pages hold so many, and so many letters of somebody's words; how many more there are is told, and the CSV and the
# JSON hold all.
MOST = {
    "words": 420,
    "cautions": 3,
    "also_open": 6,
    "findings": 4,
    "grades": 5,
    "events": 4,
    "changed": 7,
    "rows": 20,
    "rows_of_many_soles": 18,
    "visits": 20,
    "entries": 4,
    "closed": 6,
    "amended": 4,
    "tracings": 4,
}
# As it stands in the template of a sheet that stands alone.
GENERATOR = b'<meta name="generator" content="recordgen sheet">'


def is_sheet(content: bytes) -> bool:
    """Tell whether a file is a sheet that was written here: as HTML, CSV or JSON, or the dictionary of both."""
    headers = (csv_of(COLUMNS, []), csv_of(DICTIONARY_COLUMNS, []))
    if GENERATOR in content[:1000] or content.startswith(tuple(header.encode() for header in headers)):
        return True
    try:
        held = json.loads(content)
    except (ValueError, RecursionError):
        return False
    return isinstance(held, dict) and held.keys() == set(PARTS)


def sheet_values(sheet: Sheet, ways: Context) -> dict[str, Any]:
    """Values for the template sheet.html, besides what every page has."""
    scales, naming = ways.reference.scales, ways.naming
    return {
        "sheet": sheet,
        "summary": sheet.summary,
        "horse": sheet.summary.horse,
        "said_digest": said_digest(sheet),
        "version": __version__,
        "measure_words": ways.reference.measures,
        "scale_words": scales,
        "grade_words": lambda scale, grade: grade_words(scale, grade, scales, naming),
        "class_words": ways.group(sheet.summary.care_class),
        "sourced": _error_sources(sheet),
        "tracings": tracings_of(sheet.summary, ways),
        "figures_of": lambda row, figures: figures_of(row, figures, naming),
        "change_of": lambda measure, step: change_of(naming, measure, step),
        "day_tiny": naming.language.tiny_day,
        "month_tiny": lambda day: f"{naming.language.short_month(day)} {day.year % 100:02}",
        "days_tiny": lambda first, last: days_tiny(naming, first, last),
        "month_figure": lambda mm_per_day: month_figure(mm_per_day, naming),
        "same_since": same_since,
        "lame_first": lame_first,
        "condition_scales": CONDITION_SCALES.values(),
        "said": opening_of_note(sheet.summary),
        "leading": leading_changes(sheet.summary.changes),
        "leading_found": FOUND,
        "foot_names": naming.feet,
        "most": MOST,
    }


def sheet_alone(sheet: Sheet, context: BuildContext) -> str:
    """The sheet as one HTML file that needs no other: style and pictures are inside, and nothing is loaded.

    Raises Trouble where a practice's own template cannot be filled in.
    """
    day, ways = sheet.summary.as_of, context.ways
    pictures = Pictures(context.pictures, ways.naming, DaySayer(context.templates, day))
    title = with_isolated_facts(ways.naming.phrase)("sheet_title", horse=sheet.summary.horse.name)
    values = {**sheet_values(sheet, ways), "pictures": pictures, "title": title, "today": day}
    frame = {"private": False, "practice": ways.practice, "style": Markup(style_text((*EVERY_PAGE, "sheet")))}
    html = render(context.templates, "sheet/alone.html", **values, **frame)
    return Page("sheet.md", title, html, tuple(pictures.late)).complete(html)


def figures_of(row: SheetRow, figures: tuple[float, float], naming: Naming) -> str:
    """The least and the largest of some figures in the unit of a measure, told as one where they read the same."""
    digits = 2 if row.measure.words.decimals > 1 else 1
    told = dict.fromkeys(_whole(difference(naming, row.measure, figure, digits), naming) for figure in figures)
    return "–".join(told)


def _whole(figure: str, naming: Naming) -> str:
    """A figure without its only decimal where that is nought."""
    return figure.removesuffix(naming.figures(".0"))


def change_of(naming: Naming, measure: Measure, step: Step) -> str:
    """A change with its sign, in the digits of its measure; without one where those are all nought."""
    told = signed(naming, measure, step.change)
    return told if any(sign in "123456789" for sign in told) else told.lstrip("+−")


def lame_first(grades: Mapping[str, Sequence[Grade]]) -> list[tuple[str, Sequence[Grade]]]:
    """Scales with their grades, those of lameness before those of condition."""
    return sorted(grades.items(), key=lambda one: one[0] in CONDITION_SCALES.values())


def month_figure(mm_per_day: float, naming: Naming) -> str:
    """A rate by the month in the unit shown, without it; of millimetres with one digit behind the point."""
    return naming.quantities.span_figure(mm_per_day * MONTH_DAYS, 1).replace("-", "−")


def days_tiny(naming: Naming, first: date, last: date) -> str:
    """Two days where there is hardly any room, the year once where it is the same: `13 May to 8 Jul 26`."""
    language = naming.language
    begins = language.short_month_day(first) if first.year == last.year else language.tiny_day(first)
    return naming.phrase("days_from_to", first=begins, last=language.tiny_day(last))


def _error_sources(sheet: Sheet) -> Mapping[str, str]:
    """By measure, where its error comes from, of those whose error is not assumed; computed ones go by their parts."""
    rows = [row for row in sheet.rows if not row.measure.parts]
    taken = [(row.measure.words.name, one) for row in rows for one in row.taken.values()]
    return {name: one.source for name, one in taken if one.error != "assumed"}

"""The page of the tracing screen: one file with everything in it but the photograph, which lies beside it."""

from __future__ import annotations

import json
from collections.abc import Mapping
from pathlib import Path
from typing import Any

from recordgen.language.catalogs import Catalog, catalog_of, table_in
from recordgen.language.quantities import IN_ENGLISH, Quantities
from recordgen.language.spoken import Language
from recordgen.records.models.lines.shape_table import FIRST_DEG, SHIPPED, STEP_DEG, ShapeTable
from recordgen.records.models.tracing import LANDMARKS, OUTLINES
from recordgen.records.write.tracing import entry_of
from recordgen.site.single_page import page_with, read_table
from recordgen.site.trace.photo import PhotoToTrace
from recordgen.site.trace.steps import steps_of_screen

FOLDER = "trace"
# In the order in which each needs the ones before it. All but the last stand in any page that shows the screen.
SCREEN = (
    "lines.js",
    "usual.js",
    "ridge.js",
    "sole.js",
    "upright.js",
    "faults.js",
    "draft.js",
    "view.js",
    "paint.js",
    "hand.js",
    "sheets.js",
    "screen.js",
)
SCRIPTS = (*SCREEN, "main.js")
SCREEN_STYLE = "screen.css"
PICTURE = "photo.jpg"
POLICY = (
    "default-src 'none'; script-src {script}; style-src {style}; img-src 'self'; connect-src 'self'; "
    "base-uri 'none'; form-action 'none'"
)


def trace_page(
    photo: PhotoToTrace,
    foot: str,
    own: Path | None = None,
    written: Quantities = IN_ENGLISH,
    outlines: ShapeTable = SHIPPED,
) -> bytes:
    """The page on which a photograph is traced. foot: its name as people say it. own: a practice's own templates.

    written: the language and the units. outlines: the table that lines follow.
    """
    told = page_data(photo, foot, own, written, outlines)
    data, styles = json.dumps(told, ensure_ascii=False), ("style.css", SCREEN_STYLE)
    return page_with(
        FOLDER, ("TRACE", data), SCRIPTS, POLICY, own, styles, head_texts(written.language, told["words"])
    ).encode()


def head_texts(language: Language, words: Mapping[str, Any]) -> dict[str, str]:
    """The texts that a page of one file shows before its script runs, by the names of their places in it."""
    return {"LANGUAGE": language.code, "TITLE": words["title"], "NO_SCRIPT": words["no_script"]}


def page_data(
    photo: PhotoToTrace, foot: str, own: Path | None, written: Quantities, outlines: ShapeTable
) -> dict[str, Any]:
    """The data of the page, as plain values."""
    return {
        "view": photo.view,
        "foot": photo.foot,
        "named": foot,
        "moment": photo.moment,
        "size": list(photo.size),
        "sum": photo.sha256,
        "picture": PICTURE,
        "visit": photo.shown,
        "earlier": [
            {"number": number, "same": one.sha256 in (None, photo.sha256), **_plain_entry(entry_of(one))}
            for number, one in photo.earlier
        ],
        **screen_data(own, written, outlines),
    }


def screen_data(
    own: Path | None = None, written: Quantities = IN_ENGLISH, outlines: ShapeTable = SHIPPED
) -> dict[str, Any]:
    """The data of the screen whatever is traced: how many points each landmark takes, its steps, drawings and words.

    written: the language, and the units in which figures are shown and the length of a rule is typed.
    """
    language = written.language
    return {
        "takes": {
            view: {name: [takes.least, takes.exactly] for name, takes in marks.items()}
            for view, marks in LANDMARKS.items()
        },
        "model": usual_outlines(outlines),
        "outlines": {name: takes.least for name, takes in OUTLINES.items()},
        "steps": steps_of_screen(own),
        "decimal": language.figures("."),
        "units": _units_of_screen(written),
        "words": words_of_screen(catalog_of(language.code), own),
    }


def _units_of_screen(written: Quantities) -> dict[str, Any]:
    """By unit of a figure, where another is shown: its words, how much of the first it is, and digits it has more."""
    shown = [unit for unit in ("mm", "mm²") if written.units.of(unit) != unit]
    return {
        unit: {
            "unit": written.unit(unit),
            "per": 1 / written.units.shown(1, unit),
            "more": written.digits(unit, 1) - 1,
        }
        for unit in shown
    }


def words_of_screen(catalog: Catalog, own: Path | None = None) -> dict[str, Any]:
    """The table of what the screen says, in the language of a catalog."""
    return table_in(catalog, read_table(FOLDER, "words.yaml", own), FOLDER)  # type: ignore[no-any-return]


def usual_outlines(table: ShapeTable = SHIPPED) -> dict[str, Any]:
    """The table of usual outlines: its version, first angle and step in degrees, rows of mean and modes."""
    tables = {"wall": table.wall, "ring": table.ring}
    rows = {name: [[round(value, 4) for value in row] for row in held.tolist()] for name, held in tables.items()}
    return {"version": table.version, "first": FIRST_DEG, "step": STEP_DEG, **rows}


def _plain_entry(entry: Mapping[str, Any]) -> dict[str, Any]:
    return {
        name: value
        for name, value in entry.items()
        if name in ("scale", "drawn", "model", "ridge", "hand_error", "hand_errors")
    } | {
        "landmarks": {
            name: value if isinstance(value[0], list) else [value]
            for name, value in entry.items()
            if name in {mark for marks in LANDMARKS.values() for mark in marks}
        }
    }

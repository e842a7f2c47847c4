"""A photograph traced on the screen, from its file to the tracing in the visit."""

from __future__ import annotations

from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from recordgen.hoof.naming import Naming
from recordgen.language.catalogs import ENGLISH_CODE
from recordgen.language.spoken import language_of
from recordgen.problems import Trouble
from recordgen.records.load.folders import Walk
from recordgen.records.load.own_outlines import read_outlines
from recordgen.records.load.tables import read_reference
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.tracing import TracedMoment
from recordgen.records.yaml.read import read_with_key
from recordgen.sentences import say, sentences
from recordgen.site.trace.keep import KeptTracing, keep_tracing
from recordgen.site.trace.page import PICTURE, trace_page
from recordgen.site.trace.photo import PhotoToTrace, photo_to_trace
from recordgen.site.trace.serve import ShownScreen, serve_screen
from recordgen.units import METRIC, UNITS


def trace_photo(
    records: Path, photo: Path, moment: TracedMoment | None, port: int, tell: Callable[[str], None]
) -> Path | None:
    """Show the screen on this machine until the tracing is written; the visit's file, None where it was left.

    tell: is called with the address. Raises Trouble where the photograph cannot be traced or the port is taken.
    """
    found = photo_to_trace(records, photo, moment)
    try:
        done = serve_screen(screen_of(records, found), port, tell)
    except OSError as fault:
        raise Trouble(
            say("port {port} of this machine is taken: {strerror}", port=port, strerror=fault.strerror),
            say("Name another: --port 8003"),
        ) from None
    return found.visit if done else None


def screen_of(records: Path, photo: PhotoToTrace) -> ShownScreen:
    """The screen of one photograph, and what takes its tracing in."""
    naming = _naming(records)
    outlines = read_outlines(Walk(records))
    page = trace_page(photo, naming.foot(photo.foot), records / "site_templates", naming.quantities, outlines)
    files = {"": ("text/html; charset=utf-8", page), PICTURE: ("image/jpeg", photo.raw)}
    return ShownScreen(files, lambda answer: _take(photo, answer, naming))


def _naming(records: Path) -> Naming:
    """Tell how the practice names feet, its language and its units; ours where its file tells none of them."""
    practice = read_with_key(records / "practice.yaml", PracticeFile, "feet", "language", "units")
    code = practice.language if practice else ENGLISH_CODE
    phrases = read_reference(records, code)[0].phrases
    units = UNITS[practice.units] if practice else METRIC
    return Naming(phrases, practice is not None and practice.feet == "near and off", language_of(code), units)


def _take(photo: PhotoToTrace, answer: bytes, naming: Naming) -> tuple[Mapping[str, Any], bool]:
    try:
        kept = keep_tracing(photo, answer, naming.near_and_off)
    except Trouble as trouble:
        kept = KeptTracing(False, (sentences(trouble.message, trouble.way_out),))
    except OSError as fault:
        told = sentences(
            say("{photo} cannot be read: {strerror}", photo=photo.shown, strerror=fault.strerror),
            say("Look whether the visit is still there"),
        )
        kept = KeptTracing(False, (told,))
    return kept.as_json(naming.language.code), kept.written

"""The field page as files: one page with everything in it, its worker, its icon and what makes it an app on a phone."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Sequence
from datetime import date
from pathlib import Path
from typing import Any

from recordgen.hoof.context import Context
from recordgen.hoof.rounds.rounds import Calendar, plan_of
from recordgen.hoof.summary import StableSummary
from recordgen.language.catalogs import catalog_of
from recordgen.language.spoken import ENGLISH
from recordgen.records.models.lines.shape_table import SHIPPED, ShapeTable
from recordgen.records.models.names import FEET
from recordgen.site.field.horses import done_before, rounds_for_phone, stables_for_phone
from recordgen.site.field.sole_map import sole_map
from recordgen.site.field.vocabulary import foot_entries, visit_entries
from recordgen.site.field.words import FOLDER, names_of_page, translate_help, words_of_page
from recordgen.site.single_page import page_with, read_part
from recordgen.site.trace.page import FOLDER as TRACE
from recordgen.site.trace.page import SCREEN, SCREEN_STYLE, head_texts, screen_data

# How an English page writes days.
BRITISH = "en-GB"
# In the order in which each needs the ones before it.
SCRIPTS = (
    "words.js",
    "lengths.js",
    "store.js",
    "draft.js",
    "seal.js",
    "widgets.js",
    "sheets.js",
    "screens.js",
    "photos.js",
    *(f"{TRACE}/{name}" for name in SCREEN),
    "tracing.js",
    "handover.js",
    "main.js",
)
STYLES = ("style.css", f"{TRACE}/{SCREEN_STYLE}")
POLICY = (
    "default-src 'none'; script-src {script}; style-src {style}; img-src blob: data: 'self'; "
    "manifest-src 'self'; worker-src 'self'; connect-src 'self'; base-uri 'none'; form-action 'none'"
)

# The lock of a sealed site brings a script of its host and a style of its own.
SEALED_POLICY = POLICY.replace("script-src ", "script-src 'self' ").replace("{style}", "'unsafe-inline'")


def field_files(
    stables: Sequence[StableSummary],
    ways: Context,
    today: date,
    key: bytes = b"",
    own: Path | None = None,
    sealed: bool = False,
    outlines: ShapeTable = SHIPPED,
) -> dict[str, bytes]:
    """The files of the field page for some stables as of a day, by name.

    key: whom what the phone hands over is sealed for, the practice's public key (P-256, 65 bytes); unsealed without.
    own: a practice's own folder of templates, whose files go before ours. sealed: whether the page will be sealed; the
    worker of the sealed site then keeps it on the device, and its lock runs beside the page's own script.
    outlines: the table by which soles are traced.
    The same records and day give the same bytes.
    """
    told = page_data(stables, ways, today, key, own, outlines) | {"sealed": sealed}
    data = json.dumps(told, ensure_ascii=False, separators=(",", ":"))
    policy, words = SEALED_POLICY if sealed else POLICY, told["words"]
    head = head_texts(ways.naming.language, words)
    page = page_with(FOLDER, ("DATA", data), SCRIPTS, policy, own, STYLES, head).encode()
    worker = read_part(FOLDER, "worker.js", own).replace("EDITION", hashlib.sha256(page).hexdigest()[:16])
    return {
        "index.html": page,
        **({} if sealed else {"sw.js": worker.encode()}),
        "app.webmanifest": _manifest(words["title"], own),
        "icon.svg": read_part(FOLDER, "icon.svg", own).encode(),
    }


def _manifest(title: str, own: Path | None) -> bytes:
    told = json.dumps(title, ensure_ascii=False)[1:-1]
    return read_part(FOLDER, "app.webmanifest", own).replace("%TITLE%", told).encode()


def page_data(
    stables: Sequence[StableSummary],
    ways: Context,
    today: date,
    key: bytes = b"",
    own: Path | None = None,
    outlines: ShapeTable = SHIPPED,
) -> dict[str, Any]:
    """The data of the page, as plain values: vocabulary, horses, rounds, words, the tracing screen's."""
    naming = ways.naming
    catalog = catalog_of(naming.language.code)
    words = words_of_page(catalog, own)
    names = names_of_page(words.pop("names"), naming, catalog)
    return {
        "locale": BRITISH if naming.language == ENGLISH else naming.language.code,
        "made": today.isoformat(),
        "practice": ways.practice.name,
        "trimmer": ways.practice.trimmer,
        "key": base64.urlsafe_b64encode(key).rstrip(b"=").decode(),
        "stables": stables_for_phone(stables, naming, words),
        "rounds": rounds_for_phone(plan_of(stables, Calendar.of(ways, today))),
        "visit": translate_help(visit_entries(), catalog, naming),
        "foot": translate_help(foot_entries(), catalog, naming),
        "feet": {foot: naming.foot(foot) for foot in FEET},
        "soles": {"fore": sole_map(True), "hind": sole_map(False)},
        "done": done_before(stables),
        "care": {name: note.what for name, note in ways.reference.care.items()},
        "inches": naming.units.inches,
        "words": words,
        "names": names,
        "tracing": screen_data(own, naming.quantities, outlines),
    }

"""The vet's sheet as plain values for JSON, with a dictionary that says what each field means, and its edition."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Iterator, Sequence
from datetime import date
from typing import Any

from recordgen import __version__
from recordgen.csv_text import PlainRow, plain_number
from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet import NotMeasured, Sheet, SheetRow
from recordgen.hoof.export.sheet_csv import COLUMNS, reading_rows
from recordgen.hoof.export.sheet_errors import ReadingMethod
from recordgen.hoof.export.summary_json import as_json, lasting_json
from recordgen.hoof.measures.change import MeasureSummary, Step
from recordgen.hoof.measures.rounding import significant
from recordgen.hoof.scales import Grade
from recordgen.records.models.horse import VetPlan
from recordgen.records.models.names import Foot
from recordgen.records.models.visit import VetEntry

DICTIONARY_COLUMNS = ("kind", "name", "unit", "meaning", "landmarks")
PARTS = (
    *(
        "edition",
        "as_of",
        "why",
        "identity",
        "consent",
        "recorded_by",
        "visits",
        "intervals",
        "measures",
        "scales",
        "vet",
    ),
    *("keeping", "weight", "not_measured", "amendments", "readings", "summary", "dictionary"),
)
# So many digits tell any two prints of one horse apart.
EDITION_DIGITS = 10


def sheet_json(sheet: Sheet, ways: Context) -> dict[str, Any]:
    """The sheet in the parts `PARTS`; days as ISO 8601. `summary` is what the summary's own JSON holds."""
    readings, words = list(reading_rows(sheet)), list(dictionary(ways))
    dated = {"edition": edition_of(sheet), "as_of": sheet.summary.as_of.isoformat()}
    held = {**_held(sheet), "summary": as_json(sheet.summary)}
    return {**dated, **held, "readings": readings, "dictionary": words}


def edition_of(sheet: Sheet) -> str:
    """A short name of all that the sheet says: two sheets with the same one say the same."""
    return edition_on(said_digest(sheet), sheet.summary.as_of)


def edition_on(said: str, day: date) -> str:
    """The same of a sheet as of a day. said: the digest of all else that it says."""
    return hashlib.sha256(f"{said} {day.isoformat()}".encode()).hexdigest()[:EDITION_DIGITS]


def said_digest(sheet: Sheet) -> str:
    """The SHA-256 of all that the sheet says but the day it is of."""
    held = {**_held(sheet), "summary": lasting_json(sheet.summary)}
    said = [__version__, held, list(_series(sheet)), [one.address for one in sheet.pictures]]
    text = json.dumps(said, sort_keys=True, allow_nan=False)
    return hashlib.sha256(text.encode("utf-8", "surrogatepass")).hexdigest()


def _series(sheet: Sheet) -> Iterator[list[Any]]:
    """Every reading and how it was taken, in short."""
    for row in sheet.rows:
        for foot, one in row.by_foot.items():
            yield [row.measure.key, foot, [[str(at.day), at.before, at.after] for at in one.readings]]
    yield [sheet.practice.methods, *(one.visit.methods for one in sheet.summary.history)]


def dictionary(ways: Context) -> Iterator[PlainRow]:
    """Meanings: each part of the JSON, each column of the readings and each measure means, with unit and landmarks."""
    for part in PARTS:
        yield _entry("part", part, "", ways.naming.phrase(f"sheet_part_{part}"))
    for column in COLUMNS:
        yield _entry("column", column, "", ways.naming.phrase(f"sheet_column_{column}"))
    units = {measure.name: measure.unit for measure in ways.measures}
    for key, words in ways.reference.measures.items():
        meaning = ways.naming.phrase("sheet_measure", name=words.name, plain=words.plain)
        yield _entry("measure", key, units[key], meaning, words.landmarks)


def _entry(kind: str, name: str, unit: str, meaning: str, landmarks: str = "") -> PlainRow:
    return dict(zip(DICTIONARY_COLUMNS, (kind, name, unit, meaning, landmarks), strict=True))


def _held(sheet: Sheet) -> dict[str, Any]:
    practice, intervals = sheet.practice, sheet.intervals
    return {
        "why": sheet.why,
        "identity": _identity(sheet),
        "consent": _consent(sheet),
        "recorded_by": {
            "practice": practice.name,
            "trimmer": practice.trimmer,
            "phone": practice.phone,
            "email": practice.email,
        },
        "visits": [
            {"number": one.number, "day": one.day.isoformat(), "days": one.days, "trimmed": one.trimmed, "by": one.by}
            for one in sheet.visits
        ],
        "intervals": intervals and {"median": intervals.middle, "least": intervals.least, "most": intervals.most},
        "measures": [one for row in sheet.rows for one in _measures(row)],
        "scales": {scale: [_grade(one) for one in grades] for scale, grades in sheet.summary.grades.items()},
        "vet": _vet(sheet),
        "keeping": [{"what": one.what, "words": one.words, "day": one.day.isoformat()} for one in sheet.keeping],
        "weight": _weight(sheet),
        "not_measured": _not_measured_parts(sheet.not_measured),
        "amendments": _amendments(sheet),
    }


def _identity(sheet: Sheet) -> dict[str, Any]:
    horse = sheet.summary.horse
    return {
        "name": horse.name,
        "kind": horse.kind,
        "sex": horse.sex,
        "born": str(horse.born) if horse.born else None,
        "height_cm": horse.height,
        "microchip": horse.microchip,
        "ueln": horse.ueln,
        "stable": sheet.stable,
        "conformation": list(horse.conformation),
    }


def _consent(sheet: Sheet) -> dict[str, Any] | None:
    consent = sheet.summary.horse.consent
    return {"vet": consent.vet, "by": consent.by, "day": consent.date.isoformat()} if consent else None


def _measures(row: SheetRow) -> Iterator[dict[str, Any]]:
    for foot, one in row.by_foot.items():
        yield {**_figures(row, foot, one), **_method_json(row.taken[foot])}


def _figures(row: SheetRow, foot: Foot, one: MeasureSummary) -> dict[str, Any]:
    return {
        "foot": foot,
        "measure": row.measure.name,
        "zone": row.measure.zone,
        "unit": row.measure.unit,
        "day": one.day.isoformat(),
        "before": _rounded(one.before),
        "after": _rounded(one.after),
        "compared": one.moment,
        "smallest_real_change": significant(one.smallest_real_change),
        "since_last": _step(one.last),
        "since_half_year": _step(one.half_year),
        "since_first": _step(one.first),
    }


def _method_json(taken: ReadingMethod) -> dict[str, Any]:
    return {"method": taken.way, "sd": significant(taken.sd), "error": taken.error, "source": taken.source}


def _step(step: Step | None) -> dict[str, Any] | None:
    if step is None:
        return None
    day, then, now = step.since.isoformat(), _rounded(step.then), _rounded(step.now)
    return {"day": day, "then": then, "now": now, "change": _rounded(step.change)}


def _grade(one: Grade) -> dict[str, Any]:
    return {"day": one.day.isoformat(), "grade": one.grade, "note": one.note}


def _vet(sheet: Sheet) -> dict[str, Any]:
    plan = sheet.summary.horse.vet_plan
    return {"plan": _plan(plan) if plan else None, "entries": [_vet_entry(entry) for entry in sheet.vet]}


def _plan(plan: VetPlan) -> dict[str, Any]:
    return {
        "day": plan.date.isoformat(),
        "by": plan.by,
        "words": plan.words,
        "weeks": plan.weeks,
        "until": plan.until.isoformat() if plan.until else None,
    }


def _vet_entry(entry: VetEntry) -> dict[str, Any]:
    ends = [{"caution": one.caution, "foot": one.foot} for one in entry.ends]
    told = {"kind": entry.kind, "words": entry.words, "trim_agreed": entry.trim_agreed, "ends": ends}
    return {"day": entry.date.isoformat(), "by": entry.by, **told}


def _weight(sheet: Sheet) -> dict[str, Any] | None:
    found = sheet.summary.weight
    if found is None:
        return None
    return {
        "kg": round(found.kg, 1),
        "day": found.day.isoformat(),
        "made_from": found.made_from,
        "source": found.source,
    }


def _not_measured_parts(found: NotMeasured) -> dict[str, Any]:
    missing: Sequence[dict[str, Any]] = [
        {"measure": measure.name, "zone": measure.zone, "feet": list(feet)} for measure, feet in found.last_time
    ]
    return {
        "feet_at_last_visit": list(found.feet),
        "feet_not_after_trim": list(found.not_after),
        "at_last_visit": missing,
        "never": list(found.never),
    }


def _amendments(sheet: Sheet) -> list[dict[str, str]] | None:
    if sheet.amendments is None:
        return None
    return [{"visit": day.isoformat(), "text": text} for day, text in sheet.amendments]


def _rounded(value: float | None) -> float | int | None:
    return None if value is None else plain_number(value)

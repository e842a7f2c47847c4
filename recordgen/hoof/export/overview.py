"""All horses as plain rows, a row each, and what of them fits some words: who has what, since when."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.csv_text import Plain, PlainRow
from recordgen.hoof.cautions.cautions import LEVELS
from recordgen.hoof.naming import Naming
from recordgen.hoof.summary import HorseSummary
from recordgen.records.models.names import Foot

OVERVIEW_COLUMNS = (
    *("stable", "horse", "name", "kind", "class", "age_years", "last_visit", "due", "due_from", "due_to"),
    *("overdue_days", "cautions", "most_urgent", "no_trim", "ended", "why_ended"),
)
FOUND_COLUMNS = ("stable", "horse", "name", "day", "foot", "place", "what", "found", "size_mm")


def overview_row(horse: HorseSummary) -> PlainRow:
    """A horse as one row of `OVERVIEW_COLUMNS`: days as ISO 8601, age in whole years; None where nothing is known.

    most_urgent: the level of its most urgent open caution.
    """
    due, left = horse.due, horse.horse.left
    levels = {one.level for one in horse.cautions}
    return {
        "stable": horse.stable,
        "horse": horse.slug,
        "name": horse.horse.name,
        "kind": horse.horse.kind,
        "class": horse.care_class,
        "age_years": None if horse.age_months is None else horse.age_months // 12,
        "last_visit": _iso(horse.last_visit),
        "due": _iso(due.best if due else None),
        "due_from": _iso(due.earliest if due else None),
        "due_to": _iso(due.latest if due else None),
        "overdue_days": due.overdue_days if due else None,
        "cautions": len(horse.cautions),
        "most_urgent": next((level for level in LEVELS if level in levels), None),
        "no_trim": "yes" if horse.held else "no",
        "ended": _iso(left.date if left else None),
        "why_ended": left.why if left else None,
    }


@dataclass(frozen=True)
class RecordedThing:
    """Something recorded of a horse: its day, where (no foot for the whole horse), its kind, and the words."""

    day: date
    foot: Foot | None
    place: str
    kind: str
    text: str
    size_mm: float | None = None


def find_recorded(horse: HorseSummary, words: Sequence[str], since: date, naming: Naming) -> list[RecordedThing]:
    """Things recorded of a horse from a day on that fit all words, the newest first; of one place the newest alone.

    words: in any case; each begins a word of what was found, of its kind, its place or its foot.
    """
    found: dict[tuple[Foot | None, str, str], RecordedThing] = {}
    for one in _all_recorded(horse, naming):
        if one.day >= since and _fits(one, words, naming):
            found.setdefault((one.foot, one.place, one.kind), one)
    return list(found.values())


def recorded_row(horse: HorseSummary, one: RecordedThing) -> PlainRow:
    """One thing found as a row of `FOUND_COLUMNS`; sizes in mm."""
    values: tuple[Plain, ...] = (
        *(horse.stable, horse.slug, horse.horse.name, one.day.isoformat()),
        *(one.foot, one.place or None, one.kind, one.text, one.size_mm),
    )
    return dict(zip(FOUND_COLUMNS, values, strict=True))


def _all_recorded(horse: HorseSummary, naming: Naming) -> Iterator[RecordedThing]:
    for visit in horse.history:
        day = visit.visit.date
        for foot, at in visit.feet.items():
            for one in at.findings:
                yield RecordedThing(day, foot, naming.place(one.place), one.kind, one.text, one.size_mm)
        lame = visit.visit.lameness
        if lame and lame.grade:
            yield RecordedThing(day, None, "", "lameness", f"{lame.scale} {lame.grade:g}")
    yield from (RecordedThing(event.day, None, "", event.kind, event.text) for event in reversed(horse.events))


def _fits(one: RecordedThing, words: Sequence[str], naming: Naming) -> bool:
    told = " ".join([one.text, one.kind, one.place, naming.foot(one.foot) if one.foot else "", one.foot or ""])
    begins = told.casefold().replace("_", " ").replace(",", " ").split()
    return all(any(begin.startswith(word) for begin in begins) for word in _each_word(words))


def _each_word(words: Iterable[str]) -> list[str]:
    return [part for word in words for part in word.casefold().replace("_", " ").replace(",", " ").split()]


def _iso(day: date | None) -> str | None:
    return day.isoformat() if day else None

"""All records of a practice as tables of plain values, so that any other program can have them.

    practice.csv                      its settings
    stables.csv, horses.csv           one row each
    visits.csv                        one row a visit
    feet.csv                          one row a foot and visit
    photographs.csv                   one row a picture, by the name of its file
    care_notes.csv                    the words of each care note that a visit names

What is a list in the records, such as marks or a vet's advice, has a table of its own, named by both: feet_marks.csv.
What bears the name of a key there goes by the list's name too: vet.date is the vet's day, date that of the visit.
A column without a single value is left out; `dictionary.py` tells what the others mean.
"""

from __future__ import annotations

import datetime as dt
import json
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any

from pydantic import BaseModel
from pydantic_core import to_jsonable_python

from recordgen.csv_text import Plain, PlainRow, plain_number
from recordgen.records.models.fields import Birth, DaySpan
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.horse import Horse, Shared
from recordgen.records.models.practice import HorseRecord, Practice
from recordgen.records.models.reference import CareWords
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from recordgen.records.sheets.leaves import SEEN, Leaf, leaves

# A horse that was looked at and showed no sign.
NONE = "none"
KEYS = {
    "stable": "folder of the stable",
    "horse": "folder of the horse",
    "date": "day of the visit",
    "number": "number of the visit among those of one horse and day, from 1",
    "foot": "which foot",
    "position": "place in the list, from 1",
    "name": "name of the entry",
}
_PHOTO = {
    "file": "path of the picture in the records",
    "date": "day on which it was taken",
    "foot": "which foot it shows",
    "view": "from where",
    "moment": "before or after the trim, or as found",
    "width": "width",
    "height": "height",
}


@dataclass(frozen=True)
class TableColumn:
    """One column. key: it tells, with the other keys, which row it is. leaf: of the models; None for a key."""

    name: str
    meaning: str
    leaf: Leaf | None = None
    unit: str = ""

    @property
    def is_key(self) -> bool:
        """Tell whether it tells which row it is."""
        return self.leaf is None and key_of(self.name) in KEYS


@dataclass
class PlainTable:
    """One table. columns: all there may be, the keys first."""

    name: str
    columns: tuple[TableColumn, ...]
    rows: list[PlainRow] = field(default_factory=list)

    @property
    def filled_columns(self) -> tuple[TableColumn, ...]:
        """The columns with a value in any row, and the keys."""
        used = {name for row in self.rows for name, value in row.items() if value is not None}
        return tuple(one for one in self.columns if one.is_key or one.name in used)


def key_of(name: str) -> str:
    """The key that a column bears: position for vet.position, the place in an outer list."""
    return name.rpartition(".")[2]


def tables_of(practice: Practice, library: Mapping[str, CareWords]) -> list[PlainTable]:
    """The tables of a practice that hold anything; their rows in the order of the files.

    library: the care notes by name.
    """
    made = _Tables()
    made.add("practice", PracticeFile, practice.file, {})
    for stable in practice.stables:
        made.add("stables", Stable, stable.stable, {"stable": stable.slug})
    for horse in practice.horses:
        _add_horse(made, horse)
    for name in sorted(library.keys() & _care_named(practice)):
        made.add("care_notes", CareWords, library[name], {"name": name})
    return [table for table in made.tables.values() if table.rows]


def _care_named(practice: Practice) -> set[str]:
    return {note.what for horse in practice.horses for visit in horse.visits for note in visit.care}


def _add_horse(made: _Tables, record: HorseRecord) -> None:
    keys: PlainRow = {"stable": record.stable, "horse": record.slug}
    made.add("horses", Horse, record.horse, keys)
    for position, shared in enumerate(record.shared, 1):
        made.add("horses_shared", Shared, shared, {**keys, "position": position})
    for visit, number in _number_visits(record.visits):
        at: PlainRow = {**keys, "date": visit.date.isoformat(), "number": number}
        made.add("visits", Visit, visit, at)
        if visit.showed_no_sign:
            made.tables["visits"].rows[-1]["signs"] = NONE
        for foot, one in visit.feet.items():
            made.add("feet", FootVisit, one, {**at, "foot": foot})
    table = made.table("photographs", tuple(TableColumn(name, told) for name, told in _photo_columns().items()))
    for photo in record.photos:
        subject = photo.subject
        values = (photo.file.name, subject.day.isoformat(), subject.foot, subject.view, subject.moment)
        path = f"{record.stable}/{record.slug}/photos/{photo.file.name}"
        values = (path, *values[1:])
        table.rows.append({**keys, **dict(zip(_PHOTO, (*values, photo.width, photo.height), strict=True))})


def _photo_columns() -> dict[str, str]:
    return {"stable": KEYS["stable"], "horse": KEYS["horse"], **_PHOTO}


def _number_visits(visits: Sequence[Visit]) -> Iterator[tuple[Visit, int]]:
    seen: dict[dt.date, int] = {}
    for visit in visits:
        seen[visit.date] = seen.get(visit.date, 0) + 1
        yield visit, seen[visit.date]


class _Tables:
    """Gathers rows table by table."""

    def __init__(self) -> None:
        self.tables: dict[str, PlainTable] = {}

    def table(self, name: str, columns: tuple[TableColumn, ...]) -> PlainTable:
        """The table of that name, begun where it is missing."""
        return self.tables.setdefault(name, PlainTable(name, columns))

    def add(
        self, name: str, model: type[BaseModel], record: BaseModel, keys: Mapping[str, Plain], within: str = ""
    ) -> None:
        """Add a record as a row, and what is a list in it as rows of tables of their own.

        within: the list that it stands in; in none, a value that bears the name of a key is that key.
        """
        held = [leaf for leaf in leaves(model) if leaf.kind in ("value", "words", "seen")]
        own = {f"{within}.{leaf.path}" if leaf.path in keys else leaf.path: leaf for leaf in held}
        own = {column: leaf for column, leaf in own.items() if within or leaf.path not in keys}
        columns = (
            *(TableColumn(key, KEYS[key_of(key)]) for key in keys),
            *(TableColumn(column, leaf.info.description or "", leaf, leaf.unit) for column, leaf in own.items()),
        )
        row = dict(keys) | {column: _plain(_at(record, leaf.steps), leaf) for column, leaf in own.items()}
        self.table(name, columns).rows.append(row)
        around = {f"{within}.{key}" if key == "position" else key: value for key, value in keys.items()}
        for leaf in leaves(model):
            found = _at(record, leaf.steps)
            if leaf.kind == "records" and leaf.model and found:
                for position, inner in enumerate(found, 1):
                    at = {**around, "position": position}
                    self.add(_column_name(name, leaf), leaf.model, inner, at, leaf.path)
            if leaf.kind == "named" and found:
                self._add_named_values(_column_name(name, leaf), found, keys, leaf)

    def _add_named_values(self, name: str, found: Mapping[str, str], keys: Mapping[str, Plain], leaf: Leaf) -> None:
        meaning = leaf.info.description or ""
        columns = (*(TableColumn(key, KEYS[key]) for key in (*keys, "name")), TableColumn("value", meaning, leaf))
        rows = ({**keys, "name": key, "value": _plain(value, leaf)} for key, value in found.items())
        self.table(name, columns).rows.extend(rows)


def _column_name(name: str, leaf: Leaf) -> str:
    return f"{name}_{'_'.join(leaf.steps)}"


def _at(record: Any, steps: tuple[str, ...]) -> Any:
    """The value at some steps of a record; None where there is none."""
    for step in steps:
        if isinstance(record, BaseModel):
            record = getattr(record, _field(record, step))
        elif isinstance(record, Mapping):
            record = record.get(step)
        else:
            return None
    return record


def _field(record: BaseModel, step: str) -> str:
    fields = type(record).model_fields.items()
    return next(name for name, info in fields if (info.alias or name) == step)


def _plain(value: Any, leaf: Leaf) -> Plain:
    if value is None or value == ():
        return None
    if leaf.kind == "seen":
        return SEEN
    if leaf.kind == "words" and all(isinstance(one, str) for one in value):
        return _words(value)
    if leaf.kind == "words" and all(isinstance(one, DaySpan) for one in value):
        return _words(tuple(map(_span, value)))
    return _PLAIN.get(type(value), _other)(value)


def _words(values: tuple[str, ...]) -> str:
    """Several words in one cell: parted by semicolons, or line by line where one holds a semicolon itself."""
    flat = [" ".join(value.split("\n")) for value in values]
    return ("\n" if any(";" in value for value in flat) else "; ").join(flat)


def _span(value: DaySpan) -> str:
    return value.first.isoformat() if value.first == value.last else f"{value.first} to {value.last}"


def _other(value: Any) -> str:
    """Points, lines and whatever else is no single value, as JSON."""
    return value if isinstance(value, str) else json.dumps(to_jsonable_python(value), ensure_ascii=False)


_PLAIN: dict[type, Callable[[Any], Plain]] = {
    bool: lambda value: "yes" if value else "no",
    int: plain_number,
    float: plain_number,
    str: str,
    dt.date: dt.date.isoformat,
    Birth: str,
    DaySpan: _span,
}

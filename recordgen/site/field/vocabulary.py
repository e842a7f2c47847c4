"""The parts of a visit, as plain values for the field page, taken from the models: a new measure appears by itself."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection
from functools import cache
from typing import Any, Literal, get_args, get_origin

from pydantic.fields import FieldInfo

from recordgen.records.models.annotations import bare, choices, extra, is_model
from recordgen.records.models.visit import LAMENESS_SCALES, Visit

Entry = dict[str, Any]

# Entered elsewhere on the page (the day by the device's clock, feet as a screen of their own) or not on a phone, as
# warnings, which are told and seen at the computer.
LEFT_OUT = {"date", "feet", "tracings", "repeat", "methods", "seen"}

# Beyond the kind of a field: the range of a grade by its scale; a list that may also be said to be empty.
_MORE: dict[str, Entry] = {
    "grade": {"scales": {name: list(range_) for name, range_ in LAMENESS_SCALES.items()}},
    "signs": {"none": True},
}


@cache
def visit_entries() -> tuple[Entry, ...]:
    """The fields of a visit but for its day and its feet, in the order of the model."""
    return _entries(Visit, LEFT_OUT)


@cache
def foot_entries() -> tuple[Entry, ...]:
    """The fields of one foot at a visit, in the order of the model."""
    return _entries(bare(get_args(bare(Visit.model_fields["feet"].annotation))[1]), LEFT_OUT)


def _entries(model: Any, left_out: Collection[str] = ()) -> tuple[Entry, ...]:
    return tuple(_entry(name, info) for name, info in model.model_fields.items() if name not in left_out)


def _entry(name: str, info: FieldInfo) -> Entry:
    """One field: its key, what it is in words, whether it must be there, and what may be typed."""
    must = {"must": True} if info.is_required() else {}
    return {
        "key": name,
        "help": info.description or "",
        **must,
        **_kind(bare(info.annotation), info),
        **_MORE.get(name, {}),
    }


def _kind(annotation: Any, info: FieldInfo | None = None) -> Entry:
    told = extra(info)
    if "unit" in told:
        by_class = {name: one[:2] for name, one in told.get("by_class", {}).items()}
        more = {"likely_of": by_class} if by_class else {}
        return {"kind": "number", **{key: told[key] for key in ("unit", "possible", "likely")}, **more}
    if is_model(annotation):
        return {"kind": "group", "fields": list(_entries(annotation))}
    origin = get_origin(annotation)
    if origin is tuple:
        return {"kind": "list", "of": _kind(bare(get_args(annotation)[0]))}
    if origin is dict:
        key, value = get_args(annotation)
        return {"kind": "map", "keys": list(choices(key)), "of": _kind(bare(value))}
    if words := list(choices(annotation)):
        return {"kind": "choice", "choices": words}
    return {"kind": _plain(annotation)}


def _plain(annotation: Any) -> Literal["yes", "day", "number", "text"]:
    if annotation is bool:
        return "yes"
    if annotation is dt.date:
        return "day"
    return "number" if annotation in (int, float) else "text"

"""A value in the wrong shape, written as it was probably meant: `next: 6` as `next: {weeks: 6}`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from pydantic import BaseModel, ValidationError

from recordgen.nearest import nearest
from recordgen.problems import Step, as_typed, is_visible
from recordgen.records.models.annotations import bare, choices, inside, is_model
from recordgen.records.models.fields import CURLY
from recordgen.records.yaml.unknown import MEANT_KEYS
from recordgen.records.yaml.write import on_one_line
from recordgen.sentences import Said, say

# Text that needs no quotes in braces or brackets, and is short enough to be shown again.
_PLAIN = re.compile(r"[^\W_](?:[\w .+/-]|:(?=/)){0,59}")
_PLAIN_LIST = re.compile(r"[^\W_][\w .+/–-]*([,;] ?[^\W_][\w .+/–-]*)*")
LONGEST_LIST = 60
LONGEST_VALUE = 200
# Under these a sentence goes before it goes under a name.
_FOR_SENTENCES = ("words",)
# What goes with a value and is none itself.
_BESIDE = ("reason", "note", "private_note")
_FILL_IN = "…"


def as_keys(model: type[BaseModel], given: Any) -> str | None:
    """A value as a record with keys: under the first key that takes it, the other keys it needs left to fill in.

    model: the record that belongs there. Where no key takes it, the key that is probably meant is left to fill in, too;
    None where the value is no short text.
    """
    sides = _two_sides(model, given)
    if sides:
        return sides
    plain = given.strip(CURLY) if isinstance(given, str) else ""
    if not _PLAIN.fullmatch(plain):
        return None
    names = sorted({*model.model_fields} - {*_BESIDE}, key=lambda name: _order(model, name))
    for name in names:
        if write := mend(model, name, plain):
            return _with_key(model, name, write)
    meant = _key_meant(model, plain)
    is_yes_or_no = meant and bare(model.model_fields[meant].annotation) is bool
    return _with_key(model, meant or "", "yes" if is_yes_or_no else _FILL_IN)


def _order(model: type[BaseModel], name: str) -> tuple[bool, int]:
    return name not in _FOR_SENTENCES, list(model.model_fields).index(name)


def as_list(model: Any, name: Step, given: Any) -> str | None:
    """A value as a list of its parts between commas, each as it was probably meant; None where it is no short text.

    model: the record around the list. name: of the list.
    """
    if isinstance(given, dict):
        item = inside(inside(model, name), 0)
        shown = on_one_line([given]) if is_model(item) and _is_flat(given) else ""
        return shown if 0 < len(shown) <= LONGEST_LIST else None
    plain = given.strip(CURLY) if isinstance(given, str) else ""
    if len(plain) > LONGEST_LIST or not _PLAIN_LIST.fullmatch(plain):
        return None
    item = inside(inside(model, name), 0)
    parts = [part.strip() for part in re.split("[,;]", plain)]
    meant = [_item_meant(model, str(name), item, part) or part for part in parts]
    return f"[{', '.join(meant)}]"


def correct_line(steps: Sequence[Step], value: str | None, otherwise: Said) -> Said:
    """The way out: the corrected value behind its key, where it is known, shows as it is and is short enough."""
    if not value or not steps or len(value) > LONGEST_VALUE or not all(map(is_visible, value)):
        return otherwise
    if isinstance(steps[-1], str):
        return say("Write {key}: {value}", key=as_typed(steps[-1]), value=value)
    return say("Write {value}", value=value)


def mend(model: type[BaseModel], name: str, given: Any) -> str | None:
    """A text as one key of a record takes it: itself, or what it refuses it for; None where it is neither.

    Whatever else is missing in the record does not matter.
    """
    try:
        model.model_validate({_typed_as(model, name): given})
    except ValidationError as wrong:
        errors = [error for error in wrong.errors(include_url=False) if error["loc"][:1] == (_typed_as(model, name),)]
    else:
        errors = []
    if errors:
        return (errors[0].get("ctx") or {}).get("write") or None if len(errors) == 1 else None
    is_word = bare(model.model_fields[name].annotation) is str
    return None if is_word and str(given).lower() in ("yes", "no") else str(given)


def _with_key(model: type[BaseModel], name: str, value: str) -> str:
    """The record in braces: the keys it needs, and the one of the name with its value."""
    wanted = [one for one, info in model.model_fields.items() if one == name or info.is_required()]
    first = wanted or list(model.model_fields)[:1]
    return "{" + ", ".join(f"{_typed_as(model, one)}: {value if one == name else _FILL_IN}" for one in first) + "}"


def _two_sides(model: type[BaseModel], given: Any) -> str | None:
    """33/32, or a list of two, where a record holds the inner and the outer side."""
    parts = given.split("/") if isinstance(given, str) else given
    if not {"medial", "lateral"} <= set(model.model_fields) or not isinstance(parts, list) or len(parts) != 2:
        return None
    sides = [mend(model, name, part) for name, part in zip(("medial", "lateral"), parts, strict=True)]
    return f"{{medial: {sides[0]}, lateral: {sides[1]}}}" if all(sides) else None


def _key_meant(model: type[BaseModel], typed: str) -> str | None:
    named = MEANT_KEYS.get(typed.lower(), "")
    return named if named in model.model_fields else nearest(typed, {*model.model_fields} - {*_BESIDE})


def _item_meant(model: Any, name: str, item: Any, part: str) -> str | None:
    """One item of a list as it was probably meant; None where nothing is wrong with it, or nothing is known."""
    if words := list(choices(item)):
        return nearest(part, words)
    if not is_model(model):
        return None
    try:
        model.model_validate({_typed_as(model, name): [part]})
    except ValidationError as wrong:
        errors = [error for error in wrong.errors() if error["loc"][:1] == (_typed_as(model, name),)]
        told = (errors[0].get("ctx") or {}).get("write") if len(errors) == 1 else None
        return told or (as_keys(item, part) if errors and is_model(item) else None)
    return None


def _is_flat(given: dict[str, Any]) -> bool:
    return all(isinstance(value, str) for value in given.values())


def _typed_as(model: type[BaseModel], name: str) -> str:
    return model.model_fields[name].alias or name

"""JSON Schema of the files of a practice, so that an editor completes and checks while one types.

It is kinder than reading: it lets empty values stand, and leaves to reading what a schema cannot tell.
"""

from __future__ import annotations

from collections.abc import Iterator
from typing import Any, Literal

from recordgen.records.models.fields import Record
from recordgen.records.models.horse import Horse, SharedFile
from recordgen.records.models.names import FEET, FOOT_SPELLINGS, ZONES
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit

FileKind = Literal["practice", "stable", "horse", "visit", "shared"]
Schema = dict[str, Any]

MODELS: dict[FileKind, type[Record]] = {
    "practice": PracticeFile,
    "stable": Stable,
    "horse": Horse,
    "visit": Visit,
    "shared": SharedFile,
}
TITLES: dict[FileKind, str] = {
    "practice": "The practice",
    "stable": "A stable",
    "horse": "A horse",
    "visit": "A visit",
    "shared": "Whom a record was shared with",
}
_KEPT = ("anyOf", "type", "pattern", "format", "minItems", "maxItems", "if", "then", "else")
DIALECT = "https://json-schema.org/draft/2020-12/schema"


def schema(kind: FileKind) -> Schema:
    """The JSON Schema (2020-12) of one kind of file, the same on every run.

    Descriptions carry the unit; `minimum` and `maximum` hold for plain numbers, in that unit; `x-unit`, `x-likely`
    and `x-basis` tell the unit, the range that is not asked about, and where that range comes from;
    `x-likely-by-class` the same for foals, yearlings, donkeys, ponies, heavy horses and horses.
    """
    made = MODELS[kind].model_json_schema()
    parts = {name: _object(name, part, ["object", "null"]) for name, part in sorted(made.pop("$defs", {}).items())}
    whole = _object(TITLES[kind], made, "object")
    return {"$schema": DIALECT, **whole, **({"$defs": parts} if parts else {})}


def _object(title: str, made: Schema, kinds: str | list[str]) -> Schema:
    required = made.get("required", [])
    fields = {
        key: _value(field) if key in required else _or_empty(_value(field)) for key, field in made["properties"].items()
    }
    about = {"title": title, "description": made["description"], "type": kinds, "properties": fields}
    return about | ({"required": required} if required else {}) | {"additionalProperties": False}


def _value(made: Schema) -> Schema:
    """One value: its branches folded into one, our own keys in place of the model's."""
    folded = _fold(made)
    told: Schema = {key: folded[key] for key in ("$ref", "description") if key in folded}
    if "$ref" in folded:
        return told
    if "enum" in folded:
        told |= _words(folded["enum"])
    else:
        told |= {key: folded[key] for key in _KEPT if key in folded}
    told |= _range(folded) | _names(folded)
    if "items" in folded:
        told["items"] = _value(folded["items"])
    return told | ({"default": folded["default"]} if folded.get("default") not in (None, [], {}) else {})


def _words(words: list[Any]) -> Schema:
    """The words to choose from; those for feet and zones in every spelling."""
    if not set(words) & {*FEET, *ZONES}:
        return {"enum": words}
    return {"anyOf": [{"enum": words}, {"type": "string", "pattern": _any_spelling(words)}]}


def _fold(made: Schema) -> Schema:
    branches = [branch for branch in made.get("anyOf", []) if branch != {"type": "null"}]
    own = {key: value for key, value in made.items() if key != "anyOf"}
    if len(branches) == 2 and branches[0].get("type") == "string" and "$ref" in branches[1]:
        # Not `anyOf`: an editor would underline the record as a whole, and so the very value inside.
        return own | {"if": {"type": "object"}, "then": _value(branches[1]), "else": _or_empty(_value(branches[0]))}
    if len(branches) > 1:
        return own | {"anyOf": [_value(branch) for branch in branches]}
    return (_fold(branches[0]) if branches else {}) | own


def _range(folded: Schema) -> Schema:
    if "unit" not in folded:
        return {"x-unit": folded["x-unit"]} if "x-unit" in folded else {}
    low, high = folded["possible"]
    return {
        "minimum": low,
        "maximum": high,
        "x-unit": folded["unit"],
        "x-likely": folded["likely"],
        "x-basis": folded["basis"],
        **({"x-likely-by-class": folded["by_class"]} if "by_class" in folded else {}),
    }


def _names(folded: Schema) -> Schema:
    """Keys of a mapping: the one spelling of each is offered, the other ones are allowed."""
    if "additionalProperties" not in folded:
        return {}
    inside = _or_empty(_value(folded["additionalProperties"]))
    if "properties" not in folded:
        return {"additionalProperties": inside}
    names = list(folded["properties"])
    return {
        "properties": dict.fromkeys(names, inside),
        "patternProperties": {f"^(?!({'|'.join(names)})$){_any_spelling(names)[1:]}": inside},
        "additionalProperties": False,
    }


def _any_spelling(names: list[str]) -> str:
    """A pattern for names in small or capital letters, with space, underscore or hyphen between words."""
    spelled = (name for name in names if name in ZONES) if set(names) & set(ZONES) else _spellings_of_feet(names)
    return f"^({'|'.join(''.join(map(_either_case, name)) for name in spelled)})$"


def _spellings_of_feet(names: list[str]) -> Iterator[str]:
    return (spelling for spelling, foot in FOOT_SPELLINGS.items() if foot in names)


def _either_case(sign: str) -> str:
    return "[ _-]" if sign in " _" else f"[{sign.upper()}{sign}]"


def _or_empty(told: Schema) -> Schema:
    """The same, with nothing allowed as well."""
    if "if" in told:
        return told
    if "anyOf" in told:
        return told | {"anyOf": [*told["anyOf"], {"type": "null"}]}
    if "enum" in told:
        return told | {"enum": [*told["enum"], None]}
    if "$ref" in told:
        return told
    kinds = told["type"] if isinstance(told["type"], list) else [told["type"]]
    return told | {"type": [*kinds, "null"]}

"""A visit's record as the text of its file, as a person would have typed it: in the models' order, briefly."""

from __future__ import annotations

import re
from collections.abc import Iterable, Mapping
from typing import Any, get_args, get_origin

from recordgen.records.models.annotations import bare, choices, inside, is_model
from recordgen.records.models.names import FEET, typed_foot
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.write import as_yaml, scalar

Values = dict[str, Any]

_LINE_ENDS = re.compile("\r\n|[\r\x85\u2028\u2029]")
# Signs that a record cannot hold: nobody sees them, and no file of text shows them.
_UNSEEN = re.compile("[\x00-\x08\x0b\x0c\x0e-\x1f\x7f-\x9f\ud800-\udfff\ufeff\ufffe\uffff]")


def visit_text(record: Mapping[str, Any], comments: Iterable[str] = (), near_and_off: bool = False) -> str:
    """The text of a visit's file.

    record: under the keys of the models. comments: lines to stand above it, without their `#`.
    near_and_off: feet are named near_fore and off_fore rather than left_fore and right_fore.
    """
    values = in_order(record, Visit)
    if near_and_off and "feet" in values:
        named = {foot: typed_foot(foot, near_and_off) for foot in FEET}
        values["feet"] = {named.get(foot, foot): found for foot, found in values["feet"].items()}
    head = "".join(f"# {line}".rstrip() + "\n" for line in comments)
    return head + as_yaml(values)


def in_order(value: Any, annotation: Any) -> Any:
    """A value with its keys in the order of the models; keys that are not known there stand last.

    annotation: the bare type the value is read as.
    """
    if isinstance(value, list):
        return [in_order(item, inside(annotation, index)) for index, item in enumerate(value)]
    if not isinstance(value, Mapping):
        return value
    order = _keys(annotation)
    known = sorted(value, key=lambda key: order.index(key) if key in order else len(order))
    return {key: in_order(value[key], inside(annotation, key)) for key in known}


def _keys(annotation: Any) -> list[str]:
    if is_model(annotation):
        return [info.alias or name for name, info in annotation.model_fields.items()]
    return list(choices(bare(get_args(annotation)[0]))) if get_origin(annotation) is dict else []


def as_texts(value: Any) -> Any:
    """A value as a reader of its file sees it: text for every number and yes or no, nothing for what is empty."""
    if isinstance(value, Mapping):
        typed = {_key(key): as_texts(inner) for key, inner in value.items()}
        return {key: inner for key, inner in typed.items() if inner is not None}
    if isinstance(value, list | tuple):
        return [inner for inner in map(as_texts, value) if inner is not None]
    if isinstance(value, str):
        return _UNSEEN.sub("", _LINE_ENDS.sub("\n", value)).strip() or None
    return None if value is None else scalar(value)


def _key(key: str) -> str:
    """A key that can stand in a file; one of which nothing is seen gets a sign."""
    return "".join(sign if sign.isprintable() else " " for sign in key).strip() or "?"

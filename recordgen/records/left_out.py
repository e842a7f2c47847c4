"""Empty values count as left out, so that a form may keep the lines that nobody filled in."""

from __future__ import annotations

from typing import Any, get_origin

from recordgen.records.names import foot_named, zone_named
from recordgen.records.shape import inside, is_model


def without_empty(value: Any, annotation: Any) -> Any:
    """A value less its keys that hold nothing; None where it held keys and none of them was filled in.

    annotation: the bare type the value is read as. Keys that are not known there stay, so that they are told.
    """
    if isinstance(value, list):
        return [without_empty(item, inside(annotation, index)) for index, item in enumerate(value)]
    if not isinstance(value, dict):
        return value
    filled: dict[str, Any] = {}
    for key, item in value.items():
        left = without_empty(item, inside(annotation, key))
        if left is not None:
            filled[key] = left
        elif not is_known(annotation, key):
            filled[key] = {}
    return filled if filled or not value else None


def is_known(annotation: Any, key: str) -> bool:
    """Whether a value of a bare type may hold this key, however a foot or a zone is spelled."""
    if is_model(annotation):
        return key in annotation.model_fields
    return get_origin(annotation) is dict and (
        not is_model(inside(annotation, key)) or bool(foot_named(key) or zone_named(key))
    )

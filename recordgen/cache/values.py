"""Values as JSON and back: plain ones, days, sentences, tuples, mappings, and dataclasses of a given list."""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import fields, is_dataclass
from datetime import date
from typing import Any

from recordgen.sentences import Said, said_again


def as_json(value: object, classes: Mapping[str, type]) -> Any:
    """A value as JSON holds it. classes: by name, the dataclasses that may be in it. Raises TypeError for any other."""
    if isinstance(value, Said):
        return {"said": type(value).__name__, "is": as_json(value.made_of, classes)}
    if value is None or isinstance(value, (bool, int, float, str)):
        return value
    if isinstance(value, date):
        return {"day": value.toordinal()}
    if isinstance(value, tuple):
        return [as_json(one, classes) for one in value]
    if isinstance(value, dict):
        if all(isinstance(key, str) for key in value):
            return {"map": {key: as_json(one, classes) for key, one in value.items()}}
    elif is_dataclass(value) and classes.get(name := type(value).__name__) is type(value):
        return {"of": name, "is": [as_json(getattr(value, one.name), classes) for one in fields(value)]}
    raise TypeError(f"a {type(value).__name__} cannot be kept")


def from_json(held: Any, classes: Mapping[str, type]) -> Any:
    """The value again. Dataclasses get their fields as they were, without a call of anything of theirs."""
    if isinstance(held, list):
        return tuple(from_json(one, classes) for one in held)
    if not isinstance(held, dict):
        return held
    if "day" in held:
        return date.fromordinal(held["day"])
    if "said" in held:
        return said_again(held["said"], from_json(held["is"], classes))
    if "map" in held:
        return {key: from_json(one, classes) for key, one in held["map"].items()}
    kind = classes[held["of"]]
    made: Any = object.__new__(kind)
    for one, content in zip(fields(kind), held["is"], strict=True):
        object.__setattr__(made, one.name, from_json(content, classes))
    return made

"""One spelling for a value, by which what was made from it is named."""

from __future__ import annotations

import hashlib
from collections.abc import Mapping
from collections.abc import Set as AbstractSet
from dataclasses import fields, is_dataclass
from datetime import date


def key_of(*values: object) -> str:
    """The name for what is made from some values: the SHA-256 of their spelling. Raises TypeError as `canonical`."""
    return hashlib.sha256(canonical(values).encode("utf-8", "surrogatepass")).hexdigest()


def canonical(value: object) -> str:
    """One spelling for a value, the same in every process and for every order of a mapping's keys.

    Raises TypeError for a value that has no such spelling.
    """
    if value is None or isinstance(value, (bool, int, float, str, bytes, date)):
        return repr(value)
    if is_dataclass(value) and not isinstance(value, type):
        parts = [f"{field.name}={canonical(getattr(value, field.name))}" for field in fields(value)]
        return f"{type(value).__qualname__}({','.join(parts)})"
    if isinstance(value, Mapping):
        return "{" + ",".join(sorted(f"{canonical(k)}:{canonical(v)}" for k, v in value.items())) + "}"
    if isinstance(value, (list, tuple)):
        return "[" + ",".join(canonical(item) for item in value) + "]"
    if isinstance(value, AbstractSet):
        return "<" + ",".join(sorted(canonical(item) for item in value)) + ">"
    raise TypeError(f"nothing can be kept by a {type(value).__qualname__}")

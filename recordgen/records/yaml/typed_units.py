"""Lengths of a message in the unit in which somebody typed the value that it is about."""

from __future__ import annotations

import re
from collections.abc import Callable
from typing import Any

from recordgen.records.models.quantity import INCHES
from recordgen.units import as_on_a_rule

_MM_IN = {"mm": 1.0, "cm": 10.0}
_UNIT = re.compile(r"[^\d\s.]*\.?$")


def teller(typed: Any, unit: str) -> tuple[Callable[[float], str], str]:
    """A writer of values that are kept in `unit`, and the unit it writes them in: that of what was typed.

    typed: the text; what is none, or has no unit of its own, is told as it is kept.
    """
    found = _UNIT.search(typed.strip()) if isinstance(typed, str) else None
    if unit in _MM_IN and found and found[0].lower().rstrip(".") in INCHES:
        return lambda value: as_on_a_rule(value * _MM_IN[unit]), "in"
    return lambda value: f"{value:g}", unit

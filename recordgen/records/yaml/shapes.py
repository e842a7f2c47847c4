"""A value in the wrong shape, written as it was probably meant: `next: 6` as `next: {weeks: 6}`."""

from __future__ import annotations

import re
from collections.abc import Sequence
from typing import Any

from pydantic import BaseModel, ValidationError

from recordgen.problems import Step

# Text that needs no quotes in braces or brackets, and is short enough to be shown again.
_PLAIN = re.compile(r"[^\W_][\w .+/-]{0,39}")
_PLAIN_LIST = re.compile(r"[^\W_][\w .+/-]*(, [^\W_][\w .+/-]*)*")
LONGEST_LIST = 60


def as_keys(model: type[BaseModel], given: Any) -> str | None:
    """A text as a record with keys: under the first key that takes it, the other keys it needs left to fill in.

    model: the record that belongs there. None where no key takes the text.
    """
    if not isinstance(given, str) or not _PLAIN.fullmatch(given):
        return None
    key = next((name for name in model.model_fields if _takes(model, name, given)), None)
    if key is None:
        return None
    wanted = (name for name, info in model.model_fields.items() if name == key or info.is_required())
    return "{" + ", ".join(f"{_typed_as(model, name)}: {given if name == key else '…'}" for name in wanted) + "}"


def as_list(given: Any) -> str | None:
    """A text as a list of its parts between commas; None where it is no plain text."""
    fits = isinstance(given, str) and len(given) <= LONGEST_LIST and _PLAIN_LIST.fullmatch(given)
    return f"[{given}]" if fits else None


def correct_line(steps: Sequence[Step], value: str | None, otherwise: str) -> str:
    """The way out: the corrected line where it is known, behind its key or its dash."""
    if value is None or not steps:
        return otherwise
    return f"Write {f'{steps[-1]}: ' if isinstance(steps[-1], str) else '- '}{value}"


def _typed_as(model: type[BaseModel], name: str) -> str:
    return model.model_fields[name].alias or name


def _takes(model: type[BaseModel], name: str, given: str) -> bool:
    """Whether a text is right for one key of a record, whatever else is missing there."""
    try:
        model.model_validate({_typed_as(model, name): given})
    except ValidationError as wrong:
        return all(error["type"] == "missing" for error in wrong.errors())
    return True

"""All texts of the reference tables, and what none of them says."""

from __future__ import annotations

import re
from collections.abc import Iterator

from recordgen.records.models.fields import Record

NEVER_SAID = re.compile(r"\b(diagnos\w*|healthy|cures?|cured|fines?|guarantee\w*)\b", re.IGNORECASE)


def texts(value: object) -> Iterator[str]:
    """Every text inside a table."""
    if isinstance(value, str):
        yield value
    elif isinstance(value, Record):
        yield from texts(list(value.__dict__.values()))
    elif isinstance(value, dict):
        yield from texts(list(value.values()))
    elif isinstance(value, list | tuple):
        for one in value:
            yield from texts(one)

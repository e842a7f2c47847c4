"""Values of a visit's file at each of its versions, and those in which two versions differ."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from pydantic import BaseModel, ValidationError

from recordgen.git.repository import contents_of
from recordgen.problems import Step
from recordgen.records.models.lines.points import Spot
from recordgen.records.models.names import FEET, ZONES
from recordgen.records.models.visit import BESIDE_THE_VISIT, Visit
from recordgen.records.yaml.text import LARGEST_FILE_BYTES
from recordgen.records.yaml.tree import document
from recordgen.records.yaml.values import without_empty

_IN_ORDER = {name: number for number, name in enumerate((*FEET, *ZONES))}


@dataclass(frozen=True)
class Difference:
    """A value that two versions differ in: its steps, and the value before and after; None where there was none."""

    steps: tuple[Step, ...]
    before: Any
    after: Any


def visits_of(folder: Path, names: Collection[str]) -> dict[str, Visit | None]:
    """The visit that each content in git holds; None where it cannot be read, or is not there.

    folder: any folder of the repository. names: git's names of the contents. Raises GitTrouble.
    """
    return {name: _visit(raw) if raw is not None else None for name, raw in contents_of(folder, names)}


def _visit(raw: bytes) -> Visit | None:
    if len(raw) > LARGEST_FILE_BYTES:
        return None
    found = document("", raw)
    if found.problems:
        return None
    filled = without_empty(found.values, Visit) if found.has_empty else found.values
    try:
        return Visit.model_validate(filled or {})
    except ValidationError:
        return None


def differences(befores: Sequence[Visit], after: Visit) -> list[Difference]:
    """The values of a visit that none of the versions before it had there, told against the first of them.

    befores: one, or one for each line of work that was joined; lists are compared by place. Comes out in the order of
    the models.
    """
    was = [dict(_values(before)) for before in befores]
    now = dict(_values(after))
    places = sorted({place for values in (*was, now) for place in values})
    new = (place for place in places if all(values.get(place) != now.get(place) for values in was))
    return [Difference(tuple(step for _, step in place), was[0].get(place), now.get(place)) for place in new]


# Sorts as the models do; the second is the step itself.
_Place = tuple[tuple[int, Any], ...]


def _values(value: Any, at: _Place = ()) -> Iterator[tuple[_Place, Any]]:
    """Every single value in a record, with its place."""
    for step, inner in _inside(value):
        place = (*at, step)
        if count_points(inner) is None and isinstance(inner, BaseModel | dict | tuple):
            yield from _values(inner, place)
        elif inner is not None:
            yield place, inner


def count_points(value: Any) -> int | None:
    """Tell how many points of a tracing a value holds: they are one value, not a hundred; None for any other value."""
    if isinstance(value, Spot):
        return 1
    return len(value) if isinstance(value, tuple) and value and isinstance(value[0], Spot) else None


def _inside(value: Any) -> Iterator[tuple[tuple[int, Step], Any]]:
    if isinstance(value, BaseModel):
        for number, name in enumerate(type(value).model_fields):
            if name not in BESIDE_THE_VISIT:
                yield (number, name), getattr(value, name)
    elif isinstance(value, dict):
        yield from (((_IN_ORDER.get(key, len(_IN_ORDER)), key), inner) for key, inner in value.items())
    else:
        yield from (((number, number), inner) for number, inner in enumerate(value))

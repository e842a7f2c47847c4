"""The models' demands at a place of a record: its type, its field, its words, and its likely range."""

from __future__ import annotations

import types
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from functools import cache
from typing import Annotated, Any, Literal, TypeGuard, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from recordgen.problems import Step
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import ZONES
from recordgen.records.models.ranges import Likely


def annotation_at(model: Any, steps: Sequence[Step]) -> Any:
    """The type a model gives the value at `steps`, bare of None and annotations; object where there is none."""
    annotation = bare(model)
    for step in steps:
        annotation = inside(annotation, step)
    return annotation


def field_at(model: Any, steps: Sequence[Step]) -> FieldInfo | None:
    """The field of a model that holds the value at `steps`, with its description, unit and range; None if none does."""
    around = annotation_at(model, steps[:-1])
    return around.model_fields.get(str(steps[-1])) if is_model(around) else None


@cache
def inside(annotation: Any, step: Step) -> Any:
    """The bare type of what stands under `step` in a value of a bare type; object where nothing is expected."""
    if is_model(annotation):
        info = annotation.model_fields.get(str(step))
        return bare(info.annotation) if info else object
    if get_origin(annotation) is dict:
        return bare(get_args(annotation)[1])
    if get_origin(annotation) is tuple and isinstance(step, int):
        return bare(get_args(annotation)[0])
    return object


def bare(annotation: Any) -> Any:
    """A type without its annotations and without None."""
    while get_origin(annotation) is Annotated:
        annotation = get_args(annotation)[0]
    if get_origin(annotation) in (Union, types.UnionType):
        parts = [part for part in get_args(annotation) if part is not types.NoneType]
        return bare(parts[0]) if len(parts) == 1 else annotation
    return annotation


def is_model(annotation: Any) -> TypeGuard[type[BaseModel]]:
    """Tell whether a type is one of the records."""
    return isinstance(annotation, type) and issubclass(annotation, BaseModel)


def choices(annotation: Any) -> Iterator[str]:
    """The words a value of this type may be chosen from; none where it is free."""
    if get_origin(annotation) is Literal:
        yield from map(str, get_args(annotation))
        return
    for part in get_args(annotation):
        yield from choices(part)


def extra(info: FieldInfo | None) -> dict[str, Any]:
    """The unit, the possible and the likely range of a field and what that rests on, where it has them."""
    return info.json_schema_extra if info and isinstance(info.json_schema_extra, dict) else {}


@dataclass(frozen=True)
class Range:
    """From low to high a value is not asked about. unit: of both. basis: a source, common practice or a judgement.

    by_class: the same for the classes of animals of which more is known.
    """

    low: float
    high: float
    unit: str
    basis: str
    by_class: Mapping[str, Likely] = field(default_factory=dict)


def range_at(path: str) -> Range | None:
    """The range of a place in a foot's record, such as @.toe_length or wall.*.flare; None where no quantity stands.

    path: as in the table of measures, with @ for the moment and * for the zone.
    """
    names = {"@": "before", "*": ZONES[0]}
    found = extra(field_at(FootVisit, [names.get(step, step) for step in path.split(".")]))
    if "likely" not in found:
        return None
    low, high = found["likely"]
    by_class = {name: Likely(*one) for name, one in found.get("by_class", {}).items()}
    return Range(low, high, found["unit"], found["basis"], by_class)

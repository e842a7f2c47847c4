"""What the models expect at a place of a record: its type, its field, the words it may be chosen from."""

from __future__ import annotations

import types
from collections.abc import Iterator, Sequence
from functools import cache
from typing import Annotated, Any, Literal, TypeGuard, Union, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

Step = str | int


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
    """Whether a type is one of the records."""
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

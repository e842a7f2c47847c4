"""The values of a record in the order of its models, each by its steps: what the columns of a table can hold."""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from functools import cache
from typing import Any, Literal, get_args, get_origin

from pydantic import BaseModel
from pydantic.fields import FieldInfo

from recordgen.records.models.annotations import bare, choices, extra, is_model
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import ZONES

# A single value; several words; a list of records, which is a table of its own; words under names of their own; a
# finding that tells something by being there, even without a size.
LeafKind = Literal["value", "words", "records", "named", "seen"]
# What such a finding says in a cell.
SEEN = "seen"
FINDINGS = ("separation", "crack")


@dataclass(frozen=True)
class Leaf:
    """One value of a record. steps: the keys on the way to it. model: of the records of a list; None elsewhere."""

    steps: tuple[str, ...]
    info: FieldInfo
    kind: LeafKind
    model: type[BaseModel] | None = None

    @property
    def path(self) -> str:
        """The steps as the heading of a column."""
        return ".".join(self.steps)

    @property
    def unit(self) -> str:
        """The unit of a quantity; empty elsewhere."""
        return str(extra(self.info).get("unit", ""))

    @property
    def codes(self) -> tuple[str, ...]:
        """The words that it may be; none where it is free."""
        if self.kind == "seen":
            return (SEEN,)
        inner = _item(bare(self.info.annotation)) if self.kind == "words" else bare(self.info.annotation)
        return ("yes", "no") if inner is bool else tuple(choices(inner))

    @property
    def is_yes_or_no(self) -> bool:
        """Tell whether it is yes or no."""
        return bare(self.info.annotation) is bool


@cache
def leaves(model: type[BaseModel]) -> tuple[Leaf, ...]:
    """The values of a model's records, in its order; feet are left out, since each has a row of its own."""
    return tuple(_leaves(model, ()))


def _leaves(model: type[BaseModel], steps: tuple[str, ...]) -> Iterator[Leaf]:
    for name, info in model.model_fields.items():
        at = (*steps, info.alias or name)
        annotation = bare(info.annotation)
        if is_model(annotation):
            if name in FINDINGS:
                yield Leaf(at, info, "seen")
            yield from _leaves(annotation, at)
        elif get_origin(annotation) is dict:
            yield from _leaves_by_key(annotation, info, at)
        elif get_origin(annotation) is tuple:
            item = _item(annotation)
            yield Leaf(at, info, "records", item) if is_model(item) else Leaf(at, info, "words")
        else:
            yield Leaf(at, info, "value")


def _leaves_by_key(annotation: Any, info: FieldInfo, at: tuple[str, ...]) -> Iterator[Leaf]:
    inner = bare(get_args(annotation)[1])
    if inner is FootVisit:
        return
    if is_model(inner):
        for zone in ZONES:
            yield from _leaves(inner, (*at, zone))
    else:
        yield Leaf(at, info, "named")


def _item(annotation: Any) -> Any:
    return bare(get_args(annotation)[0])

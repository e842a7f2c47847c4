"""Points of a picture as they are written: one, a line of them, and the size of the picture."""

from __future__ import annotations

import math
from typing import Annotated, Any, NamedTuple

from pydantic import BeforeValidator, PlainSerializer, PlainValidator, WithJsonSchema

from recordgen.problems import quoted
from recordgen.records.models import quantity as q
from recordgen.records.models.fields import refusal

SMALLEST_IMAGE, LARGEST_IMAGE = 100, 20_000


class Spot(NamedTuple):
    """A point of the picture, in px from its top left corner, y down."""

    x: float
    y: float


class Size(NamedTuple):
    """The size of a picture in px."""

    width: int
    height: int


def _pair(value: Any, form: str, way_out: str) -> list[float]:
    if not isinstance(value, list | tuple) or len(value) != 2:
        raise refusal("tracing-form", form, way_out)
    return [_number(one, form, way_out) for one in value]


def _number(value: Any, form: str, way_out: str) -> float:
    if isinstance(value, int | float) and math.isfinite(value):
        return value
    if not isinstance(value, str):
        raise refusal("tracing-form", form, way_out)
    try:
        return q.quantity(value, q.NO_UNIT)
    except q.NotAQuantity as why:
        raise refusal(
            "tracing-form", f"{form}, and {quoted(value)} does not read as a number: {why}", why.way_out or way_out
        ) from None


def _spot(value: Any) -> Spot:
    return Spot(*_pair(value, "a point is written [x, y]", "Write two numbers in px, such as [640, 480]"))


def _size(value: Any) -> Size:
    form, way_out = "its size is written [width, height]", "Write two whole numbers in px, such as [1600, 1200]"
    sides = _pair(value, form, way_out)
    for side in sides:
        if side != int(side):
            raise refusal("tracing-form", f"{form}, and {side:g} is not a whole number", way_out)
        if not SMALLEST_IMAGE <= side <= LARGEST_IMAGE:
            message = f"{side:.0f} px is not possible; {SMALLEST_IMAGE} to {LARGEST_IMAGE} px is"
            raise refusal("tracing-image-size", message, "Type the width and the height anew")
    return Size(*map(int, sides))


def _points(value: Any) -> Any:
    """A list of points; where it holds no list at all, one refusal for the whole instead of one for each item."""
    if not isinstance(value, list | tuple) or (value and not any(isinstance(item, list | tuple) for item in value)):
        raise refusal(
            "tracing-form", "its points are written [[x, y], [x, y]]", "Write each point in brackets of its own"
        )
    return value


def _schema(items: dict[str, Any], least: int, most: int) -> WithJsonSchema:
    return WithJsonSchema({"type": "array", "items": items, "minItems": least, "maxItems": most})


Point = Annotated[Spot, PlainValidator(_spot), PlainSerializer(tuple), _schema({"type": "number"}, 2, 2)]
Line = Annotated[tuple[Point, ...], BeforeValidator(_points)]
Image = Annotated[Size, PlainValidator(_size), PlainSerializer(tuple), _schema({"type": "integer"}, 2, 2)]

"""Points of a picture as they are written: one, a line of them, and the size of the picture."""

from __future__ import annotations

import math
from typing import Annotated, Any, NamedTuple

from pydantic import BeforeValidator, PlainSerializer, PlainValidator, WithJsonSchema

from recordgen.problems import quoted
from recordgen.records.models import quantity as q
from recordgen.records.models.fields import refusal
from recordgen.sentences import Said, say

SMALLEST_IMAGE, LARGEST_IMAGE = 100, 20_000


class Spot(NamedTuple):
    """A point of the picture, in px from its top left corner, y down."""

    x: float
    y: float


class Size(NamedTuple):
    """The size of a picture in px."""

    width: int
    height: int


def _pair(value: Any, form: Said, way_out: Said) -> list[float]:
    if not isinstance(value, list | tuple) or len(value) != 2:
        raise refusal("tracing-form", form, way_out)
    return [_number(one, form, way_out) for one in value]


def _number(value: Any, form: Said, way_out: Said) -> float:
    if isinstance(value, int | float) and math.isfinite(value):
        return value
    if not isinstance(value, str):
        raise refusal("tracing-form", form, way_out)
    try:
        return q.quantity(value, q.NO_UNIT)
    except q.NotAQuantity as why:
        raise refusal(
            "tracing-form",
            say("{form}, and {value} does not read as a number: {why}", form=form, value=quoted(value), why=why),
            why.way_out or way_out,
        ) from None


def _spot(value: Any) -> Spot:
    return Spot(*_pair(value, say("a point is written [x, y]"), say("Write two numbers in px, such as [640, 480]")))


def _size(value: Any) -> Size:
    form, way_out = (
        say("its size is written [width, height]"),
        say("Write two whole numbers in px, such as [1600, 1200]"),
    )
    sides = _pair(value, form, way_out)
    for side in sides:
        if side != int(side):
            raise refusal(
                "tracing-form", say("{form}, and {side:g} is not a whole number", form=form, side=side), way_out
            )
        if not SMALLEST_IMAGE <= side <= LARGEST_IMAGE:
            message = say(
                "{side:.0f} px is not possible; {smallest_image} to {largest_image} px is",
                side=side,
                smallest_image=SMALLEST_IMAGE,
                largest_image=LARGEST_IMAGE,
            )
            raise refusal("tracing-image-size", message, say("Type the width and the height anew"))
    return Size(*map(int, sides))


def _points(value: Any) -> Any:
    """A list of points; where it holds no list at all, one refusal for the whole instead of one for each item."""
    if not isinstance(value, list | tuple) or (value and not any(isinstance(item, list | tuple) for item in value)):
        raise refusal(
            "tracing-form",
            say("its points are written [[x, y], [x, y]]"),
            say("Write each point in brackets of its own"),
        )
    return value


def _schema(items: dict[str, Any], least: int, most: int) -> WithJsonSchema:
    return WithJsonSchema({"type": "array", "items": items, "minItems": least, "maxItems": most})


Point = Annotated[Spot, PlainValidator(_spot), PlainSerializer(tuple), _schema({"type": "number"}, 2, 2)]
Line = Annotated[tuple[Point, ...], BeforeValidator(_points)]
Image = Annotated[Size, PlainValidator(_size), PlainSerializer(tuple), _schema({"type": "integer"}, 2, 2)]

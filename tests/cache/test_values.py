"""Values that become JSON and the same values again."""

from __future__ import annotations

import json
from dataclasses import dataclass
from datetime import date

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.cache.values import as_json, from_json


@dataclass(frozen=True)
class Point:
    """A place with a day, and another place."""

    at: float
    day: date | None = None
    other: Point | None = None


CLASSES: dict[str, type] = {"Point": Point}
PLAIN = st.none() | st.booleans() | st.integers() | st.floats(allow_nan=False) | st.text() | st.dates()
POINTS = st.builds(Point, st.floats(allow_nan=False), st.none() | st.dates())
VALUES = st.recursive(
    PLAIN | POINTS,
    lambda inner: st.lists(inner, max_size=3).map(tuple) | st.dictionaries(st.text(), inner, max_size=3),
)


@given(VALUES)
def test_what_is_kept_is_what_was_there(value: object) -> None:
    """To the kind and the last digit."""
    held = json.loads(json.dumps(as_json(value, CLASSES)))

    assert repr(from_json(held, CLASSES)) == repr(value)


@pytest.mark.parametrize("value", [object(), b"x", [1], {1: "a"}, {"a": {1, 2}}, (Point,), int])
def test_anything_else_is_refused(value: object) -> None:
    """Rather than kept as something that it is not."""
    with pytest.raises(TypeError):
        as_json(value, CLASSES)


def test_a_class_that_is_not_named_is_not_made() -> None:
    """Neither on the way there nor on the way back."""
    with pytest.raises(TypeError):
        as_json(Point(1.0), {})
    with pytest.raises(KeyError):
        from_json({"of": "Point", "is": [1.0, None, None]}, {})

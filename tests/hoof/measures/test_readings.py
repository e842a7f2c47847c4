"""The plain values that charts draw and changes are computed from."""

import dataclasses
from datetime import date

import pytest

from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.observations import Event, Finding

DAY = date(2026, 10, 14)


def test_what_was_not_taken_differs_from_zero() -> None:
    """A reading of nothing is not a reading of zero."""
    assert Reading(DAY, None, None) != Reading(DAY, 0, 0)


@pytest.mark.parametrize(
    "value", [Reading(DAY, 92, 83), Event(DAY, "feed", "hay"), Finding("left_fore", "toe", "flare", "flare, 4 mm")]
)
def test_values_do_not_change(value: Reading | Event | Finding) -> None:
    """A value that was made stays as it is, so that pages and pictures may share it."""
    name = dataclasses.fields(value)[0].name

    with pytest.raises(dataclasses.FrozenInstanceError):
        setattr(value, name, None)

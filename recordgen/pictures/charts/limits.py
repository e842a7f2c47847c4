"""The days and the values that the axes of several pictures share, known without drawing."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from datetime import date, timedelta

from recordgen.hoof.measures.readings import Reading
from recordgen.hoof.observations import Event
from recordgen.records.models.names import Foot

Span = tuple[date, date]
Scale = tuple[float, float]

LEAST_SPAN_DAYS = 112
FIRST_DAY = date(1970, 1, 1)


def day_number(day: date) -> int:
    """A day as axes count it: days since 1970 began."""
    return (day - FIRST_DAY).days


def values_of(readings: Iterable[Reading]) -> list[float]:
    """Every value that was taken, before and after."""
    return [value for reading in readings for value in (reading.before, reading.after) if value is not None]


def shared_scale(
    readings_by_foot: Mapping[Foot, Sequence[Reading]], least: float = 10, more: Sequence[float] = ()
) -> Scale:
    """One scale for all feet with a little room about their values; never narrower than `least`.

    more: values beside the readings that it must hold. The axes go on to round numbers.
    Raises ValueError where no foot has a value.
    """
    values = [value for readings in readings_by_foot.values() for value in values_of(readings)]
    return roomy_scale([*values, *more], least)


def roomy_scale(values: Sequence[float], least: float) -> Scale:
    """A scale that holds all values with a little room; never narrower than `least`.

    Raises ValueError where there is no value.
    """
    if not values:
        raise ValueError("no reading to make a scale from")
    low, high = min(values), max(values)
    room = max((high - low) * 0.03, (least - (high - low)) / 2)
    return round(low - room, 3), round(high + room, 3)


def scale_about_zero(readings_by_foot: Mapping[Foot, Sequence[Reading]], error: float) -> Scale:
    """One scale for all feet with zero in its middle, wide enough for every value and twice the measuring error."""
    values = [value for readings in readings_by_foot.values() for value in values_of(readings)]
    reach = round(max([abs(value) for value in values] + [2 * error, 1.0]) * 1.04, 3)
    return -reach, reach


def shared_span(
    readings_by_foot: Mapping[Foot, Sequence[Reading]], events: Sequence[Event] = (), until: date | None = None
) -> Span:
    """One stretch of days for all feet with a little room at both ends; never shorter than sixteen weeks.

    until: a day still to come that it must hold.
    Raises ValueError where there is no day at all.
    """
    days = [reading.day for readings in readings_by_foot.values() for reading in readings]
    days += [event.day for event in events]
    days += [until] if until else []
    if not days:
        raise ValueError("no day to make a span from")
    first, last = min(days), max(days)
    reach = (last - first).days
    room = timedelta(max(math.ceil(reach * 0.025), math.ceil((LEAST_SPAN_DAYS - reach) / 2)))
    return first - room, last + room

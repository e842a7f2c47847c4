"""Readings through time: what a chart draws and a change is computed from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

from recordgen.records.names import FindingKind, Foot, Place

Moment = Literal["before", "after"]
EventKind = Literal["feed", "boots", "vet"]


@dataclass(frozen=True)
class Reading:
    """One measure of one foot at one visit, before and after the trim; None where it was not taken."""

    day: date
    before: float | None
    after: float | None


@dataclass(frozen=True)
class Event:
    """Something that changes feet, on the day of the visit that told of it (or the vet's day)."""

    day: date
    kind: EventKind
    text: str


@dataclass(frozen=True)
class Finding:
    """Something seen on a foot, at a place, in words. size_mm is None where no size was recorded."""

    foot: Foot
    place: Place
    kind: FindingKind
    text: str
    size_mm: float | None = None

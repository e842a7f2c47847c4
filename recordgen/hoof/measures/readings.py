"""Readings through time: what a chart draws and a change is computed from."""

from __future__ import annotations

from dataclasses import dataclass
from datetime import date
from typing import Literal

Moment = Literal["before", "after"]


@dataclass(frozen=True)
class Reading:
    """One measure of one foot at one visit, before and after the trim; None where it was not taken."""

    day: date
    before: float | None
    after: float | None

"""The tracings of the demo practice, read from its records."""

from __future__ import annotations

from datetime import date
from functools import cache
from pathlib import Path

from recordgen.records.load.practice import read_practice
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import Foot
from tests.demo.days import TODAY

RECORDS = Path(__file__).parents[2] / "records"


@cache
def feet() -> tuple[tuple[str, date, Foot, FootVisit], ...]:
    """Every foot of the demo that was traced: horse, day, foot, and what the visit tells of it."""
    practice, problems = read_practice(RECORDS, TODAY)
    assert practice, [problem.as_line() for problem in problems]
    return tuple(
        (horse.slug, visit.date, foot, found)
        for horse in practice.horses
        for visit in horse.visits
        for foot, found in visit.feet.items()
        if found.tracings
    )

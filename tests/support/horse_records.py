"""Small records made from plain values, for the tests of what they mean."""

from __future__ import annotations

from datetime import date
from typing import Any

from recordgen.hoof.context import Context
from recordgen.hoof.measures.change import MeasureSummary
from recordgen.hoof.naming import Naming
from recordgen.hoof.summary import HorseSummary, summarise
from recordgen.records.load.tables import read_reference
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import FEET, Foot
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.visit import Visit
from tests.support.reckoned import reckoned_once

TODAY = date(2026, 12, 1)
REFERENCE = read_reference(None)[0]
NAMING = Naming(REFERENCE.phrases)


def practice(**values: Any) -> PracticeFile:
    """A practice, with `values` over the least it needs."""
    return PracticeFile.model_validate({"name": "Hazel Hoof Care", "trimmer": "Wren Ashdown", **values})


def ways(**values: Any) -> Context:
    """The ways of such a practice, with our own tables."""
    return Context.of(practice(**values), REFERENCE, reckon=reckoned_once)


PRACTICE = practice()
WAYS = ways()
NAMING = WAYS.naming
MEASURES = {measure.key: measure for measure in WAYS.measures}


def horse(**values: Any) -> Horse:
    """A grown horse, with `values` over the least it needs."""
    return Horse.model_validate({"name": "Bramble", "born": "2015-05-01", **values})


def foot(**values: Any) -> FootVisit:
    """One foot at one visit."""
    return FootVisit.model_validate(values)


def visit(day: str, **values: Any) -> Visit:
    """A visit; the feet stand beside the other values."""
    feet = {name: values.pop(name) for name in FEET if name in values}
    return Visit.model_validate({"date": day, "feet": feet, **values})


def toes(*taken: tuple[str, float | None, float | None], **values: Any) -> list[Visit]:
    """Visits at which the toe of the left fore was measured: day, before and after the trim; None where it was not."""
    visits = []
    for day, before, after in taken:
        found = {"before": {"toe_length": before}, "after": {"toe_length": after}}
        visits.append(visit(day, left_fore=found, **values))
    return visits


def record(*visits: Visit, **values: Any) -> HorseRecord:
    """A horse's record of these visits."""
    return HorseRecord("bramble", "willowmere", horse(**values), visits)


def summary(*visits: Visit, by: Context = WAYS, today: date = TODAY, **values: Any) -> HorseSummary:
    """The summary of a horse with these visits."""
    return summarise(record(*visits, **values), by, today)


def measured(key: str, *visits: Visit, of: Foot = "left_fore", by: Context = WAYS) -> MeasureSummary:
    """One measure of one foot of a horse with these visits."""
    return summary(*visits, by=by).feet[of].measures[key]

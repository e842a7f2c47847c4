"""The range outside which a measure of a foot is asked about, and where that range comes from."""

from __future__ import annotations

from dataclasses import dataclass

from recordgen.records.foot import FootVisit
from recordgen.records.names import ZONES
from recordgen.records.shape import extra, field_at


@dataclass(frozen=True)
class Range:
    """From low to high a value is not asked about. unit: of both. basis: a source, common practice or a judgement."""

    low: float
    high: float
    unit: str
    basis: str


def range_at(path: str) -> Range | None:
    """The range of a place in a foot's record, such as @.toe_length or wall.*.flare; None where no quantity stands.

    path: as in the table of measures, with @ for the moment and * for the zone.
    """
    names = {"@": "before", "*": ZONES[0]}
    found = extra(field_at(FootVisit, [names.get(step, step) for step in path.split(".")]))
    if "likely" not in found:
        return None
    low, high = found["likely"]
    return Range(low, high, found["unit"], found["basis"])

"""The measures: how each is read from a visit, and how large a change must be to be more than measuring error."""

from __future__ import annotations

import math
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from functools import cache
from typing import Any, get_args

from recordgen.hoof.measures.readings import Moment, Reading
from recordgen.records.models.annotations import field_at
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.names import ZONES, Zone
from recordgen.records.models.reference import MeasureWords, Method, Reference

Values = Mapping[str, float]
MOMENTS: tuple[Moment, ...] = get_args(Moment)


@dataclass(frozen=True)
class Measure:
    """One measure of one foot, or of one zone of it.

    name: its key in the table; key: the same with the zone. path: where it stands in a foot's record. traced: the
    figure of a tracing that gives it where it does not stand there. parts: of a computed measure, the two it is
    computed from.
    """

    key: str
    name: str
    words: MeasureWords
    unit: str
    path: tuple[str, ...] = ()
    zone: Zone | None = None
    traced: str = ""
    parts: tuple[Measure, ...] = ()

    @property
    def as_found(self) -> bool:
        """Tell whether it is taken once a visit, as found, rather than before and after the trim."""
        if self.parts:
            return all(part.as_found for part in self.parts)
        return bool(self.path) and self.path[0] != "@"

    @property
    def method_keys(self) -> tuple[str, str, str]:
        """The keys under which `methods` may tell how it was taken, nearest first.

        Its own with the zone, its name in the table, or that of both sides of a foot, such as heel_height.
        """
        return self.key, self.name, self.name.removesuffix("_medial").removesuffix("_lateral")

    def value(self, found: FootVisit, moment: Moment, known: Values) -> float | None:
        """The reading at a moment, in `unit`; None where it, or a part of it, was not taken.

        known: the values at that moment of the measures before it in the table.
        """
        if self.parts:
            return self._compute(known)
        if not self.path:
            return None
        value: Any = found
        for step in self.path:
            value = _step(value, moment if step == "@" else self.zone if step == "*" else step)
            if value is None:
                return None
        return float(value)

    def _compute(self, known: Values) -> float | None:
        first, second = (known.get(part.key) for part in self.parts)
        if first is None or second is None:
            return None
        if self.words.minus:
            return first - second
        return first / second if second else None

    def sd(self, known: Values, methods: Mapping[str, str], traced: Values | None = None) -> float:
        """Standard deviation of a reading, in `unit`; that of a ratio by the delta method.

        known: the values at the moment of the reading. methods: how each measure was taken; the usual way where it is
        not named. traced: the standard deviations of those readings at that moment that were traced.
        Source: propagation of independent errors, JCGM 100:2008 (GUM), section 5.1.
        """
        found = (traced or {}).get(self.key)
        if found or not self.parts:
            return found or float(self.method(methods).sd)
        return self.joint_sd(known, *(part.sd(known, methods, traced) for part in self.parts))

    def joint_sd(self, known: Values, first_sd: float, second_sd: float) -> float:
        """The same of a computed measure from the errors of its two parts, independent of each other."""
        if self.words.minus:
            return math.hypot(first_sd, second_sd)
        top, bottom = (known[part.key] for part in self.parts)
        return math.hypot(first_sd / bottom, second_sd * top / bottom**2)

    def method(self, methods: Mapping[str, str]) -> Method:
        """The way it was taken, with its error."""
        return self.words.methods[self.way(methods)]

    def way(self, methods: Mapping[str, str]) -> str:
        """The name of the way it was taken; the first of the table where none of the table's is named."""
        ways = self.words.methods
        named = next((methods[key] for key in self.method_keys if key in methods), "")
        return named if named in ways else next(iter(ways))


def _step(value: Any, step: str | None) -> Any:
    return value.get(step) if isinstance(value, dict) else getattr(value, str(step))


def readings_at(
    measures: Sequence[Measure], found: FootVisit, day: date, traced: Mapping[Moment, Values] | None = None
) -> dict[str, Reading]:
    """The readings of one foot at one visit by the key of the measure, in the order of the table.

    measures: with the parts of a computed measure before it. traced: by moment, the values that tracings give, by the
    key of the measure; what was typed goes before them.
    """
    before, after = (dict((traced or {}).get(moment, {})) for moment in MOMENTS)
    for measure in measures:
        if measure.zone and measure.zone not in (found.wall or {}):
            continue
        _take(measure, found, "before", before)
        if not measure.as_found:
            _take(measure, found, "after", after)
    keys = [measure.key for measure in measures if measure.key in before or measure.key in after]
    return {key: Reading(day, before.get(key), after.get(key)) for key in keys}


def _take(measure: Measure, found: FootVisit, moment: Moment, known: dict[str, float]) -> None:
    value = measure.value(found, moment, known)
    if value is not None:
        known[measure.key] = value


def smallest_real_change(sd_then: float, sd_now: float) -> float:
    """The smallest change between two readings that is more than measuring error, in the unit of the readings.

    Source: Bland & Altman 1999, Statistical Methods in Medical Research 8:135-160; for two ways of measuring, the
    variances of both readings add up.
    """
    return 1.96 * math.hypot(sd_then, sd_now)


def measures_of(reference: Reference) -> tuple[Measure, ...]:
    """All measures of the table, those of the wall once for each zone, in the order of the table."""
    made: dict[str, Measure] = {}
    for key, words in reference.measures.items():
        for measure in _measures_of(key, words, made):
            made[measure.key] = measure
    return tuple(made.values())


def _measures_of(key: str, words: MeasureWords, made: Mapping[str, Measure]) -> Iterable[Measure]:
    if words.path is None and words.traced is None:
        parts = tuple(made[part] for part in words.minus or words.ratio)
        return [Measure(key, key, words, str(words.unit), parts=parts)]
    path = tuple(words.path.split(".")) if words.path else ()
    unit = _unit_at(path) if path else str(words.unit)
    traced = words.traced or ""
    if not words.by_zone:
        return [Measure(key, key, words, unit, path, traced=traced)]
    names = {zone: zone.replace(" ", "_") for zone in ZONES}
    return [
        Measure(f"{key}_{name}", key, words, unit, path, zone, traced.replace("*", name))
        for zone, name in names.items()
    ]


@cache
def _unit_at(path: tuple[str, ...]) -> str:
    steps = ["before" if step == "@" else ZONES[0] if step == "*" else step for step in path]
    info = field_at(FootVisit, steps)
    extra = info.json_schema_extra if info else None
    if not isinstance(extra, dict):
        raise ValueError(f"no measure stands at {'.'.join(path)} in a foot's record")
    return str(extra["unit"])

"""One foot at one visit: its readings, and how well and in what way each was taken."""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date

from recordgen.hoof.measures.measures import Measure
from recordgen.hoof.measures.readings import Moment, Reading
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.reference import TRACING


@dataclass(frozen=True)
class Look:
    """One foot at one visit: its readings by measure, and the ways in which they were taken.

    traced: by moment, the standard deviations of those readings that were traced on a picture, by measure.
    """

    day: date
    found: FootVisit
    readings: Mapping[str, Reading]
    methods: Mapping[str, str]
    traced: Mapping[Moment, Mapping[str, float]] = field(default_factory=dict)

    def values(self, moment: Moment) -> dict[str, float]:
        """The values at a moment by measure, those that were taken."""
        taken = ((key, getattr(reading, moment)) for key, reading in self.readings.items())
        return {key: value for key, value in taken if value is not None}

    def has(self, measure: Measure, moment: Moment) -> bool:
        """Tell whether a measure was taken at a moment."""
        reading = self.readings.get(measure.key)
        return reading is not None and getattr(reading, moment) is not None

    def sd(self, measure: Measure, moment: Moment) -> float:
        """Standard deviation of the reading of a measure at a moment, in its unit; the reading must be there."""
        return measure.sd(self.values(moment), self.methods, self.traced.get(moment))

    def way(self, measure: Measure, moment: Moment) -> str:
        """The name of the way in which a measure was taken at a moment; of a computed one, those of its parts."""
        if measure.parts:
            return " and ".join(dict.fromkeys(self.way(part, moment) for part in measure.parts))
        return TRACING if measure.key in self.traced.get(moment, {}) else measure.way(self.methods)

    def mean(self, measure: Measure, moment: Moment) -> tuple[float, float]:
        """The mean of a reading and those taken again, with its standard deviation, in the unit of the measure.

        The reading must be there. What was taken again in a computed measure counts in its parts.
        """
        if measure.parts and not self.traced.get(moment, {}).get(measure.key):
            means = {part.key: self.mean(part, moment) for part in measure.parts}
            values = {key: value for key, (value, _) in means.items()}
            found = measure.value(self.found, moment, values)
            if found is not None:
                return found, measure.joint_sd(values, *(sd for _, sd in means.values()))
        taken = [self.values(moment)[measure.key], *self._repeat_readings(measure, moment)]
        return math.fsum(taken) / len(taken), self.sd(measure, moment) / math.sqrt(len(taken))

    def _repeat_readings(self, measure: Measure, moment: Moment) -> Sequence[float]:
        repeat = self.found.repeat
        if repeat is None or not measure.path or measure.path[0] != "@" or measure.key in self.traced.get(moment, {}):
            return ()
        readings = (FootVisit.model_construct(**{moment: one}) for one in getattr(repeat, moment))
        values = (measure.value(one, moment, {}) for one in readings)
        return [value for value in values if value is not None]

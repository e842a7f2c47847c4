"""One measure of one foot through the visits: latest values, and whether they changed by more than measuring error."""

from __future__ import annotations

from collections.abc import Mapping, Sequence
from dataclasses import dataclass, field
from datetime import date, timedelta

from recordgen.hoof.measures.measures import Measure, smallest_real_change
from recordgen.hoof.measures.readings import Moment, Reading
from recordgen.records.models.foot import FootVisit

HALF_YEAR = timedelta(days=182)


@dataclass(frozen=True)
class Step:
    """A change between two readings taken at the same moment of a visit, in the unit of the measure."""

    since: date
    then: float
    now: float
    smallest_real_change: float

    @property
    def change(self) -> float:
        """Now less then."""
        return self.now - self.then

    @property
    def real(self) -> bool:
        """Whether the change is more than the error of two readings."""
        return abs(self.change) >= self.smallest_real_change

    @property
    def against_error(self) -> float:
        """The size of the change, in smallest real changes."""
        return abs(self.change) / self.smallest_real_change


@dataclass(frozen=True)
class MeasureSummary:
    """One measure of one foot.

    before, after: of the latest visit at which it was taken, on `day`. moment: the one at which visits are compared.
    smallest_real_change: between two visits; smallest_real_size: of a difference from nothing, as between two heels.
    last, half_year, first: the change since the visit before, since the last one at least half a year ago, and since
    the first; None where there is none to compare with.
    """

    measure: Measure
    day: date
    before: float | None
    after: float | None
    moment: Moment
    smallest_real_change: float
    smallest_real_size: float
    last: Step | None
    half_year: Step | None
    first: Step | None
    readings: tuple[Reading, ...]

    @property
    def latest(self) -> float:
        """The reading by which visits are compared: after the trim where it was taken then."""
        value = getattr(self, self.moment)
        return float(value)


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

    def sd(self, measure: Measure, moment: Moment) -> float:
        """Standard deviation of the reading of a measure at a moment, in its unit; the reading must be there."""
        return measure.sd(self.values(moment), self.methods, self.traced.get(moment))


def measure_summary(measure: Measure, looks: Sequence[Look]) -> MeasureSummary | None:
    """The summary of one measure, or None where it was never taken. looks: oldest first."""
    taken = [look for look in looks if measure.key in look.readings]
    if not taken:
        return None
    readings = tuple(look.readings[measure.key] for look in taken)
    moment = _moment(readings)
    same = [look for look in taken if getattr(look.readings[measure.key], moment) is not None]
    error = same[-1].sd(measure, moment)
    return MeasureSummary(
        measure,
        readings[-1].day,
        readings[-1].before,
        readings[-1].after,
        moment,
        smallest_real_change(error, error),
        smallest_real_change(error, 0),
        _since(measure, moment, same[-2:-1], same[-1]),
        _since(measure, moment, [look for look in same if same[-1].day - look.day >= HALF_YEAR], same[-1]),
        _since(measure, moment, same[:-1][:1], same[-1]),
        readings,
    )


def _moment(readings: Sequence[Reading]) -> Moment:
    latest, earlier = readings[-1], readings[:-1]
    if latest.after is None:
        return "before"
    if latest.before is None or not earlier or any(reading.after is not None for reading in earlier):
        return "after"
    return "before"


def _since(measure: Measure, moment: Moment, earlier: Sequence[Look], now: Look) -> Step | None:
    """The change since the last of some earlier looks, or None where there is none."""
    return _step(measure, moment, earlier[-1], now) if earlier else None


def _step(measure: Measure, moment: Moment, then: Look, now: Look) -> Step:
    values = [look.values(moment) for look in (then, now)]
    errors = [look.sd(measure, moment) for look in (then, now)]
    return Step(then.day, values[0][measure.key], values[1][measure.key], smallest_real_change(*errors))

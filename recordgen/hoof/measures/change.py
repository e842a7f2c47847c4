"""One measure of one foot through the visits: its latest values, their error, and how they differ from earlier ones.

Whether a difference is a change, the page tells by one rule for all: see `changes.py`.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date, timedelta

from recordgen.hoof.measures.look import Look
from recordgen.hoof.measures.measures import Measure, smallest_real_change
from recordgen.hoof.measures.readings import Moment, Reading

HALF_YEAR = timedelta(days=182)


@dataclass(frozen=True)
class Step:
    """Two readings taken at the same moment of two visits, in the unit of the measure.

    other_way: whether they were taken in two ways, such as a calliper and a tracing, which may differ by that alone.
    """

    since: date
    then: float
    now: float
    other_way: bool = False

    @property
    def change(self) -> float:
        """Now less then."""
        return self.now - self.then


@dataclass(frozen=True)
class MeasureSummary:
    """One measure of one foot.

    before, after: of the latest visit at which it was taken, on `day`. moment: the one at which visits are compared.
    smallest_real_change: between two visits; smallest_real_size: of a difference from nothing, as between two heels.
    last, half_year, first: against the visit before, the last one at least half a year ago, and the first; None where
    there is none to compare with.
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


def measure_summary(measure: Measure, looks: Sequence[Look]) -> MeasureSummary | None:
    """The summary of one measure, or None where it was never taken. looks: oldest first."""
    taken = [look for look in looks if measure.key in look.readings]
    if not taken:
        return None
    readings = tuple(look.readings[measure.key] for look in taken)
    moment = moment_of(readings)
    same = [look for look in taken if look.has(measure, moment)]
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


def moment_of(readings: Sequence[Reading]) -> Moment:
    """The moment at which the visits of a measure are compared: after the trim where that was told before."""
    latest, earlier = readings[-1], readings[:-1]
    if latest.after is None:
        return "before"
    if latest.before is None or not earlier or any(reading.after is not None for reading in earlier):
        return "after"
    return "before"


def _since(measure: Measure, moment: Moment, earlier: Sequence[Look], now: Look) -> Step | None:
    """Against the last of some earlier looks, or None where there is none."""
    return _step(measure, moment, earlier[-1], now) if earlier else None


def _step(measure: Measure, moment: Moment, then: Look, now: Look) -> Step:
    was, value = (look.values(moment)[measure.key] for look in (then, now))
    return Step(then.day, was, value, then.way(measure, moment) != now.way(measure, moment))

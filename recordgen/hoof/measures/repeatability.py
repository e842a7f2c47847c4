"""Tell how well a practice's own readings repeat, in place of what is assumed or published, once there are enough."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from recordgen.hoof.measures.measures import Measure, measures_of, smallest_real_change
from recordgen.records.models.foot import FootVisit, Measures
from recordgen.records.models.reference import Method, Reference
from recordgen.records.models.visit import Visit

# Below this many degrees of freedom an SD of one's own is less sure than one that is assumed: at ten its 95 % interval
# reaches from 0.7 to 1.75 times what was found. Derived from: the chi-squared distribution.
LEAST_FREEDOM = 10
# The measure's name in the table, and the way of taking it.
Way = tuple[str, str]


@dataclass(frozen=True)
class Own:
    """The standard deviation of one reading within a foot: in the measure's unit, from so many sets of readings.

    freedom: degrees of freedom, the readings beyond the first of each set.
    """

    sd: float
    sets: int
    freedom: int

    @property
    def counts(self) -> bool:
        """Tell whether it is sure enough to be used."""
        return self.freedom >= LEAST_FREEDOM and self.sd > 0


def own_errors(reference: Reference, usual: Mapping[str, str], visits: Sequence[Visit]) -> dict[Way, Own]:
    """The within-foot SD of each measure and way that was read again, pooled over all sets of two or more readings.

    usual: the practice's usual ways.
    Source: Bland & Altman 1996, BMJ 312:1654, measurement error from one-way analysis of variance.
    """
    measures = measures_of(reference)
    squares: dict[Way, float] = {}
    counted: dict[Way, tuple[int, int]] = {}
    for visit in visits:
        methods = {**usual, **visit.methods}
        for measure, values in _sets(visit, measures):
            way = (measure.name, measure.way(methods))
            mean = math.fsum(values) / len(values)
            squares[way] = squares.get(way, 0) + math.fsum((value - mean) ** 2 for value in values)
            sets, freedom = counted.get(way, (0, 0))
            counted[way] = (sets + 1, freedom + len(values) - 1)
    return {way: Own(math.sqrt(squares[way] / freedom), sets, freedom) for way, (sets, freedom) in counted.items()}


def with_own(reference: Reference, own: Mapping[Way, Own]) -> Reference:
    """The tables with the practice's own errors in place of others, where they are sure enough."""
    phrase = reference.phrases["repeat_source"]
    measures = {}
    for name, words in reference.measures.items():
        methods = {way: _with_own_error(method, own.get((name, way)), phrase) for way, method in words.methods.items()}
        measures[name] = words.model_copy(update={"methods": methods})
    return reference.model_copy(update={"measures": measures})


@dataclass(frozen=True)
class ToldError:
    """One measure in one way: SD of a reading and smallest real change in its unit, and where the SD comes from.

    usual: whether it is the practice's usual way. own: the practice's own readings, used or not yet.
    """

    measure: str
    name: str
    way: str
    usual: bool
    unit: str
    sd: float
    smallest_real_change: float
    assumed: bool
    source: str
    own: Own | None


def list_errors(reference: Reference, usual: Mapping[str, str], visits: Sequence[Visit]) -> list[ToldError]:
    """Every measure in every way of the table with the errors that a practice is told by, in the order of the table."""
    own = own_errors(reference, usual, visits)
    measures = {measure.name: measure for measure in measures_of(with_own(reference, own)) if not measure.parts}
    return [
        ToldError(
            measure.name,
            measure.words.name,
            way,
            measure.way(usual) == way,
            measure.unit,
            method.sd,
            smallest_real_change(method.sd, method.sd),
            method.assumed,
            method.source,
            own.get((measure.name, way)),
        )
        for measure in measures.values()
        for way, method in measure.words.methods.items()
    ]


def _with_own_error(method: Method, own: Own | None, phrase: str) -> Method:
    if own is None or not own.counts:
        return method
    source = phrase.format(sets=own.sets, readings=own.sets + own.freedom)
    return method.model_copy(update={"sd": own.sd, "source": source, "assumed": False, "rounded": True})


def _sets(visit: Visit, measures: Sequence[Measure]) -> Iterator[tuple[Measure, list[float]]]:
    taken = [measure for measure in measures if measure.path and measure.path[0] == "@"]
    for found in visit.feet.values():
        if found.repeat is None:
            continue
        moments = ((found.before, found.repeat.before), (found.after, found.repeat.after))
        for first, again in moments:
            readings = [one for one in (first, *again) if one]
            for measure in taken:
                values = [value for value in (_value(measure, one) for one in readings) if value is not None]
                if len(values) > 1:
                    yield measure, values


def _value(measure: Measure, readings: Measures) -> float | None:
    return measure.value(FootVisit.model_construct(before=readings), "before", {})

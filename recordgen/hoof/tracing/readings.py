"""The readings that tracings give of a foot where nothing was typed, and where both stand and differ."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from recordgen.hoof.measures.measures import Measure, smallest_real_change
from recordgen.hoof.measures.readings import Moment
from recordgen.hoof.tracing.figures import Figure, Reckon, Traced, plain_values, reckoned, traced
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.reference import TRACING
from recordgen.records.models.tracing import Tracing

ByMeasure = Mapping[str, float]


@dataclass(frozen=True)
class Filled:
    """By moment and measure: the values that tracings give, and the standard deviations of these readings."""

    values: Mapping[Moment, ByMeasure]
    sds: Mapping[Moment, ByMeasure]


def filled(measures: Sequence[Measure], found: FootVisit, traced: Sequence[Traced]) -> Filled:
    """The readings of a foot that were traced and not typed. traced: of the same foot at the same visit.

    What is measured as found, once a visit, is taken from the tracing before the trim where there is one.
    """
    values: dict[Moment, dict[str, float]] = {"before": {}, "after": {}}
    sds: dict[Moment, dict[str, float]] = {"before": {}, "after": {}}
    by: dict[tuple[Moment, str], Traced] = {}
    for one in sorted(traced, key=lambda one: one.tracing.moment != "before"):
        for measure, slot, figure in _figures(measures, one):
            if measure.value(found, slot, {}) is None and measure.key not in values[slot]:
                values[slot][measure.key] = figure.value
                sds[slot][measure.key] = reading_sd(measure, one.tracing, figure)
                by[slot, measure.key] = one
        for measure, slot, figure in _together(measures, one):
            if all(by.get((slot, part.key)) is one for part in measure.parts):
                stance = measure.joint_sd(values[slot], *(stance_sd(part, one.tracing) for part in measure.parts))
                sds[slot][measure.key] = math.hypot(figure.sd, stance)
    return Filled(values, sds)


def _figures(measures: Sequence[Measure], one: Traced) -> Iterator[tuple[Measure, Moment, Figure]]:
    for measure in measures:
        figure = one.figures.get(measure.traced)
        if figure:
            yield measure, _slot(measure, one.tracing), figure


def _together(measures: Sequence[Measure], one: Traced) -> Iterator[tuple[Measure, Moment, Figure]]:
    """The computed measures whose parts one tracing may give: ground, scale and frame count once in their error."""
    for measure in measures:
        figure = one.figures.get(measure.words.together or "")
        if figure:
            yield measure, _slot(measure, one.tracing), figure


def _slot(measure: Measure, tracing: Tracing) -> Moment:
    """The moment under which a traced reading stands."""
    return "before" if measure.as_found else tracing.moment


@dataclass(frozen=True)
class Disagreement:
    """A reading that was typed and traced, and differs by more than both errors: at which number of a foot's tracings.

    typed, traced, apart: in the unit of the measure; apart is the least difference that would be real.
    """

    number: int
    measure: Measure
    typed: float
    traced: float
    apart: float


def disagreements(
    measures: Sequence[Measure],
    found: FootVisit,
    methods: Mapping[str, str],
    usual_error: float,
    reckon: Reckon = reckoned,
) -> Iterator[Disagreement]:
    """Where what was typed of a foot and what was traced of it cannot both be right; what was typed counts.

    methods: how each measure was taken. usual_error, reckon: as `traced.traced` takes them.
    """
    for number, tracing in enumerate(found.tracings):
        values = plain_values(tracing)
        for measure in measures:
            value = values.get(measure.traced)
            typed = measure.value(found, _slot(measure, tracing), {})
            if value is None or typed is None:
                continue
            sd = float(measure.method(methods).sd)
            if abs(typed - value) < smallest_real_change(sd, 0):
                continue
            told = ((one.tracing.view, one.tracing.moment, one) for one in traced(found, usual_error, reckon))
            one = next(one for view, moment, one in told if (view, moment) == (tracing.view, tracing.moment))
            apart = smallest_real_change(sd, reading_sd(measure, tracing, one.figures[measure.traced]))
            if abs(typed - value) >= apart:
                yield Disagreement(number, measure, typed, value, apart)


def reading_sd(measure: Measure, tracing: Tracing, figure: Figure) -> float:
    """Standard deviation of a traced reading: its figure's, and what the stance of the horse adds to it."""
    return math.hypot(figure.sd, stance_sd(measure, tracing))


def stance_sd(measure: Measure, tracing: Tracing) -> float:
    """What the stance adds to the error of a traced reading, in its unit, by the table.

    Nothing where a drawing was traced, nor of a sole, which is held up; a figure's own error knows the camera.
    """
    stands = tracing.of == "photograph" and tracing.view != "sole"
    return float(measure.words.methods[TRACING].sd) if stands else 0

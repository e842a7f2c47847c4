"""The readings that tracings give of a foot where nothing was typed, and where both stand and differ."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

from recordgen.hoof.measures import Measure
from recordgen.hoof.series import Moment
from recordgen.hoof.traced import Figure, Traced
from recordgen.records.foot import FootVisit
from recordgen.records.reference import TRACING
from recordgen.records.tracing import Tracing

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
    for one in sorted(traced, key=lambda one: one.tracing.moment != "before"):
        for measure, slot, figure in _figures(measures, one):
            if measure.value(found, slot, {}) is None and measure.key not in values[slot]:
                values[slot][measure.key] = figure.value
                sds[slot][measure.key] = reading_sd(measure, one.tracing, figure)
    return Filled(values, sds)


def _figures(measures: Sequence[Measure], one: Traced) -> Iterator[tuple[Measure, Moment, Figure]]:
    for measure in measures:
        figure = one.figures.get(measure.traced)
        if figure:
            yield measure, "before" if measure.as_found else one.tracing.moment, figure


def reading_sd(measure: Measure, tracing: Tracing, figure: Figure) -> float:
    """Standard deviation of a traced reading: the hand's error, and on a photograph what the camera adds to it."""
    camera = 0 if tracing.of == "drawing" else measure.words.methods[TRACING].sd
    return math.hypot(figure.sd, camera)

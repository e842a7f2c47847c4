"""Rounding of what was typed: the step seen in a horse's own figures, and what it adds to the error of a reading."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence

from recordgen.hoof.measures.measures import MOMENTS, Measure
from recordgen.hoof.measures.repeatability import Way
from recordgen.records.models.reference import Method, Reference
from recordgen.records.models.visit import Visit

# The coarser steps to which people read, mm or degrees, the coarsest first. Each is believed where whole figures would
# keep to it by chance once in a thousand times, as each different figure does once in `step` times. Judgement.
COARSE = (10.0, 5.0, 25.4 / 8, 2.0)
BELIEVED_FROM = 1000
# The usual ones: a whole millimetre or degree, a sixteenth of an inch, a half, a tenth.
FINE = (1.0, 25.4 / 16, 0.5, 0.1)
# A figure in another unit among many is no finer step.
NEARLY_ALL = 0.9
# Figures typed in inches come to a whole number of sixteenths within this, mm.
_CLOSE = 0.01


def step_of(figures: Sequence[float]) -> float:
    """The step to which nearly all of some figures were rounded, in their unit; 0 where none fits."""
    for step in (*COARSE, *FINE) if figures else ():
        kept = [one for one in figures if abs(one - step * round(one / step)) < _CLOSE]
        believed = step in FINE or step ** len(set(kept)) >= BELIEVED_FROM
        if believed and len(kept) >= NEARLY_ALL * len(figures):
            return step
    return 0.0


def rounding_sd(step: float) -> float:
    """The standard deviation that rounding to a step adds, in its unit: that of a uniform error of half a step.

    Source: JCGM 100:2008 (GUM), section F.2.2.1, the resolution of a digital indication.
    """
    return step / math.sqrt(12)


def significant(value: float, figures: int = 3) -> float:
    """An error as it is given on: with three figures, since nobody knows an error better."""
    return float(f"{value:.{figures}g}")


def rounding_steps(measures: Sequence[Measure], usual: Mapping[str, str], visits: Sequence[Visit]) -> dict[Way, float]:
    """The step of each measure and way, as the figures typed at some visits show it. usual: the practice's ways."""
    figures: dict[Way, list[float]] = {}
    for visit in visits:
        methods = {**usual, **visit.methods}
        for measure, value in _typed_values(visit, [one for one in measures if one.path]):
            figures.setdefault((measure.name, measure.way(methods)), []).append(value)
    return {way: step_of(found) for way, found in figures.items()}


def with_rounding(reference: Reference, steps: Mapping[Way, float]) -> Reference:
    """The tables with rounding counted in the error of each way, where it is not in it already."""
    measures = {}
    for name, words in reference.measures.items():
        methods = {
            way: _with_rounding_error(method, steps.get((name, way), 0)) for way, method in words.methods.items()
        }
        measures[name] = words.model_copy(update={"methods": methods})
    return reference.model_copy(update={"measures": measures})


def _with_rounding_error(method: Method, step: float) -> Method:
    if not step or method.rounded:
        return method
    return method.model_copy(update={"sd": math.hypot(method.sd, rounding_sd(step)), "rounded": True})


def _typed_values(visit: Visit, measures: Sequence[Measure]) -> Iterator[tuple[Measure, float]]:
    for found in visit.feet.values():
        for measure in measures:
            if measure.zone and measure.zone not in (found.wall or {}):
                continue
            for moment in MOMENTS[:1] if measure.as_found else MOMENTS:
                value = measure.value(found, moment, {})
                if value is not None:
                    yield measure, value

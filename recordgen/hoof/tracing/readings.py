"""The readings that tracings give of a foot where nothing was typed, and where both stand and differ."""

from __future__ import annotations

import math
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import combinations

from recordgen.hoof.measures.measures import Measure, smallest_real_change
from recordgen.hoof.measures.readings import Moment
from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.hoof.tracing.figures import Reckon, Traced, plain_values, reckoned, traced
from recordgen.records.models.foot import FootVisit
from recordgen.records.models.reference import TRACING
from recordgen.records.models.tracing import Tracing

ByMeasure = Mapping[str, float]


@dataclass(frozen=True)
class Filled:
    """By moment and measure: the values that tracings give, and the standard deviations of these readings."""

    values: Mapping[Moment, ByMeasure]
    sds: Mapping[Moment, ByMeasure]


def fill_readings(measures: Sequence[Measure], found: FootVisit, traced: Sequence[Traced]) -> Filled:
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
    hand_times: float = 1.0,
) -> Iterator[Disagreement]:
    """Tell where what was typed of a foot and what was traced of it cannot both be right; what was typed counts.

    methods: how each measure was taken. usual_error, reckon, hand_times: as `traced` takes them.
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
            told = (
                (one.tracing.view, one.tracing.moment, one) for one in traced(found, usual_error, reckon, hand_times)
            )
            one = next(one for view, moment, one in told if (view, moment) == (tracing.view, tracing.moment))
            apart = smallest_real_change(sd, reading_sd(measure, tracing, one.figures[measure.traced]))
            if abs(typed - value) >= apart:
                yield Disagreement(number, measure, typed, value, apart)


def reading_sd(measure: Measure, tracing: Tracing, figure: Figure) -> float:
    """Standard deviation of a traced reading: its figure's, and what the stance of the horse adds to it."""
    return math.hypot(figure.sd, stance_sd(measure, tracing))


def stance_sd(measure: Measure, tracing: Tracing) -> float:
    """The part that the stance adds to the error of a traced reading, in its unit, by the table.

    Nothing where a drawing was traced, nor of a sole, which is held up; a figure's own error knows the camera.
    """
    stands = tracing.of == "photograph" and tracing.view != "sole"
    return float(measure.words.methods[TRACING].sd) if stands else 0


# How many SD two pictures of a visit may differ in the one figure of some twenty that differs the most, for 95 in 100.
# Derived from: the normal distribution, a twentieth of 5 %.
FURTHEST_APART = 3.02


@dataclass(frozen=True)
class PicturesApart:
    """Two tracings of a foot, view and moment at one visit that cannot both be right, by the measure furthest apart.

    first, second: numbers of the foot's tracings. one, other: their values; apart: the least difference that would be
    too much; in the unit of the measure.
    """

    first: int
    second: int
    measure: Measure
    one: float
    other: float
    apart: float


def pictures_apart(
    measures: Sequence[Measure],
    found: FootVisit,
    usual_error: float,
    reckon: Reckon = reckoned,
    hand_times: float = 1.0,
) -> Iterator[PicturesApart]:
    """Tell where two tracings of a foot from one side at one moment of a visit differ beyond their errors, each once.

    usual_error, reckon, hand_times: as `traced` takes them.
    """
    for (first, one), (second, other) in combinations(enumerate(found.tracings), 2):
        if (one.view, one.moment) == (other.view, other.moment):
            figures = [_reckoned(tracing, usual_error, reckon, hand_times) for tracing in (one, other)]
            told = [_apart(measure, (first, one), (second, other), figures) for measure in measures]
            worst = max((pair for pair in told if pair), key=lambda pair: pair[0], default=None)
            if worst and worst[0] >= 1:
                yield worst[1]


def _reckoned(tracing: Tracing, usual_error: float, reckon: Reckon, hand_times: float) -> Mapping[str, Figure]:
    told = tracing.by_hand_of(usual_error)
    return reckon(told, told.error_px() * hand_times)


def _apart(
    measure: Measure, first: tuple[int, Tracing], second: tuple[int, Tracing], figures: Sequence[Mapping[str, Figure]]
) -> tuple[float, PicturesApart] | None:
    """The difference of one measure as a share of what is too much, and told."""
    one, other = (held.get(measure.traced) for held in figures)
    if one is None or other is None:
        return None
    sds = (reading_sd(measure, tracing, figure) for (_, tracing), figure in ((first, one), (second, other)))
    apart = FURTHEST_APART * math.hypot(*sds)
    told = PicturesApart(first[0], second[0], measure, one.value, other.value, apart)
    return abs(one.value - other.value) / apart, told

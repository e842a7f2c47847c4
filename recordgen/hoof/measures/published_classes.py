"""Published classes of feet, reckoned from the latest readings: context that is told with how common each class is."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.measures.balance import Pair, PairDifference
from recordgen.hoof.measures.change import MeasureSummary
from recordgen.records.models.names import FEET, Foot, Kind
from recordgen.records.models.reference import PublishedClass

LOAD = "load_kg_per_cm2"


@dataclass(frozen=True)
class ClassReading:
    """One foot, pair or horse (None) against one published class: the reading, and whether the class takes it in.

    day: of the reading; None for the load, which rests on several. within_error: whether the reading is so near to the
    bound that its error may decide.
    """

    where: Foot | Pair | None
    day: date | None
    value: float
    taken_in: bool
    within_error: bool


@dataclass(frozen=True)
class ClassFindings:
    """A published class and everything of a horse that was measured for it."""

    words: PublishedClass
    found: tuple[ClassReading, ...]


def published_classes(
    table: Mapping[str, PublishedClass],
    kind: Kind,
    feet: Mapping[Foot, Mapping[str, MeasureSummary]],
    pairs: Sequence[PairDifference],
    load_kg_per_cm2: float | None,
) -> tuple[ClassFindings, ...]:
    """The classes of the table that were published for such an animal and something was measured for, in its order.

    feet: the summaries of each foot by measure. pairs: left less right. load_kg_per_cm2: whole weight over the area of
    a foot, None where it is not known.
    """
    fitting = (words for words in table.values() if kind in words.kinds)
    told = (ClassFindings(words, tuple(_classes_of(words, feet, pairs, load_kg_per_cm2))) for words in fitting)
    return tuple(one for one in told if one.found)


def _classes_of(
    words: PublishedClass,
    feet: Mapping[Foot, Mapping[str, MeasureSummary]],
    pairs: Sequence[PairDifference],
    load: float | None,
) -> Iterator[ClassReading]:
    if words.of == "horse" and words.measure == LOAD and load is not None:
        yield ClassReading(None, None, load, words.takes_in(load), False)
    if words.of == "pair":
        for pair in pairs:
            if pair.measure == words.measure:
                yield _classify(words, pair.pair, pair.day, pair.difference, pair.smallest_real_difference)
    if words.of == "foot":
        for foot in FEET:
            one = feet.get(foot, {}).get(words.measure)
            if one:
                yield _classify(words, foot, one.day, one.latest, one.smallest_real_size)


def _classify(words: PublishedClass, where: Foot | Pair, day: date, value: float, error: float) -> ClassReading:
    taken_in = words.takes_in(value)
    near = any(words.takes_in(value + step) != taken_in for step in (-error, error))
    return ClassReading(where, day, value, taken_in, near)

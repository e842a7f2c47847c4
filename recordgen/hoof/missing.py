"""Gaps of the records, for the trimmer: nothing wrong, but a later comparison would want it."""

from __future__ import annotations

import itertools
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.age_class import care_class
from recordgen.records.models.horse import Horse
from recordgen.records.models.names import FEET, CareClass, Foot
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.reference import ClassWords
from recordgen.records.models.visit import Visit


@dataclass(frozen=True)
class Gap:
    """Something missing: its kind (a key of the phrases, after gap_), since when, the feet it concerns, and where."""

    kind: str
    day: date | None = None
    feet: tuple[Foot, ...] = ()
    weeks: int | None = None
    where: str = ""


def gaps_of(record: HorseRecord, classes: Mapping[CareClass, ClassWords]) -> tuple[Gap, ...]:
    """The gaps in one horse's record. classes: their usual intervals."""
    gaps = [gap for look in LOOKS for gap in look(record.horse, record.visits)]
    moved = [Gap("moved", where=where) for where in record.earlier]
    return (*gaps, *_long_breaks(record.horse, record.visits, classes), *moved)


def _identity(horse: Horse, visits: Sequence[Visit]) -> Iterator[Gap]:
    if horse.born is None:
        yield Gap("born")
    if horse.microchip is None and horse.ueln is None:
        yield Gap("identity")


def _no_visit(horse: Horse, visits: Sequence[Visit]) -> Iterator[Gap]:
    if not visits:
        yield Gap("no_visit")


def _last_visit(horse: Horse, visits: Sequence[Visit]) -> Iterator[Gap]:
    if not visits or horse.left:
        return
    last = visits[-1]
    unseen = tuple(foot for foot in FEET if foot not in last.feet)
    if unseen:
        yield Gap("feet_unseen", last.date, unseen)
    untold = tuple(foot for foot, found in last.feet.items() if found.before and not found.after)
    if untold and last.trimmed:
        yield Gap("no_after", last.date, untold)


def _long_breaks(horse: Horse, visits: Sequence[Visit], classes: Mapping[CareClass, ClassWords]) -> Iterator[Gap]:
    for then, now in itertools.pairwise(visits):
        limit = classes[care_class(horse, then.date)].weeks.at_most
        weeks = (now.date - then.date).days // 7
        if weeks > 2 * limit:
            yield Gap("long_break", then.date, weeks=weeks)


LOOKS: tuple[Callable[[Horse, Sequence[Visit]], Iterator[Gap]], ...] = (_identity, _no_visit, _last_visit)

"""Files that were copied and not typed anew: one visit twice, or one horse's readings under another's name."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from itertools import pairwise

from recordgen.problems import Problem, counted, warning
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written, values

# So many readings in a row are not alike by chance, each being out by a millimetre or so. Judgement.
LEAST_READINGS = 6

Readings = tuple[object, ...]
Copied = tuple[Written[Visit], Written[Visit], int]  # a visit, the one it is like, and how many readings they share


def copied(horses: Sequence[HorseRecord]) -> Iterator[Problem]:
    """Problems of visits whose readings are those of another visit, number for number.

    horses: those of the practice, in the order of their files. Of those that left nothing is told: their record may
    have gone on in another.
    """
    here = [horse for horse in horses if horse.horse.left is None]
    for horse in here:
        yield from _twice(horse)
    yield from _under_another(here)


def _twice(horse: HorseRecord) -> Iterator[Problem]:
    """One horse's visit that is the one before it once more."""
    for before, visit in pairwise(horse.written):
        same_day = visit.record.date == before.record.date
        if same_day and visit.record == before.record:
            message = f"the same visit stands in {before.file.name} too"
            yield warning(visit.place("date"), "visit-twice", message, "Delete one of the two files")
        elif _outline(visit.record) == _outline(before.record):
            readings = _readings(visit.record)
            if len(readings) >= LEAST_READINGS and readings == _readings(before.record):
                message = f"all {len(readings)} readings are those of {before.file.name}, number for number"
                yield warning(
                    visit.place("feet"),
                    "readings-of-visit-before",
                    message,
                    "If the file was copied, type what was measured this time",
                )


def _under_another(horses: Sequence[HorseRecord]) -> Iterator[Problem]:
    """Visits of one horse that are those of another on the same days; each pair of horses is told once."""
    for pair in _alike(horses).values():
        if sum(count for _, _, count in pair) >= LEAST_READINGS:
            visit, first, _ = pair[0]
            days = f" and so on {counted(len(pair) - 1, 'day')} more" if len(pair) > 1 else ""
            message = f"the readings are those of {first.shown}, number for number{days}"
            yield warning(
                visit.place("feet"),
                "readings-of-another-horse",
                message,
                "If the file was copied, delete it where it does not belong",
            )


def _alike(horses: Sequence[HorseRecord]) -> dict[tuple[int, int], list[Copied]]:
    """By two horses' numbers in `horses`: their visits of one day with the same readings."""
    outlines: dict[tuple[dt.date, Readings], list[tuple[int, Written[Visit]]]] = {}
    for number, horse in enumerate(horses):
        for visit in horse.written:
            outlines.setdefault((visit.record.date, _outline(visit.record)), []).append((number, visit))
    pairs: dict[tuple[int, int], list[Copied]] = {}
    for alike in outlines.values():
        first: dict[Readings, tuple[int, Written[Visit]]] = {}
        for number, visit in alike if len(alike) > 1 else ():
            readings = _readings(visit.record)
            origin, like = first.setdefault(readings, (number, visit))
            if origin != number and readings:
                pairs.setdefault((origin, number), []).append((visit, like, len(readings)))
    return pairs


def _outline(visit: Visit) -> Readings:
    """A few readings that are quickly at hand; where they differ, the visits do."""
    return tuple(
        (foot, *(at and (at.toe_length, at.toe_angle) for at in (found.before, found.after)))
        for foot, found in visit.feet.items()
    )


def _readings(visit: Visit) -> Readings:
    """Every number of a visit's feet with where it stands."""
    return tuple(
        (foot, steps, value)
        for foot, found in visit.feet.items()
        for steps, _, value in values(found)
        if isinstance(value, float | int) and not isinstance(value, bool)
    )

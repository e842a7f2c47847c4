"""Files that were copied and not typed anew: one visit twice, or one horse's readings under another's name."""

from __future__ import annotations

import datetime as dt
import hashlib
from collections.abc import Iterator, Sequence
from itertools import pairwise

from recordgen.problems import Problem, warning
from recordgen.records.models.practice import HorseRecord, VisitPrint
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written, values
from recordgen.sentences import counted, say

# So many readings in a row are not alike by chance, each being out by a millimetre or so. Judgement.
LEAST_READINGS = 6

Readings = tuple[object, ...]
Numbered = tuple[int, int]  # a horse's number among those looked at, and that of one of its visits
Copied = tuple[Numbered, Numbered, int]  # a visit, the one it is like, and how many readings they share


def print_of(visit: Written[Visit]) -> VisitPrint:
    """The print that tells a visit from others without its record."""
    record = visit.record
    repeats = any(foot.repeats for foot in record.feet.values())
    readings = None if _tells_enough(record) else _readings(record)
    told = None if readings is None else (_hash(readings), len(readings))
    return VisitPrint(visit.file.name, record.date, repeats, _hash(_outline(record)), told)


def twice(written: Sequence[Written[Visit]]) -> Iterator[Problem]:
    """One horse's visit that is the one before it once more. written: in order."""
    for before, visit in pairwise(written):
        same_day = visit.record.date == before.record.date
        if same_day and visit.record.tells_the_same(before.record):
            message = say("the same visit stands in {before} too", before=before.file.name)
            yield warning(visit.place("date"), "visit-twice", message, say("Delete one of the two files"))
        elif _outline(visit.record) == _outline(before.record):
            readings = _readings(visit.record)
            if len(readings) >= LEAST_READINGS and readings == _readings(before.record):
                message = say(
                    "all {readings} readings are those of {before}, number for number",
                    readings=len(readings),
                    before=before.file.name,
                )
                yield warning(
                    visit.place("feet"),
                    "readings-of-visit-before",
                    message,
                    say("If the file was copied, type what was measured this time"),
                )


def copy_problems(horses: Sequence[HorseRecord]) -> Iterator[Problem]:
    """Visits of one horse that are those of another on the same days; each pair of horses is told once.

    horses: those of the practice, in the order of their files. Of those that left nothing is told: their record may
    have gone on in another.
    """
    here = [horse for horse in horses if horse.horse.left is None]
    for pair in _alike(here).values():
        if sum(count for _, _, count in pair) >= LEAST_READINGS:
            visit, first = (here[number].written[index] for number, index in pair[0][:2])
            message = say("the readings are those of {first}, number for number", first=first.within)
            if len(pair) > 1:
                days = counted(len(pair) - 1, "day")
                message = say("{message} and so on {days} more", message=message, days=days)
            yield warning(
                visit.place("feet"),
                "readings-of-another-horse",
                message,
                say("If the file was copied, delete it where it does not belong"),
            )


def _alike(horses: Sequence[HorseRecord]) -> dict[tuple[int, int], list[Copied]]:
    """By two horses' numbers in `horses`: their visits of one day with the same readings."""
    outlines: dict[tuple[dt.date, str], list[Numbered]] = {}
    for number, horse in enumerate(horses):
        for index, visit in enumerate(horse.prints):
            outlines.setdefault((visit.day, visit.outline), []).append((number, index))
    pairs: dict[tuple[int, int], list[Copied]] = {}
    for alike in outlines.values():
        first: dict[str, Numbered] = {}
        for number, index in alike if len(alike) > 1 else ():
            readings, count = _all_readings(horses[number], index)
            like = first.setdefault(readings, (number, index))
            if like[0] != number and count:
                pairs.setdefault((like[0], number), []).append(((number, index), like, count))
    return pairs


def _all_readings(horse: HorseRecord, index: int) -> tuple[str, int]:
    """The hash of a visit's readings, and how many they are; its record is asked where its print tells too little."""
    if told := horse.prints[index].readings:
        return told
    readings = _readings(horse.written[index].record)
    return _hash(readings), len(readings)


def _hash(readings: Readings) -> str:
    return hashlib.sha256(repr(readings).encode()).hexdigest()[:32]


def _tells_enough(visit: Visit) -> bool:
    """Tell whether the outline of a visit holds a number, so that hardly another has the same."""
    looked = [at for found in visit.feet.values() for at in (found.before, found.after) if at]
    return any(at.toe_length is not None or at.toe_angle is not None for at in looked)


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

"""The scales: what a grade means in words, and the grades of one scale through the visits.

A grade belongs to its scale. Nothing here turns a grade of one scale into one of another, or puts the two in a row.
"""

from __future__ import annotations

import math
from collections.abc import Mapping, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.naming import Naming
from recordgen.records.models.reference import ScaleWords
from recordgen.records.models.visit import Visit

# The scales of a condition, by their field in a record; those of lameness are named in the record itself.
CONDITION_SCALES = {"henneke": "body condition", "crest": "crest"}


@dataclass(frozen=True)
class Grade:
    """A value on a scale on the day of a visit. note: where and how it was seen, in the trimmer's words."""

    day: date
    grade: float
    note: str | None = None


def grade_words(scale: str, grade: float, table: Mapping[str, ScaleWords], naming: Naming) -> str:
    """A grade in words, with the name and the top of its scale: grade 2 of 5 (AAEP): hard to see at a walk.

    A half grade lies between its two neighbours, which are both told; a scale of which only the total is known tells
    what it counts. Raises KeyError for a scale that is not in the table, ValueError for a grade that is not on it.
    """
    words = table[scale]
    if not words.low <= grade <= words.high or (grade - words.low) % words.step:
        raise ValueError(f"{grade:g} is not on the scale {scale}")
    below, above = (words.grades.get(float(whole)) for whole in (math.floor(grade), math.ceil(grade)))
    if below is None or above is None:
        told = words.meaning
    elif below == above:
        told = below
    else:
        told = naming.phrase("scale_between", low=below, high=above)
    facts = {"grade": f"{grade:g}", "high": f"{words.high:g}", "name": words.name}
    return naming.phrase(f"scale_{words.called}", **facts, words=told)


def grades_by_scale(visits: Sequence[Visit]) -> dict[str, tuple[Grade, ...]]:
    """The grades through the visits, each scale for itself, in the order in which the scales were first used.

    visits: oldest first.
    """
    found: dict[str, list[Grade]] = {}
    for visit in visits:
        if visit.lameness:
            grade = Grade(visit.date, visit.lameness.grade, visit.lameness.note)
            found.setdefault(visit.lameness.scale, []).append(grade)
        for field, scale in CONDITION_SCALES.items():
            score = getattr(visit.condition, field, None)
            if score is not None:
                found.setdefault(scale, []).append(Grade(visit.date, score))
    return {scale: tuple(grades) for scale, grades in found.items()}

"""A practice and its reference tables, read together: what every command begins with."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from pathlib import Path

from recordgen.problems import Problem, Problems, Trouble
from recordgen.records.archive import read_practice
from recordgen.records.moves import moves_told
from recordgen.records.practice import Practice
from recordgen.records.reference import Reference
from recordgen.records.repeats import repeated_visits
from recordgen.records.strays import with_strays
from recordgen.records.tables import read_reference
from recordgen.records.visit import Visit
from recordgen.records.walk import Walk


class RecordsTrouble(Trouble):
    """The records hold errors; `problems` lists all of them, warnings included."""

    def __init__(self, problems: Problems) -> None:
        super().__init__(problems.counted(), "Mend what recordgen check lists")
        self.problems = problems


@dataclass(frozen=True)
class Whole:
    """A practice that was read without an error, its tables, and what is unlikely about it.

    repeated: the visits of all stables that tell how well readings repeat.
    """

    practice: Practice
    reference: Reference
    warnings: tuple[Problem, ...]
    repeated: tuple[Visit, ...] = ()


def look_through(
    folder: Path, today: dt.date, only: str | None = None, files: bool = False
) -> tuple[Practice | None, Reference, Problems]:
    """The practice in `folder`, or None where something is wrong, its tables, and all problems of both.

    today: visits after this day are refused. only: the one stable to read. files: whether to tell of the files in the
    folder that are no records, too.
    """
    reference, wrong = read_reference(folder)
    practice, problems = read_practice(folder, today, only, reference)
    problems.extend(wrong)
    if files:
        problems = with_strays(problems, folder, only)
        problems.extend(moves_told(Walk(folder)))
    return (None if problems.errors else practice), reference, problems


def read_whole(folder: Path, today: dt.date, only: str | None = None, files: bool = False) -> Whole:
    """The same where nothing is wrong. Raises RecordsTrouble where something is."""
    practice, reference, problems = look_through(folder, today, only, files)
    if practice is None:
        raise RecordsTrouble(problems)
    return Whole(practice, reference, tuple(problems.warnings), repeated_visits(folder))

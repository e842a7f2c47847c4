"""A practice and its reference tables, read together: what every command begins with."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass
from pathlib import Path

from recordgen.problems import Problem, Problems, Trouble
from recordgen.records.archive import read_practice
from recordgen.records.practice import Practice
from recordgen.records.reference import Reference
from recordgen.records.tables import read_reference


class RecordsTrouble(Trouble):
    """The records hold errors; `problems` lists all of them, warnings included."""

    def __init__(self, problems: Problems) -> None:
        super().__init__(problems.counted(), "Mend what recordgen check lists")
        self.problems = problems


@dataclass(frozen=True)
class Whole:
    """A practice that was read without an error, its tables, and what is unlikely about it."""

    practice: Practice
    reference: Reference
    warnings: tuple[Problem, ...]


def read_whole(folder: Path, today: dt.date, only: str | None = None) -> Whole:
    """The practice in `folder` with its tables.

    today: visits after this day are refused. only: the one stable to read. Raises RecordsTrouble.
    """
    reference, wrong = read_reference(folder)
    practice, problems = read_practice(folder, today, only, reference)
    problems.extend(wrong)
    if practice is None or problems.errors:
        raise RecordsTrouble(problems)
    return Whole(practice, reference, tuple(problems.warnings))

"""A practice and its reference tables, read together: what every command begins with."""

from __future__ import annotations

import datetime as dt
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path

from recordgen.cache.entries import Cache
from recordgen.language.catalogs import ENGLISH_CODE
from recordgen.problems import Problem, Problems, Trouble
from recordgen.records.checks.strays import with_strays
from recordgen.records.history.moves import warn_of_moves
from recordgen.records.load.folders import VISIT_FILE, Walk
from recordgen.records.load.practice import read_practice_file, read_rest
from recordgen.records.load.tables import read_reference
from recordgen.records.models.practice import HorseRecord, Practice
from recordgen.records.models.reference import Reference
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written, read_with_key
from recordgen.sentences import say


def find_repeated_visits(practice: Practice, only: str | None = None) -> tuple[Visit, ...]:
    """The visits with `repeat:`, or a picture traced twice, of every stable, in the order of their files.

    Those with an error are left out.

    How well readings repeat belongs to the practice: a stable that is built alone is told by the same errors.
    only: the one stable that was read; of the others the visits are read here.
    """
    found = {visit.file: visit.record for horse in practice.horses for visit in _repeated_visits(horse)}
    if only is not None:
        others = _visit_files_but_of(only, Walk(practice.folder))
        found |= {file: visit for file in others if (visit := read_with_key(file, Visit, "repeat", "tracings"))}
    in_order = [found[file] for file in sorted(found, key=lambda file: file.parts)]
    return tuple(visit for visit in in_order if any(foot.repeats for foot in visit.feet.values()))


def _repeated_visits(horse: HorseRecord) -> list[Written[Visit]]:
    return [horse.written[index] for index, one in enumerate(horse.prints) if one.repeats]


def _visit_files_but_of(stable: str, walk: Walk) -> Iterator[Path]:
    for other in (path for path in walk.folders(walk.root) if path.name != stable):
        for horse in walk.folders(other):
            yield from (day for day in walk.entries(horse) if VISIT_FILE.fullmatch(day.name) and walk.may_read(day))


class RecordsTrouble(Trouble):
    """The records hold errors; `problems` lists all of them, warnings included."""

    def __init__(self, problems: Problems) -> None:
        super().__init__(problems.counted(), say("Mend what recordgen check lists"))
        self.problems = problems


@dataclass(frozen=True)
class Whole:
    """A practice that was read without an error, its tables, and what is unlikely about it.

    repeated: the visits of all stables that tell how well readings repeat. seen_before: how many warnings were seen
    and may stand.
    """

    practice: Practice
    reference: Reference
    warnings: tuple[Problem, ...]
    repeated: tuple[Visit, ...] = ()
    seen_before: int = 0


def look_through(
    folder: Path,
    today: dt.date,
    only: str | None = None,
    files: bool = False,
    beside: Collection[str] = (),
    cache: Cache | None = None,
) -> tuple[Practice | None, Reference, Problems]:
    """The practice in `folder`, or None where something is wrong, its tables, and all problems of both.

    today: visits after this day are refused. only: the one stable to read. files: whether to tell of the files in the
    folder that are no records, too. beside: stables of the practice whose folders need not be here. cache: of what
    looking over visits told; the user's own where None.
    """
    walk = Walk(folder)
    file = read_practice_file(walk)
    # English where no language is named, or anything is wrong there.
    language = file.record.language if file and file.whole else ENGLISH_CODE
    reference, wrong = read_reference(folder, language)
    practice, problems = read_rest(walk, file, today, only, reference, beside, cache)
    problems.extend(wrong)
    if files:
        problems = with_strays(problems, folder, only)
        problems.extend(warn_of_moves(Walk(folder)))
    return (None if problems.errors else practice), reference, problems


def read_whole(
    folder: Path, today: dt.date, only: str | None = None, files: bool = False, cache: Cache | None = None
) -> Whole:
    """The same where nothing is wrong. Raises RecordsTrouble where something is."""
    practice, reference, problems = look_through(folder, today, only, files, cache=cache)
    if practice is None:
        raise RecordsTrouble(problems)
    repeated = find_repeated_visits(practice, only)
    return Whole(practice, reference, tuple(problems.warnings), repeated, len(problems.left))


def read_one_stable(folder: Path, today: dt.date, stable: str, beside: Collection[str], cache: Cache) -> Whole:
    """One stable of a practice whose others need not be here. Raises RecordsTrouble where something is wrong.

    beside: the names of all stables' folders. cache: of what looking over visits told.
    """
    practice, reference, problems = look_through(folder, today, stable, beside=beside, cache=cache)
    if practice is None:
        raise RecordsTrouble(problems)
    return Whole(practice, reference, tuple(problems.warnings), seen_before=len(problems.left))

"""The visits of one horse: read and looked over once, then at hand when they are asked for.

A practice has thousands of visits, and most commands look at few of them. What looking them over told is kept by the
bytes it was read from, so that an unchanged visit is not parsed again; its record is read only when somebody asks.
"""

from __future__ import annotations

import datetime as dt
import hashlib
import json
import os
from collections.abc import Sequence
from dataclasses import dataclass, field
from functools import cached_property
from pathlib import Path

from recordgen.cache.entries import Cache
from recordgen.cache.spelling import key_of
from recordgen.cache.values import as_json, from_json
from recordgen.cache.versions import program_version
from recordgen.problems import Place, Problem, SeenWarning
from recordgen.progress import steps
from recordgen.records.checks.bare_lengths import bare_lengths
from recordgen.records.checks.copies import print_of, twice
from recordgen.records.checks.records import horse_problems, visit_problems
from recordgen.records.checks.references import ended_in_vain, unknown_in_visit
from recordgen.records.checks.seen import note_seen
from recordgen.records.checks.sizes import Animal, size_problems
from recordgen.records.checks.trims import trim_problems
from recordgen.records.load.folders import Walk
from recordgen.records.load.on_demand import Packed
from recordgen.records.models.horse import Horse
from recordgen.records.models.lines.shape_table import known_versions
from recordgen.records.models.practice import VisitPrint
from recordgen.records.models.reference import Reference
from recordgen.records.models.visit import Visit
from recordgen.records.photos.files import Photo, warn_without_visit
from recordgen.records.yaml.read import Written, read_partly
from recordgen.records.yaml.text import LARGEST_FILE_BYTES
from recordgen.sentences import say
from recordgen.workers import map_over_cores

KIND = "readings"
# From so many visits on, reading is shared among the cores: it takes longer than beginning the processes.
MANY = 400


@dataclass(frozen=True)
class HorseFolder:
    """A horse's folder before its visits are read. file: its own file, None where that cannot be read."""

    path: Path
    file: Written[Horse] | None
    days: tuple[Path, ...]
    photos: tuple[Photo, ...]


@dataclass(frozen=True)
class LookOver:
    """The outcome of looking over the visits of one horse: their prints in order, without blank ones, and all problems.

    since: the day it was looked over on. Where nothing was wrong then, nothing is on a later day: all that is held
    against the day is that nothing lies after it. seen: the entries about warnings that may stand.
    """

    since: dt.date
    prints: tuple[VisitPrint, ...]
    problems: tuple[Problem, ...]
    seen: tuple[SeenWarning, ...] = ()


CLASSES = {one.__name__: one for one in (LookOver, VisitPrint, Problem, Place, SeenWarning)}


@dataclass(frozen=True)
class VisitsRead:
    """The visits of a horse: what looking over them told, and the records where they were parsed for it.

    digests: by the file's name, the SHA-256 of what was read.
    """

    looked: LookOver
    digests: dict[str, bytes] = field(default_factory=dict)
    packed: Packed | None = None


@dataclass(frozen=True)
class VisitReader:
    """Reads the visits of horses.

    usual: how the practice usually takes its measures. inches_since: from which day on feet are measured in inches;
    None where they are not.
    """

    root: Path
    today: dt.date
    usual: dict[str, str]
    reference: Reference | None
    cache: Cache
    inches_since: dt.date | None = None

    def read_all(self, folders: Sequence[HorseFolder]) -> list[VisitsRead]:
        """The visits of each horse, in order; those that are not kept are read by all cores where they are many."""
        found = [self._read_kept(folder) for folder in folders]
        missing = [folder for folder, one in zip(folders, found, strict=True) if one is None]
        alone = sum(len(folder.days) for folder in missing) < MANY
        made = map_over_cores(self.read, missing, 1 if alone else None)
        return [one or next(made) for one in steps(say("Reading horses"), found)]

    def read(self, folder: HorseFolder) -> VisitsRead:
        """The visits of one horse, read and looked over; kept for the next time where nothing is wrong."""
        walk = Walk(self.root)
        horse = folder.file.record if folder.file else None
        visits = [visit for day in folder.days if (visit := self._visit(walk, day, horse))]
        self._look_over(walk, folder, visits)
        in_order = sorted(visits, key=lambda visit: (visit.record.date, visit.file.stem))
        filled = tuple(visit for visit in in_order if not visit.record.is_blank)
        if folder.file and folder.file.record.left is None:
            walk.problems.extend(twice(filled))
        looked = LookOver(self.today, tuple(map(print_of, filled)), tuple(walk.problems), tuple(walk.problems.seen))
        digests = {visit.file.name: hashlib.sha256(visit.text).digest() for visit in visits}
        if not walk.problems.errors and digests == (told := self._digests(folder)):
            self._keep(folder, told, looked)
        return VisitsRead(looked, digests, Packed.of(filled))

    def _visit(self, walk: Walk, path: Path, horse: Horse | None) -> Written[Visit] | None:
        if not walk.may_read(path):
            return None
        written, problems = read_partly(path, walk.shown(path), Visit)
        walk.problems.extend(problems)
        if written:
            animal = Animal.of(horse, written.record.date)
            walk.problems.extend(visit_problems(written, path.name[:10], self.today, animal))
            walk.problems.extend(trim_problems(written, self.usual, self.reference))
            walk.problems.extend(size_problems(written, animal))
            if self.inches_since and written.record.date >= self.inches_since:
                walk.problems.extend(bare_lengths(written))
        if written and self.reference:
            walk.problems.extend(unknown_in_visit(written, self.reference))
            note_seen(written, walk.problems, self.today, self.reference, written.record.date)
        return written

    def _look_over(self, walk: Walk, folder: HorseFolder, visits: Sequence[Written[Visit]]) -> None:
        """Looks at what the visits of a horse tell together, and beside its own file and its photographs."""
        walk.problems.extend(ended_in_vain(visits, self.reference.care if self.reference else {}))
        if all(visit.whole for visit in visits) and len(visits) == len(folder.days):
            warn_without_visit(walk, self._photos_here(folder), [visit.record for visit in visits])
        if folder.file:
            walk.problems.extend(horse_problems(folder.file, visits, self.today))

    def _photos_here(self, folder: HorseFolder) -> list[Photo]:
        return [photo for photo in folder.photos if photo.subject.day <= self.today]

    def _read_kept(self, folder: HorseFolder) -> VisitsRead | None:
        digests = self._digests(folder)
        held = self.cache.get(KIND, self._key(folder, digests)) if digests is not None else None
        looked: LookOver | None = from_json(json.loads(held), CLASSES) if held else None
        return VisitsRead(looked, digests or {}) if looked and looked.since <= self.today else None

    def _keep(self, folder: HorseFolder, digests: dict[str, bytes], looked: LookOver) -> None:
        self.cache.put(KIND, self._key(folder, digests), json.dumps(as_json(looked, CLASSES)).encode())

    def _digests(self, folder: HorseFolder) -> dict[str, bytes] | None:
        """The SHA-256 of each visit by its file's name; None where nothing is kept, or one is no plain file."""
        if not self._keeps or folder.file is None:
            return None
        try:
            return {path.name: _digest(path) for path in folder.days}
        except OSError:
            return None

    def _key(self, folder: HorseFolder, digests: dict[str, bytes]) -> str:
        own = folder.file.text if folder.file else b""
        photos = [photo.file.name for photo in self._photos_here(folder)]
        return key_of(self._shared, Walk(self.root).shown(folder.path), own, digests, photos)

    @cached_property
    def _keeps(self) -> bool:
        return self.reference is not None and self.cache.folder is not None and not self.cache.why_not

    @cached_property
    def _shared(self) -> str:
        """The key of what the reading of each visit goes by."""
        tables = self.reference.model_dump_json() if self.reference else ""
        return key_of(program_version(), self.usual, tables, known_versions(), str(self.inches_since))


def _digest(path: Path) -> bytes:
    """The SHA-256 of a file that is no link. Raises OSError for one that is, and for what cannot be opened."""
    file = os.open(path, os.O_RDONLY | getattr(os, "O_NOFOLLOW", 0) | getattr(os, "O_NONBLOCK", 0))
    with open(file, "rb") as opened:
        return hashlib.sha256(opened.read(LARGEST_FILE_BYTES + 1)).digest()

"""A folder of records as one `Practice`: stables, their horses, each horse's visits in order.

Which file lies where stands in `layout.py`.
"""

from __future__ import annotations

import datetime as dt
import gc
import os
from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import dataclass, replace
from pathlib import Path

from recordgen.cache.entries import Cache, user_cache
from recordgen.problems import Problems, quoted
from recordgen.records.checks.bare_lengths import bare_lengths
from recordgen.records.checks.copies import copy_problems
from recordgen.records.checks.duplicates import duplicate_problems, is_same, namesakes
from recordgen.records.checks.placeholders import placeholder_problems
from recordgen.records.checks.references import unknown_in_horse, unknown_in_practice, unknown_in_stable
from recordgen.records.checks.seen import note_seen
from recordgen.records.load.folders import VISIT_FILE, Walk, stable_meant, stable_names
from recordgen.records.load.horse_visits import HorseFolder, VisitReader, VisitsRead
from recordgen.records.load.on_demand import RecordsOf, Shelf, WrittenVisits
from recordgen.records.load.own_outlines import read_outlines
from recordgen.records.models.horse import SHARED_FILE, Horse, Shared, SharedFile, shared_problems
from recordgen.records.models.practice import HorseRecord, Practice, StableRecord
from recordgen.records.models.reference import Reference
from recordgen.records.models.settings import PracticeFile, inches_since
from recordgen.records.models.stable import Stable
from recordgen.records.pages.checks import page_problems
from recordgen.records.pages.files import read_pages
from recordgen.records.pages.model import OwnPages
from recordgen.records.photos.files import read_photos
from recordgen.records.yaml.read import Kind, Written, read_partly
from recordgen.sentences import say


def read_practice(
    folder: Path,
    today: dt.date,
    only: str | None = None,
    reference: Reference | None = None,
    beside: Collection[str] = (),
    cache: Cache | None = None,
) -> tuple[Practice | None, Problems]:
    """The practice in `folder`, or None where something is wrong, and all problems of all files.

    today: visits after this day are refused. only: the one stable to read; all where None.
    reference: the tables that names of methods, care notes and cautions must stand in; not looked at where None.
    beside: stables of the practice whose folders need not be here. cache: of what looking over visits told; the user's
    own where None.
    """
    walk = Walk(folder)
    return read_rest(walk, read_practice_file(walk), today, only, reference, beside, cache)


def read_practice_file(walk: Walk) -> Written[PracticeFile] | None:
    """The file of the practice as far as it is right; its problems are the walk's."""
    if not os.path.isdir(walk.root):
        return None
    return _file(walk, walk.root / "practice.yaml", PracticeFile)


def read_rest(
    walk: Walk,
    file: Written[PracticeFile] | None,
    today: dt.date,
    only: str | None = None,
    reference: Reference | None = None,
    beside: Collection[str] = (),
    cache: Cache | None = None,
) -> tuple[Practice | None, Problems]:
    """The same, of a practice whose own file was read on this walk."""
    reader = _Reader(walk, file, today, reference, beside, cache or user_cache())
    with _without_collecting():
        practice = reader.practice(only)
    return (None if walk.problems.errors else practice), walk.problems


@contextmanager
def _without_collecting() -> Iterator[None]:
    """Holds back Python's search for cycles; what is read holds none, and the search costs a quarter of the time."""
    was_on = gc.isenabled()
    gc.disable()
    try:
        yield
    finally:
        if was_on:
            gc.enable()


@dataclass(frozen=True)
class _StableFolder:
    """A stable's folder before the visits of its horses are read. shared: by the horse's folder, its log."""

    path: Path
    file: Written[Stable] | None
    pages: OwnPages
    horses: tuple[HorseFolder, ...]
    shared: Mapping[Path, tuple[Shared, ...]]


class _Reader:
    """Reads the folder once, from the practice down to each horse, and then the visits of all horses."""

    def __init__(
        self,
        walk: Walk,
        own: Written[PracticeFile] | None,
        today: dt.date,
        reference: Reference | None,
        beside: Collection[str],
        cache: Cache,
    ) -> None:
        self.walk = walk
        self.own = own
        self.beside = beside
        self.today = today
        self.reference = reference
        self.cache = cache
        self.shelf = Shelf()
        self.pages = OwnPages()

    def practice(self, only: str | None) -> Practice | None:
        folder = self.walk.root
        if not os.path.isdir(folder):
            way_out = say("Name another with --records, or make one with: recordgen init")
            self.walk.tell(folder, "folder-missing", say("there is no such folder"), way_out)
            return None
        file = self.own
        if file:
            self.walk.problems.extend(placeholder_problems(file))
        if file and self.reference:
            self.walk.problems.extend(unknown_in_practice(file, self.reference))
            note_seen(file, self.walk.problems, self.today, self.reference)
        self.pages = self.read_own_pages(folder)
        outlines = read_outlines(self.walk)
        names = self.walk.folders(folder, only)
        if not names:
            code, missing = "stable-missing", say("there is no stable here yet")
            if only:
                code, missing = "stable-unknown", say("there is no stable {stable}", stable=quoted(only))
            self.walk.tell(folder, code, missing, stable_meant(only or "", folder))
        stables = [self.stable(name) for name in names]
        self.walk.problems.extend((*duplicate_problems(horses := _files_of(stables)), *namesakes(horses)))
        usual = dict(file.record.methods) if file else {}
        reader = VisitReader(folder, self.today, usual, self.reference, self.cache, self.inches_since)
        records = self.with_visits(stables, reader)
        self.walk.problems.extend(copy_problems([horse for stable in records for horse in stable.horses]))
        return Practice(folder, file.record, tuple(_with_earlier(records)), self.pages, outlines) if file else None

    @property
    def inches_since(self) -> dt.date | None:
        """The day from which on feet are measured in inches here; None where they are not."""
        return inches_since(self.own.record) if self.own else None

    def with_visits(self, stables: Sequence[_StableFolder], reader: VisitReader) -> list[StableRecord]:
        """The records of stables, the visits of their horses included."""
        folders = [horse for stable in stables for horse in stable.horses]
        visits = dict(zip((folder.path for folder in folders), reader.read_all(folders), strict=True))
        for read in visits.values():
            self.walk.problems.extend(read.looked.problems)
            self.walk.problems.seen.extend(read.looked.seen)
        return [record for stable in stables if (record := self.stable_record(stable, visits))]

    def stable_record(self, stable: _StableFolder, visits: Mapping[Path, VisitsRead]) -> StableRecord | None:
        if stable.file is None:
            return None
        horses = [
            self.horse_record(horse, horse.file.record, visits[horse.path], stable.shared.get(horse.path, ()))
            for horse in stable.horses
            if horse.file
        ]
        by_name = sorted(horses, key=lambda horse: (horse.horse.name.lower(), horse.slug))
        return StableRecord(stable.path.name, stable.file.record, tuple(by_name), stable.pages)

    def horse_record(
        self, folder: HorseFolder, horse: Horse, visits: VisitsRead, shared: tuple[Shared, ...]
    ) -> HorseRecord:
        path, prints = folder.path, visits.looked.prints
        files = tuple(one.file for one in prints)
        written = WrittenVisits(path, self.walk.shown(path), files, visits.digests, visits.packed, self.shelf)
        names = (path.name, path.parent.name)
        return HorseRecord(*names, horse, RecordsOf(written), written, prints, shared=shared, photos=folder.photos)

    def read_own_pages(self, folder: Path) -> OwnPages:
        """The own pages of a practice's or a stable's folder, held against those of the practice."""
        found = read_pages(self.walk, folder)
        self.walk.problems.extend(page_problems(self.pages, found, self.walk.shown))
        return found

    def file(self, path: Path, model: type[Kind]) -> Written[Kind] | None:
        return _file(self.walk, path, model)

    def stable(self, path: Path) -> _StableFolder:
        file = self.file(path / "stable.yaml", Stable)
        if file:
            self.walk.problems.extend(placeholder_problems(file))
        if file and self.reference:
            note_seen(file, self.walk.problems, self.today, self.reference)
        if file and file.record.near:
            self.walk.problems.extend(unknown_in_stable(file, sorted({*stable_names(self.walk.root), *self.beside})))
        self.walk.strangers(path, {"stable.yaml"})
        pages, folders = self.read_own_pages(path), self.walk.folders(path)
        return _StableFolder(path, file, pages, tuple(map(self.horse, folders)), dict(map(self.read_log, folders)))

    def horse(self, path: Path) -> HorseFolder:
        file = self.file(path / "horse.yaml", Horse)
        days = tuple(day for day in self.walk.entries(path) if VISIT_FILE.fullmatch(day.name))
        log = {SHARED_FILE} if os.path.lexists(path / SHARED_FILE) else set()
        self.walk.strangers(path, {"horse.yaml", *log, *(day.name for day in days)})
        self.walk.unread_folders(path)
        photos = read_photos(self.walk, path, self.today)
        if file and self.reference:
            self.walk.problems.extend(unknown_in_horse(file, self.reference))
            self.walk.problems.extend(bare_lengths(file, self.reference) if self.inches_since else ())
            note_seen(file, self.walk.problems, self.today, self.reference)
        return HorseFolder(path, file, days, photos)

    def read_log(self, path: Path) -> tuple[Path, tuple[Shared, ...]]:
        """A horse's folder and its log."""
        written = self.file(path / SHARED_FILE, SharedFile) if os.path.lexists(path / SHARED_FILE) else None
        if written is None:
            return path, ()
        self.walk.problems.extend(shared_problems(written, self.today))
        return path, written.record.shared


def _file(walk: Walk, path: Path, model: type[Kind]) -> Written[Kind] | None:
    if not walk.may_read(path):
        return None
    written, problems = read_partly(path, walk.shown(path), model)
    walk.problems.extend(problems)
    return written


def _files_of(stables: Sequence[_StableFolder]) -> list[Written[Horse]]:
    """The files of all horses, in order."""
    return [horse.file for stable in stables for horse in stable.horses if horse.file]


def _with_earlier(stables: Sequence[StableRecord]) -> Iterator[StableRecord]:
    """The stables, each horse that came from elsewhere with the records of it that ended."""
    ended = [horse for stable in stables for horse in stable.horses if horse.horse.left]
    for stable in stables:
        yield replace(stable, horses=tuple(_since_before(horse, ended) for horse in stable.horses))


def _since_before(horse: HorseRecord, ended: Sequence[HorseRecord]) -> HorseRecord:
    before = [one for one in ended if one is not horse and is_same(one.horse, horse.horse)]
    return replace(horse, earlier=tuple(f"{one.stable}/{one.slug}" for one in before)) if before else horse

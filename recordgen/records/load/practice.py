"""A folder of records as one `Practice`: stables, their horses, each horse's visits in order.

Which file lies where stands in `layout.py`.
"""

from __future__ import annotations

import datetime as dt
import gc
import os
from collections.abc import Collection, Iterator, Mapping, Sequence
from contextlib import contextmanager
from dataclasses import replace
from pathlib import Path

from recordgen.problems import Problems, quoted
from recordgen.progress import steps
from recordgen.records.checks.copies import copied
from recordgen.records.checks.duplicates import doubled, is_same, namesakes
from recordgen.records.checks.records import horse_problems, visit_problems
from recordgen.records.checks.references import (
    ended_in_vain,
    unknown_in_horse,
    unknown_in_practice,
    unknown_in_stable,
    unknown_in_visit,
)
from recordgen.records.checks.trims import trim_problems
from recordgen.records.load.folders import VISIT_FILE, Walk, stable_meant, stable_names
from recordgen.records.models.horse import SHARED_FILE, Horse, Shared, SharedFile, shared_problems
from recordgen.records.models.practice import HorseRecord, Practice, StableRecord
from recordgen.records.models.reference import Reference
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from recordgen.records.pages.checks import page_problems
from recordgen.records.pages.files import read_pages
from recordgen.records.pages.model import OwnPages
from recordgen.records.photos.files import read_photos, without_visit
from recordgen.records.yaml.read import Kind, Written, read_as_far


def read_practice(
    folder: Path,
    today: dt.date,
    only: str | None = None,
    reference: Reference | None = None,
    beside: Collection[str] = (),
) -> tuple[Practice | None, Problems]:
    """The practice in `folder`, or None where something is wrong, and all problems of all files.

    today: visits after this day are refused. only: the one stable to read; all where None.
    reference: the tables that names of methods, care notes and cautions must stand in; not looked at where None.
    beside: stables of the practice whose folders need not be here.
    """
    reader = _Reader(Walk(folder), today, reference, beside)
    with _without_collecting():
        practice = reader.practice(only)
    problems = reader.walk.problems
    return (None if problems.errors else practice), problems


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


class _Reader:
    """Reads the folder once, from the practice down to each visit."""

    def __init__(self, walk: Walk, today: dt.date, reference: Reference | None, beside: Collection[str]) -> None:
        self.walk = walk
        self.beside = beside
        self.today = today
        self.reference = reference
        self.usual: Mapping[str, str] = {}
        self.horses: list[Written[Horse]] = []
        self.pages = OwnPages()

    def practice(self, only: str | None) -> Practice | None:
        folder = self.walk.root
        if not os.path.isdir(folder):
            way_out = "Name another with --records, or make one with: recordgen init"
            self.walk.tell(folder, "folder-missing", "there is no such folder", way_out)
            return None
        file = self.file(folder / "practice.yaml", PracticeFile)
        self.usual = file.record.methods if file else {}
        if file and self.reference:
            self.walk.problems.extend(unknown_in_practice(file, self.reference))
        self.pages = self.own_pages(folder)
        names = self.walk.folders(folder, only)
        if not names:
            code, missing = "stable-missing", "there is no stable here yet"
            if only:
                code, missing = "stable-unknown", f"there is no stable {quoted(only)}"
            self.walk.tell(folder, code, missing, stable_meant(only or "", folder))
        stables = [stable for stable in map(self.stable, steps("Reading stables", names)) if stable]
        self.walk.problems.extend((*doubled(self.horses), *namesakes(self.horses)))
        self.walk.problems.extend(copied([horse for stable in stables for horse in stable.horses]))
        return Practice(folder, file.record, tuple(_with_earlier(stables)), self.pages) if file else None

    def own_pages(self, folder: Path) -> OwnPages:
        """The own pages of a practice's or a stable's folder, held against those of the practice."""
        found = read_pages(self.walk, folder)
        self.walk.problems.extend(page_problems(self.pages, found, self.walk.shown))
        return found

    def file(self, path: Path, model: type[Kind]) -> Written[Kind] | None:
        if not self.walk.may_read(path):
            return None
        written, problems = read_as_far(path, self.walk.shown(path), model)
        self.walk.problems.extend(problems)
        return written

    def stable(self, path: Path) -> StableRecord | None:
        file = self.file(path / "stable.yaml", Stable)
        if file and file.record.near:
            self.walk.problems.extend(unknown_in_stable(file, sorted({*stable_names(self.walk.root), *self.beside})))
        self.walk.strangers(path, {"stable.yaml"})
        pages = self.own_pages(path)
        horses = [horse for horse in map(self.horse, self.walk.folders(path)) if horse]
        by_name = sorted(horses, key=lambda horse: (horse.horse.name.lower(), horse.slug))
        return StableRecord(path.name, file.record, tuple(by_name), pages) if file else None

    def horse(self, path: Path) -> HorseRecord | None:
        file = self.file(path / "horse.yaml", Horse)
        days = [day for day in self.walk.entries(path) if VISIT_FILE.fullmatch(day.name)]
        log = [path / SHARED_FILE] if os.path.lexists(path / SHARED_FILE) else []
        self.walk.strangers(path, {"horse.yaml", *(one.name for one in (*days, *log))})
        self.walk.unread_folders(path)
        visits = [visit for visit in map(self.visit, days) if visit]
        self.walk.problems.extend(ended_in_vain(visits, self.reference.care if self.reference else {}))
        photos = read_photos(self.walk, path, self.today)
        if all(visit.whole for visit in visits) and len(visits) == len(days):
            here = [photo for photo in photos if photo.subject.day <= self.today]
            without_visit(self.walk, here, [visit.record for visit in visits])
        shared = tuple(entry for one in log for entry in self.shared(one))
        if file is None:
            return None
        self.horses.append(file)
        if self.reference:
            self.walk.problems.extend(unknown_in_horse(file, self.reference))
        self.walk.problems.extend(horse_problems(file, visits, self.today))
        in_order = sorted(visits, key=lambda visit: (visit.record.date, visit.file.stem))
        filled = tuple(visit for visit in in_order if not visit.record.is_blank)
        by_day = tuple(one.record for one in filled)
        return HorseRecord(path.name, path.parent.name, file.record, by_day, filled, shared=shared, photos=photos)

    def shared(self, path: Path) -> tuple[Shared, ...]:
        written = self.file(path, SharedFile)
        if written is None:
            return ()
        self.walk.problems.extend(shared_problems(written, self.today))
        return written.record.shared

    def visit(self, path: Path) -> Written[Visit] | None:
        written = self.file(path, Visit)
        if written:
            self.walk.problems.extend(visit_problems(written, path.name[:10], self.today))
            self.walk.problems.extend(trim_problems(written, self.usual, self.reference))
        if written and self.reference:
            self.walk.problems.extend(unknown_in_visit(written, self.reference))
        return written


def _with_earlier(stables: Sequence[StableRecord]) -> Iterator[StableRecord]:
    """The stables, each horse that came from elsewhere with the records of it that ended."""
    ended = [horse for stable in stables for horse in stable.horses if horse.horse.left]
    for stable in stables:
        yield replace(stable, horses=tuple(_since_before(horse, ended) for horse in stable.horses))


def _since_before(horse: HorseRecord, ended: Sequence[HorseRecord]) -> HorseRecord:
    before = [one for one in ended if one is not horse and is_same(one.horse, horse.horse)]
    return replace(horse, earlier=tuple(f"{one.stable}/{one.slug}" for one in before)) if before else horse

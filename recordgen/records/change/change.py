"""A change that was planned: told before it is made, made whole or not at all, and kept as one entry of git."""

from __future__ import annotations

import datetime as dt
import os
from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from contextlib import ExitStack
from dataclasses import dataclass, field
from pathlib import Path, PurePosixPath
from typing import Literal

from recordgen.files import spare_room, write_new, write_whole, writing
from recordgen.git.changes import kinds_of_change
from recordgen.git.keep import commit, forget
from recordgen.git.repository import files_of, top_of
from recordgen.git.troubles import GitTrouble
from recordgen.problems import Problem, Problems, Trouble
from recordgen.records.layout import Part, home_of
from recordgen.records.load.everything import RecordsTrouble, look_through
from recordgen.records.models.fields import Record
from recordgen.records.models.horse import Horse
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Stable
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import check_bytes, read_partly
from recordgen.sentences import Said, and_more, say

STAYS = say("Everything stays as it was")
# waits: written, and kept by the entry that comes next.
Made = Literal["kept", "waits", "without git"]
_MODELS: dict[Part, type[Record]] = {"practice": PracticeFile, "stable": Stable, "horse": Horse, "visit": Visit}


@dataclass(frozen=True)
class Change:
    """A change of the records in `records`, planned and not yet made.

    says: the text of its entry. told: what it does, a line each. then: the command that comes next.
    folders: each folder that gets another place, with that place; they go first. files: the new bytes of each file, by
    where it lies then. by_hand: whether they were changed by hand, so that they are kept as they lie. may_wait: whether
    a file that is not in git as it lies is written all the same, and kept by the entry that comes next.
    """

    records: Path
    says: str
    told: tuple[Said, ...]
    then: str
    folders: tuple[tuple[Path, Path], ...] = ()
    files: Mapping[Path, bytes] = field(default_factory=dict)
    by_hand: bool = False
    may_wait: bool = False

    def look_over(self) -> None:
        """Raises RecordsTrouble where a file would not be a record."""
        found = Problems()
        for path, raw in self.files.items():
            home = home_of(PurePosixPath(path.relative_to(self.records).as_posix()))
            if home and home.part in _MODELS:
                found.extend(check_bytes(raw, path, path.as_posix(), _MODELS[home.part]))
        if found.errors:
            raise RecordsTrouble(Problems(found.errors))


def make(change: Change, today: dt.date) -> Made:
    """Make a change and keep it as an entry of git, where the records are in a repository and it need not wait.

    today: the records are looked through as of this day, before and after. Raises Trouble, with everything as it was,
    where the records would hold an error that was not there before, a disk or git refuses, or something in the places
    that change is not in git yet.
    """
    change.look_over()
    in_git = top_of(change.records) is not None
    names = tuple(_files_of_entry(change)) if in_git else ()
    changed = kinds_of_change(change.records) if in_git and not change.by_hand else {}
    waits = change.may_wait and bool(changed.keys() & change.files.keys())
    if not waits and (unkept := _names_not_in_git(change, changed)):
        told = and_more(", ".join(unkept[:3]), len(unkept) - 3)
        raise Trouble(say("not in git yet as it is now: {files}", files=told), say("Keep it first: recordgen commit"))
    try:
        with ExitStack() as way_back, spare_room(change.records, STAYS):
            _do_rightly(change, today, way_back)
            if in_git and not waits:
                commit(change.records, names, change.says)
            way_back.pop_all()
    except GitTrouble:
        # Once the files lie as before, and nothing holds room on the disk that git needs for it.
        forget(change.records, names)
        raise
    return "waits" if waits else "kept" if in_git else "without git"


def _do_rightly(change: Change, today: dt.date, way_back: ExitStack) -> None:
    """Makes the change; where an error is found then, it is made only if that was there before, too."""
    _do(change, way_back)
    errors = _errors(change.records, today)
    if not errors:
        return
    way_back.close()
    before = Counter((one.code, str(one.message)) for one in _errors(change.records, today))
    if new := [one for one in errors if not _take(before, (one.code, one.message))]:
        raise RecordsTrouble(Problems(new))
    _do(change, way_back)


def _do(change: Change, way_back: ExitStack) -> None:
    for old, new in change.folders:
        with writing(new, STAYS):
            _make_folder(new.parent, way_back)
            os.rename(old, new)
        way_back.callback(os.rename, new, old)
    for path, raw in change.files.items():
        with writing(path, STAYS):
            _make_folder(path.parent, way_back)
            _write(path, raw, way_back)


def _make_folder(folder: Path, way_back: ExitStack) -> None:
    """A folder, with the way to take away again what was not there."""
    for one in (folder, *folder.parents):
        if one.is_dir():
            break
        way_back.callback(one.rmdir)
    folder.mkdir(parents=True, exist_ok=True)


def _write(path: Path, raw: bytes, way_back: ExitStack) -> None:
    before = path.read_bytes() if path.is_file() else None
    if before is not None:
        way_back.callback(write_whole, path, before)
        write_whole(path, raw)
    elif write_new(path, raw):
        way_back.callback(path.unlink)
    else:
        raise Trouble(say("{path} is there already", path=path), say("Name another"))


def _files_of_entry(change: Change) -> Iterator[Path]:
    """The files of the entry: those in git of each folder, by both their places, and the written ones."""
    for old, new in change.folders:
        for name in sorted(files_of(old).tracked):
            yield from (old / name, new / name)
    yield from change.files


def _names_not_in_git(change: Change, changed: Iterable[Path]) -> list[str]:
    """Names of what changes and is not in git as it lies there: an entry tells of one thing. changed: all of that."""
    old = [folder for folder, _ in change.folders]
    begun = {new: was for was, new in change.folders}
    files = {_as_it_lies(path, begun) for path in change.files}
    return [
        path.relative_to(change.records).as_posix()
        for path in changed
        if (path in files or any(folder in path.parents for folder in old)) and _counts(path, change.records)
    ]


def _as_it_lies(path: Path, begun: Mapping[Path, Path]) -> Path:
    """The place where a file lies before the folders move."""
    around = next((new for new in begun if new in path.parents), None)
    return begun[around] / path.relative_to(around) if around else path


def _counts(path: Path, records: Path) -> bool:
    """Tell whether a file is a record with something in it; any other goes along and stays out of git."""
    home = home_of(PurePosixPath(path.relative_to(records).as_posix()))
    if home is None or home.part != "visit" or not path.is_file():
        return home is not None
    visit, _ = read_partly(path, path.name, Visit)
    return visit is None or not visit.record.is_blank


def _take(counts: Counter[tuple[str, str]], key: tuple[str, str]) -> bool:
    counts[key] -= 1
    return counts[key] >= 0


def _errors(records: Path, today: dt.date) -> list[Problem]:
    return look_through(records, today)[2].errors

"""Folders of stables and horses that were renamed or moved since the last entry, known by what lies in them.

A folder counts as moved where a file of it is gone and the very same file lies in a folder that is new. What else was
changed in it at the same time moves along.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from recordgen.git.changes import KindOfChange, kinds_of_change
from recordgen.git.repository import hashes_of, list_contents
from recordgen.git.troubles import GitTrouble
from recordgen.problems import Place, Problem, warning
from recordgen.records.layout import home_of
from recordgen.records.load.folders import Walk
from recordgen.sentences import Said, say, sentences


@dataclass(frozen=True)
class Move:
    """A folder that moved, as paths from the practice's folder: a stable's (one step) or a horse's (two).

    files: the old path of each file that moved, by its new one.
    """

    old: PurePosixPath
    new: PurePosixPath
    files: Mapping[Path, Path]

    @property
    def is_stable(self) -> bool:
        """Tell whether it is a stable's folder."""
        return len(self.new.parts) == 1


def moves(records: Path, changed: Mapping[Path, KindOfChange]) -> list[Move]:
    """The folders that moved, stables first.

    changed: what happened to each file, by its path under the practice's folder. Raises GitTrouble.
    """
    gone = {_name(path, records) for path, kind in changed.items() if kind == "taken out"}
    come = {_name(path, records) for path, kind in changed.items() if kind == "added"}
    come = {name for name in come if home_of(PurePosixPath(name)) and (records / name).is_file()}
    if not gone or not come:
        return []
    found = list(_find_moves(records, gone, come, depth=1))
    for move in found:
        gone -= {_name(path, records) for path in move.files.values()}
        come -= {_name(path, records) for path in move.files}
    return found + list(_find_moves(records, gone, come, depth=2))


def warn_of_moves(walk: Walk) -> Iterator[Problem]:
    """A warning for each folder that moved since the last entry. walk: through the practice's folder."""
    try:
        found = moves(walk.root, kinds_of_change(walk.root))
    except GitTrouble:
        return
    for move in found:
        message = say("this folder was {old} before", old=move.old)
        way_out: Said = say("Its history goes along: recordgen commit")
        if move.is_stable:
            way_out = sentences(way_out, say("Where near: names {old}, write {new}", old=move.old, new=move.new))
        elif move.old.parent != move.new.parent:
            message = say(
                "this folder was {old} before, and whoever reads the site of {stable} will read all its visits",
                old=move.old,
                stable=move.new.parent,
            )
            anew = say("If they shall not: move it back, write left: there, and begin a new folder here")
            way_out = sentences(way_out, anew)
        yield warning(Place(walk.shown(walk.root / move.new)), "folder-moved", message, way_out)


def _name(path: Path, records: Path) -> str:
    return path.relative_to(records).as_posix()


def _find_moves(records: Path, gone: set[str], come: set[str], depth: int) -> Iterator[Move]:
    """The folders of a depth that moved whole: nothing is left of the old one, nothing was at the new one."""
    kept = list_contents(records)
    emptied = _folders(gone, depth) - _folders(kept.keys() - gone, depth)
    begun = _folders(come, depth) - _folders(kept.keys(), depth)
    contents = {kept[name]: name for name in sorted(gone) if _folder(name, depth) in emptied}
    fresh = sorted(name for name in come if _folder(name, depth) in begun)
    same = ((contents[content], name) for name, content in hashes_of(records, fresh).items() if content in contents)
    likely = Counter((_folder(old, depth), _folder(new, depth)) for old, new in same)
    for (old, new), _ in likely.most_common():
        if old in emptied and new in begun:
            emptied.discard(old)
            begun.discard(new)
            yield Move(PurePosixPath(old), PurePosixPath(new), dict(_files(records, gone, come, old, new)))


def _folders(names: Iterable[str], depth: int) -> set[str]:
    return {_folder(name, depth) for name in names} - {""}


def _folder(name: str, depth: int) -> str:
    """The folder of a stable (depth 1) or a horse (depth 2) that a file lies in; empty for others."""
    home = home_of(PurePosixPath(name))
    return "" if home is None else home.stable if depth == 1 else f"{home.stable}/{home.horse}" if home.horse else ""


def _files(records: Path, gone: set[str], come: set[str], old: str, new: str) -> Iterator[tuple[Path, Path]]:
    for name in sorted(gone):
        moved = f"{new}/{name.removeprefix(f'{old}/')}"
        if name.startswith(f"{old}/") and moved in come:
            yield records / moved, records / name

"""The way of each file through git's log: its versions, also under the names it had before.

A whole folder that was renamed is known by its horse.yaml. Otherwise git's likeness of two files counts where they lie
in one stable; likeness short of sameness is a guess, and said to be one. Lines of work that were joined again are each
followed with the names of their own.
"""

from __future__ import annotations

import re
from collections.abc import Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import PurePosixPath

from recordgen.git.log import LogEntry, Touch
from recordgen.records.load.folders import VISIT_FILE

# For one entry: whose file a name was in it, where that is not the file of the same name; None for nobody's.
Names = Mapping[str, str | None]

_MAY_BE_OURS = re.compile(r".*\.ya?ml", re.IGNORECASE)


@dataclass(frozen=True)
class Version:
    """One entry that touched a file.

    path: its name then. olds, new: its content before, by parent, and after, as git's names of it; None for no file.
    guessed: whether it is followed to another name by likeness alone. unsure: whether it may have had another name
    before, and is not followed there.
    """

    logged: LogEntry
    path: str
    olds: tuple[str | None, ...]
    new: str | None
    guessed: bool = False
    unsure: bool = False


@dataclass(frozen=True)
class _Pair:
    touch: Touch
    guessed: bool = False
    unsure: bool = False


def follow_renames(log: Sequence[LogEntry], wanted: Collection[str]) -> dict[str, list[Version]]:
    """The versions of each wanted file, oldest first.

    log: each entry before the ones it follows. wanted: files by their names at the first of these entries.
    """
    found: dict[str, list[Version]] = {}
    names: dict[str, Names] = {}
    for one in log:
        own = names.pop(one.id, {})
        pairs = _pair_renames([touch for touch in one.touches if _MAY_BE_OURS.fullmatch(_name_of(touch))])
        for pair in pairs:
            path = _name_of(pair.touch)
            visit = own.get(path, path)
            if visit in wanted and visit is not None:
                version = Version(one, path, pair.touch.olds, pair.touch.new, pair.guessed, pair.unsure)
                found.setdefault(visit, []).append(version)
        for number, parent in enumerate(one.parents):
            earlier = _earlier(own, pairs, number, wanted)
            names[parent] = _join_names(names[parent], earlier) if parent in names else earlier
    return {visit: versions[::-1] for visit, versions in found.items()}


def _name_of(touch: Touch) -> str:
    return touch.after or next(filter(None, touch.before), "")


def _earlier(own: Names, pairs: Sequence[_Pair], parent: int, wanted: Collection[str]) -> Names:
    """Whose the names were one entry earlier, on the side of one parent."""
    moves = [(pair.touch.before[parent], pair.touch.after) for pair in pairs]
    moved = [(old, new) for old, new in moves if old and new and old != new]
    if not moved:
        return own
    whose = {old: own.get(new, new) for old, new in moved}
    ours = {old: visit if visit in wanted else None for old, visit in whose.items()}
    return {**own, **dict.fromkeys(new for _, new in moved), **ours}


def _join_names(one: Names, other: Names) -> Names:
    """The names where two lines part; what either line knows to be somebody's goes before what is nobody's."""
    if one is other:
        return one
    return {**other, **one, **{name: visit for name, visit in other.items() if visit and not one.get(name)}}


def _pair_renames(touches: Sequence[Touch]) -> list[_Pair]:
    """Changes of an entry, each renamed file as one touch where it is followed, and else as one gone and one come."""
    gone = {touch.before[0]: touch for touch in touches if touch.before[0] and touch.before[0] != touch.after}
    come = {touch.after: touch for touch in touches if touch.after and touch.after != touch.before[0]}
    if not gone or not come or len(touches[0].before) > 1:
        return [_Pair(touch) for touch in touches]
    pairs = [_Pair(touch) for touch in touches if touch.before[0] == touch.after]
    for old, new in _of_moved_folders(touches, gone, come):
        pairs.append(_Pair(Touch((old,), gone.pop(old).olds, new, come.pop(new).new)))
    left = [touch for touch in touches if touch.before[0] in gone and touch.after in come]
    for touch in left:
        how = _how_sure(touch)
        if how != "not followed" and touch.before[0] and touch.after:
            pairs.append(_Pair(touch, guessed=how == "guessed"))
            del gone[touch.before[0]], come[touch.after]
    pairs += [_Pair(Touch((old,), touch.olds, None, None)) for old, touch in gone.items()]
    return pairs + [
        _Pair(Touch((None,), (None,), new, touch.new), unsure=_may_have_come(touch)) for new, touch in come.items()
    ]


def _of_moved_folders(
    touches: Sequence[Touch], gone: Collection[str | None], come: Collection[str | None]
) -> Iterator[tuple[str, str]]:
    """Old and new name of each file whose horse's whole folder was renamed."""
    folders = {}
    for touch in touches:
        old, new = PurePosixPath(touch.before[0] or ""), PurePosixPath(touch.after or "")
        if old != new and old.name == new.name == "horse.yaml":
            within = old.parent.parent == new.parent.parent
            if touch.alike == 100 or within or old.parent.name == new.parent.name:
                folders[old.parent] = new.parent
    for name in list(gone):
        path = PurePosixPath(name or "")
        renamed = str(folders[path.parent] / path.name) if path.parent in folders else None
        if name and renamed in come:
            yield name, str(renamed)


def _how_sure(touch: Touch) -> str:
    """Tell whether a file that git holds for renamed is followed: surely, guessed, or not followed."""
    old, new = PurePosixPath(touch.before[0] or ""), PurePosixPath(touch.after or "")
    if old.parent.parent != new.parent.parent or not (old.name == new.name or old.parent == new.parent):
        return "not followed"
    return "surely" if touch.alike == 100 else "guessed"


def _may_have_come(touch: Touch) -> bool:
    """Tell whether a file that is not followed further may yet have had another name."""
    old, new = PurePosixPath(touch.before[0] or ""), PurePosixPath(touch.after or "")
    return touch.before[0] is not None and bool(VISIT_FILE.fullmatch(new.name)) and old.name == new.name

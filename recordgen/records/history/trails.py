"""The trails of a practice's visits: when each was first kept in git, and what was changed in it since.

Told is what stands in the history of the present entry and nothing else; what that cannot tell for sure is said.
"""

from __future__ import annotations

import os
from collections.abc import Collection, Iterable, Iterator, Mapping
from dataclasses import dataclass, field, replace
from pathlib import Path, PurePosixPath

from recordgen.git.log import log
from recordgen.git.repository import list_contents, states_of
from recordgen.git.run import run, text
from recordgen.git.troubles import GitTrouble
from recordgen.records.history.build import Past, contents, trail_of
from recordgen.records.history.model import State, VisitTrail, Words
from recordgen.records.history.renames import follow_renames
from recordgen.records.history.versions import visits_of
from recordgen.records.models.practice import Practice
from recordgen.records.models.reference import Reference
from recordgen.sentences import say

# Entries of a larger repository are about other things too; their reasons would be told of the horses.
_PART_OF_MORE = (
    say("the records lie within a larger git repository"),
    say("Move them to one of their own, as recordgen init makes it"),
)


@dataclass(frozen=True)
class Trails:
    """The trails of a practice's visits, by their files; `trouble` tells why there are none, where git has none."""

    found: Mapping[Path, VisitTrail] = field(default_factory=dict)
    files: Mapping[tuple[str, str], tuple[Path, ...]] = field(default_factory=dict)
    trouble: GitTrouble | None = None

    def of(self, file: Path) -> VisitTrail | None:
        """The trail of the visit in a file; None where git knows nothing."""
        return self.found.get(file)

    def of_horse(self, stable: str, horse: str) -> tuple[VisitTrail | None, ...]:
        """The trails of a horse's visits in the order of its record, by the names of its folders."""
        return tuple(map(self.of, self.files.get((stable, horse), ())))


def trails(practice: Practice, reference: Reference, private: Collection[str] = ()) -> Trails:
    """The trail in git of each visit of a practice, read at once. Without git, or outside of it, nothing; never raises.

    reference: the tables, for the words of what changed. private: entries that changed something private in visits that
    were not read.
    """
    files = {
        (horse.stable, horse.slug): tuple(
            practice.folder / horse.stable / horse.slug / one.file for one in horse.prints
        )
        for horse in practice.horses
    }
    every = [file for each in files.values() for file in each]
    try:
        return Trails(_find_trails(practice.folder, every, Words(practice.file, reference), private), files)
    except GitTrouble as trouble:
        return Trails(trouble=trouble)


def _find_trails(folder: Path, files: list[Path], words: Words, private: Collection[str]) -> dict[Path, VisitTrail]:
    places = text(run(folder, "rev-parse", "--show-prefix", "--git-path", "shallow")).removesuffix("\n")
    prefix, _, shallow = places.rpartition("\n")
    if prefix:
        raise GitTrouble(*_PART_OF_MORE)
    names = dict(_git_names(folder, files))
    now = list_contents(folder)
    versions = follow_renames(log(folder), set(names.values())) if now else {}
    visits = visits_of(folder, {one for each in versions.values() for one in contents(each)})
    past = Past(visits, now, _lines(folder / shallow), words)
    states = states_of(folder)
    made = {
        file: trail_of(name, _state(name, now, states), versions.get(name, []), past) for file, name in names.items()
    }
    return _without_reasons_of_private(made, private_entries(made.values()) | {*private})


def _git_names(folder: Path, files: list[Path]) -> Iterator[tuple[Path, str]]:
    """Each file and its name in git; a file that is a link, or lies behind one, is what it leads to."""
    base = os.path.realpath(folder)
    folders = {parent: Path(os.path.realpath(parent)) for parent in {file.parent for file in files}}
    for file in files:
        path = Path(os.path.realpath(file)) if file.is_symlink() else folders[file.parent] / file.name
        if path.is_relative_to(base):
            yield file, path.relative_to(base).as_posix()


def _state(name: str, now: Mapping[str, str], states: Mapping[str, str]) -> State:
    if name in now:
        return "amended" if name in states else "kept"
    above = [name, *map(str, PurePosixPath(name).parents)]
    return "left out" if any(states.get(path) == "!!" for path in above) else "new"


def _lines(file: Path) -> set[str]:
    try:
        return set(file.read_text("utf-8").split())
    except OSError:
        return set()


def private_entries(found: Iterable[VisitTrail]) -> set[str]:
    """The entries that changed anything private in any of these visits."""
    changes = (change for trail in found for change in trail.changes)
    return {change.entry for change in changes if any(part.private for part in change.parts)}


def _without_reasons_of_private(made: dict[Path, VisitTrail], private: set[str]) -> dict[Path, VisitTrail]:
    """The trails, where an entry's reason is for the trimmer alone if it changed anything private in any visit."""
    if not private:
        return made
    return {
        file: replace(
            trail,
            changes=tuple(
                replace(change, for_all=change.for_all and change.entry not in private) for change in trail.changes
            ),
        )
        for file, trail in made.items()
    }

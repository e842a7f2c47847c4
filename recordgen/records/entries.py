"""The entries that a commit makes: the changed records by stable, each with its line of the diary."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from recordgen.git.changes import KindOfChange
from recordgen.records.diary import About, Other, message
from recordgen.records.layout import Home, Part, home_of
from recordgen.records.moves import Move
from recordgen.records.practice import Practice, StableRecord

_OF_PRACTICE: dict[Part, About] = {"practice": "practice", "care note": "care notes", "template": "templates"}


@dataclass(frozen=True)
class Entry:
    """One entry: the stable's folder (empty for the practice's own files), its files, and what it says."""

    stable: str
    paths: tuple[Path, ...]
    says: str


def entries(practice: Practice, changed: Mapping[Path, KindOfChange], moves: Sequence[Move] = ()) -> list[Entry]:
    """The entries for the changed records: the practice's own, one for each folder that moved, then a stable each.

    changed: what happened to each file, by its path under the practice's folder. What is no record is left out, unless
    it was kept before and is gone; so are visits of which nothing is filled in yet. A folder that moved stays in one
    entry, so that git tells where its files were.
    """
    moved = {path for move in moves for pair in move.files.items() for path in pair}
    by_stable: dict[str, dict[Path, KindOfChange]] = {}
    for path, kind in changed.items():
        home = _home(practice, path)
        if path in moved or (home is None and kind != "taken out") or blank(practice, path):
            continue
        by_stable.setdefault(home.stable if home else "", {})[path] = kind
    own = [_of_practice(practice, by_stable.pop(""))] if "" in by_stable else []
    return [
        *own,
        *(_of_move(practice, move) for move in moves),
        *(_of_stable(practice, slug, files) for slug, files in sorted(by_stable.items())),
    ]


def blank(practice: Practice, path: Path) -> bool:
    """Whether a file is that of a visit of which nothing is filled in yet."""
    home = _home(practice, path)
    if home is None or home.part != "visit" or not path.exists():
        return False
    horses = [horse for horse in practice.horses if (horse.stable, horse.slug) == (home.stable, home.horse)]
    return all(home.day not in {visit.date for visit in one.visits} for one in horses)


def _home(practice: Practice, path: Path) -> Home | None:
    return home_of(PurePosixPath(path.relative_to(practice.folder).as_posix()))


def _of_practice(practice: Practice, files: Mapping[Path, KindOfChange]) -> Entry:
    homes = [(kind, _home(practice, path)) for path, kind in files.items()]
    others = [Other(kind, about=_OF_PRACTICE.get(home.part, "files") if home else "files") for kind, home in homes]
    return Entry("", tuple(files), message(practice.file.name, [], others))


def _of_move(practice: Practice, move: Move) -> Entry:
    stable, *horse = move.new.parts
    name = _horse_name(practice, stable, horse[0]) if horse else ""
    says = message(_stable_name(practice, stable), [], [Other("moved", name, was=move.old.as_posix())])
    return Entry(stable, (*move.files.values(), *move.files), says)


def _of_stable(practice: Practice, slug: str, files: Mapping[Path, KindOfChange]) -> Entry:
    homes = [(kind, home) for path, kind in files.items() if (home := _home(practice, path))]
    new = [
        (_horse_name(practice, slug, home.horse), home.day)
        for kind, home in homes
        if home.part == "visit" and kind == "added" and home.day
    ]
    others = [other for kind, home in homes for other in _others(practice, kind, home)]
    return Entry(slug, tuple(files), message(_stable_name(practice, slug), new, others))


def _others(practice: Practice, kind: KindOfChange, home: Home) -> Iterator[Other]:
    horse = _horse_name(practice, home.stable, home.horse)
    if home.part == "stable":
        yield Other(kind)
    elif home.part == "visit" and kind != "added":
        yield Other(kind, horse, home.day)
    elif home.part == "horse":
        yield Other(kind, horse)
    elif home.part == "sharing":
        yield Other(kind, horse, about="sharing")
    elif home.part == "photograph":
        yield Other(kind, horse, about="photographs")


def _stable(practice: Practice, slug: str) -> StableRecord | None:
    return next((one for one in practice.stables if one.slug == slug), None)


def _stable_name(practice: Practice, slug: str) -> str:
    found = _stable(practice, slug)
    return found.stable.name if found else slug


def _horse_name(practice: Practice, stable: str, slug: str) -> str:
    found = _stable(practice, stable)
    horses = found.horses if found else ()
    return next((horse.horse.name for horse in horses if horse.slug == slug), slug)

"""The names that stables' and horses' folders bore before, as git tells, those of today's changes included."""

from __future__ import annotations

from collections.abc import Iterable, Mapping
from pathlib import Path, PurePosixPath

from recordgen.git.changes import kinds_of_change
from recordgen.git.log import LogEntry, log
from recordgen.git.run import run, text
from recordgen.git.troubles import GitTrouble
from recordgen.records.history.moves import moves
from recordgen.records.layout import home_of


def stables_before(records: Path, slug: str) -> list[str]:
    """The folders that a stable's file lay in before, the latest first; none where git tells nothing."""
    before = _ways_back(records, [f"{slug}/stable.yaml"])[f"{slug}/stable.yaml"]
    return list(dict.fromkeys(folder for name in before if (folder := name.split("/")[0]) != slug))


def find_first_names(records: Path, horses: Iterable[tuple[str, str]]) -> dict[str, str]:
    """For each horse of a stable the name that its folder bore first, so that what is named by it stays.

    horses: stable and horse, by the names of their folders, all of one stable. Where two horses bore the same name one
    after the other, the later one has a number behind it. Without git each has the name of today.
    """
    horses = list(horses)
    first = _first_files(records, horses)
    return _make_unique({horse: PurePosixPath(first[stable, horse]).parent.name for stable, horse in horses})


def find_first_places(records: Path, horses: Iterable[tuple[str, str]]) -> dict[tuple[str, str], str]:
    """For each horse the place where its folder lay first, as stable/horse, whatever both are called now.

    horses: stable and horse, by the names of their folders, of any stable. As above where two had the same place.
    """
    first = _first_files(records, horses)
    places = {f"{stable}/{horse}": str(PurePosixPath(file).parent) for (stable, horse), file in first.items()}
    found = _make_unique(places)
    return {(stable, horse): found[f"{stable}/{horse}"] for stable, horse in first}


def _first_files(records: Path, horses: Iterable[tuple[str, str]]) -> dict[tuple[str, str], str]:
    files = {(stable, horse): f"{stable}/{horse}/horse.yaml" for stable, horse in horses}
    ways = _ways_back(records, files.values())
    return {which: (ways[file] or [file])[-1] for which, file in files.items()}


def _make_unique(first: Mapping[str, str]) -> dict[str, str]:
    """The first name of each name of today; the later one of two that had the same has a number behind it."""
    # Whoever still bears the name that another one had is the later of the two.
    in_order = sorted(first, key=lambda name: (first[name] == name, name))
    seen: dict[str, int] = {}
    found = {}
    for name in in_order:
        number = seen[first[name]] = seen.get(first[name], 0) + 1
        found[name] = first[name] if number == 1 else f"{first[name]} {number}"
    return found


def _ways_back(records: Path, files: Iterable[str]) -> dict[str, list[str]]:
    """The names that each file had before, the latest first. files: from the practice's folder."""
    found: dict[str, list[str]] = {file: [] for file in files}
    try:
        changed = kinds_of_change(records)
        logged = log(records)
        inside = text(run(records, "rev-parse", "--show-prefix")).rstrip("\n")
    except GitTrouble:
        return found
    now = {file: file for file in found}
    just_moved = {
        new.relative_to(records).as_posix(): old.relative_to(records).as_posix()
        for move in moves(records, changed)
        for new, old in move.files.items()
    }
    for renamed in (just_moved, *(_renames_in(one, inside) for one in logged)):
        for file, name in now.items():
            if name in renamed:
                now[file] = renamed[name]
                found[file].append(renamed[name])
    return found


def _renames_in(one: LogEntry, inside: str) -> dict[str, str]:
    """The old name of each stable's or horse's file that an entry renamed, by its new one."""
    found = {}
    for touch in one.touches:
        old, new = next(filter(None, touch.before), None), touch.after
        if old and new and old != new and old.startswith(inside) and new.startswith(inside):
            old, new = old.removeprefix(inside), new.removeprefix(inside)
            homes = [home_of(PurePosixPath(name)) for name in (old, new)]
            if all(home and home.part in ("stable", "horse") for home in homes):
                found[new] = old
    return found

"""The entries that a commit makes: the changed files by stable, each with its line of the diary."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path

from recordgen.git.changes import KindOfChange
from recordgen.records.diary import Other, message
from recordgen.records.photos import PHOTOS
from recordgen.records.practice import Practice, StableRecord
from recordgen.records.shared import SHARED_FILE
from recordgen.records.walk import VISIT_FILE


@dataclass(frozen=True)
class Entry:
    """One entry: the stable's folder (empty for the practice's own files), its files, and what it says."""

    stable: str
    paths: tuple[Path, ...]
    says: str


def entries(practice: Practice, changed: Mapping[Path, KindOfChange]) -> list[Entry]:
    """The entries for the changed files, the practice's own first, then a stable each.

    changed: what happened to each file, by its path under the practice's folder. Visits of which nothing is filled in
    yet are left for later.
    """
    by_stable: dict[str, dict[Path, KindOfChange]] = {}
    for path, kind in changed.items():
        if blank(practice, path):
            continue
        parts = path.relative_to(practice.folder).parts
        slug = parts[0] if len(parts) > 1 and _is_stable(practice, parts[0], parts) else ""
        by_stable.setdefault(slug, {})[path] = kind
    return [_entry(practice, slug, files) for slug, files in sorted(by_stable.items())]


def blank(practice: Practice, path: Path) -> bool:
    """Whether a file is that of a visit of which nothing is filled in yet."""
    day = _day(path)
    horses = [horse for horse in practice.horses if (horse.stable, horse.slug) == path.parent.parts[-2:]]
    return path.exists() and day is not None and all(day not in {visit.date for visit in one.visits} for one in horses)


def _is_stable(practice: Practice, name: str, parts: tuple[str, ...]) -> bool:
    known = any(stable.slug == name for stable in practice.stables)
    return known or parts[-1] in ("stable.yaml", "horse.yaml") or bool(VISIT_FILE.fullmatch(parts[-1]))


def _entry(practice: Practice, slug: str, files: Mapping[Path, KindOfChange]) -> Entry:
    if not slug:
        return Entry("", tuple(files), message(practice.file.name, [], [Other(about="practice")]))
    stable = next((one for one in practice.stables if one.slug == slug), None)
    new = [visit for path, kind in files.items() if kind == "added" for visit in _visits(stable, path)]
    others = [other for path, kind in files.items() for other in _others(stable, path, kind)]
    return Entry(slug, tuple(files), message(stable.stable.name if stable else slug, new, others))


def _visits(stable: StableRecord | None, path: Path) -> Iterator[tuple[str, dt.date]]:
    day = _day(path)
    if day:
        yield _horse_name(stable, path.parent.name), day


def _others(stable: StableRecord | None, path: Path, kind: KindOfChange) -> Iterator[Other]:
    day = _day(path)
    if day and kind == "added":
        return
    if path.name == "stable.yaml":
        yield Other(kind)
    elif day or path.name == "horse.yaml":
        yield Other(kind, _horse_name(stable, path.parent.name), day)
    elif path.name == SHARED_FILE:
        yield Other(kind, _horse_name(stable, path.parent.name), about="sharing")
    elif path.parent.name == PHOTOS:
        yield Other(kind, _horse_name(stable, path.parent.parent.name), about="photographs")
    else:
        yield Other(kind, about="files")


def _day(path: Path) -> dt.date | None:
    found = VISIT_FILE.fullmatch(path.name)
    return dt.date.fromisoformat(found[1]) if found else None


def _horse_name(stable: StableRecord | None, slug: str) -> str:
    horses = stable.horses if stable else ()
    return next((horse.horse.name for horse in horses if horse.slug == slug), slug)

"""The entries that a commit makes: the changed records by stable, each with its line of the diary."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Literal

from recordgen.days import listed, spoken_day
from recordgen.git.changes import KindOfChange
from recordgen.records.history.moves import Move
from recordgen.records.layout import Home, Part, home_of
from recordgen.records.models.practice import Practice, StableRecord

_OF_PRACTICE: dict[Part, About] = {
    "practice": "practice",
    "care note": "care notes",
    "page": "pages",
    "template": "templates",
}


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
    """Tell whether a file is that of a visit of which nothing is filled in yet."""
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
    elif home.part == "page":
        yield Other(kind, about="pages")
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


LONGEST_LINE = 72
About = Literal["stable", "practice", "care notes", "templates", "pages", "files", "photographs", "sharing"]


@dataclass(frozen=True)
class Other:
    """A change that is no new visit: of a visit (horse and day), of a horse, or of what `about` says.

    was: the folder or file that it was before, where it moved.
    """

    kind: KindOfChange | Literal["moved"] = "amended"
    horse: str = ""
    day: dt.date | None = None
    about: About = "stable"
    was: str = ""

    def in_words(self) -> str:
        """The change in words: `Bramble's visit of 14 October 2026 amended`."""
        kind = f"{self.kind} from {self.was}" if self.was else self.kind
        if self.kind == "moved" and not self.horse:
            return kind
        if self.horse and self.day:
            return f"{self.horse}'s visit of {spoken_day(self.day)} {kind}"
        if self.about == "photographs":
            return f"photographs of {self.horse} {kind}"
        if self.about == "sharing":
            return f"whom {self.horse}'s record was shared with {kind}"
        if self.horse:
            return f"{self.horse}'s details amended" if self.kind == "amended" else f"{self.horse} {kind}"
        return _OF_MANY[self.about].format(kind=kind)


_OF_MANY: dict[About, str] = {
    "stable": "details of the stable {kind}",
    "practice": "details of the practice {kind}",
    "care notes": "care notes {kind}",
    "templates": "own words and templates {kind}",
    "pages": "own pages {kind}",
    "files": "other files {kind}",
}


def message(stable_name: str, visits: Iterable[tuple[str, dt.date]], others: Iterable[Other] = ()) -> str:
    """The work done at a stable, as one line; where that grows long, a short line and the long one below it.

    visits: horse's name and day of each new visit. others: what else changed, in order.
    """
    by_day: dict[dt.date, list[str]] = {}
    for horse, day in sorted(visits, key=lambda visit: (visit[1], visit[0].lower())):
        by_day.setdefault(day, []).append(horse)
    more = list(dict.fromkeys(other.in_words() for other in others))
    line = _line(stable_name, by_day, more)
    return line if len(line) <= LONGEST_LINE else f"{_short(stable_name, by_day, len(more))}\n\n{line}"


def _line(stable_name: str, by_day: dict[dt.date, list[str]], more: Sequence[str]) -> str:
    if len(by_day) == 1:
        ((day, horses),) = by_day.items()
        return f"{stable_name}, {spoken_day(day)}: {'; '.join([f'{listed(horses)} seen', *more])}"
    days = [f"{listed(horses)} seen on {spoken_day(day)}" for day, horses in by_day.items()]
    return f"{stable_name}: {'; '.join([*days, *more]) or 'nothing changed'}"


def _short(stable_name: str, by_day: dict[dt.date, list[str]], more: int) -> str:
    days = listed(list(dict.fromkeys(spoken_day(day) for day in (min(by_day), max(by_day))))) if by_day else ""
    between = days.replace(" and ", " to ")
    visits = sum(map(len, by_day.values()))
    told = [
        f"{count} {word}{'' if count == 1 else 's'}"
        for count, word in ((visits, "visit"), (more, "other change"))
        if count
    ]
    return f"{stable_name}{', ' if between else ''}{between}: {listed(told)}"

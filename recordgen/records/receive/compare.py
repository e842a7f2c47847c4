"""The visits that are there of a horse and a day, and how two records of one visit differ, by reading both."""

from __future__ import annotations

import datetime as dt
import hashlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from recordgen.problems import Step
from recordgen.records.load.folders import VISIT_FILE
from recordgen.records.models.visit import BESIDE_THE_VISIT, Visit
from recordgen.records.yaml.read import read_record
from recordgen.records.yaml.write import on_one_line

WIDEST_VALUE = 36


@dataclass(frozen=True)
class There:
    """A visit's file that is there; visit: None where anything in it is wrong."""

    file: Path
    text: str
    visit: Visit | None

    @classmethod
    def read(cls, file: Path) -> There:
        """A file that is there. Raises OSError."""
        written, _ = read_record(file, file.name, Visit)
        return cls(file, file.read_bytes().decode("utf-8", "replace"), written.record if written else None)

    @property
    def is_blank(self) -> bool:
        """Tell whether it was only begun."""
        return self.visit is not None and self.visit.is_blank

    @property
    def sum(self) -> str:
        """SHA-256 of its bytes, in hexadecimal."""
        return hashlib.sha256(self.file.read_bytes()).hexdigest()


def there_on(folder: Path, day: dt.date) -> list[There]:
    """The visits of a day in a horse's folder, in the order of their files."""
    if not folder.is_dir():
        return []
    names = sorted(path.name for path in folder.iterdir() if (found := VISIT_FILE.fullmatch(path.name)) and found)
    return [There.read(folder / name) for name in names if name.startswith(day.isoformat())]


def is_same_visit(one: Visit | None, other: Visit) -> bool:
    """Tell whether two records say the same, whatever of it is said outright."""
    return one is not None and one.tells_the_same(other)


@dataclass(frozen=True)
class VisitDifference:
    """One value that two records of a visit tell otherwise; empty where one of them does not tell it."""

    what: str
    here: str
    came: str


def differences(here: Visit | None, came: Visit) -> list[VisitDifference]:
    """Tell how a visit that is here and one that came differ, in the order of the models."""
    ours = dict(_leaves(here)) if here else {}
    theirs = dict(_leaves(came))
    steps = [*ours, *(one for one in theirs if one not in ours)]
    return [
        VisitDifference(path_words(one), value_line(ours.get(one)), value_line(theirs.get(one)))
        for one in steps
        if ours.get(one) != theirs.get(one)
    ]


def _leaves(visit: Visit) -> Iterator[tuple[tuple[Step, ...], Any]]:
    yield from _in(visit.model_dump(mode="json", by_alias=True, exclude_unset=True, exclude=BESIDE_THE_VISIT), ())


def _in(value: Any, steps: tuple[Step, ...]) -> Iterator[tuple[tuple[Step, ...], Any]]:
    if isinstance(value, Mapping) and value:
        for key, inner in value.items():
            yield from _in(inner, (*steps, key))
    elif isinstance(value, list) and any(isinstance(item, Mapping) for item in value):
        for index, inner in enumerate(value):
            yield from _in(inner, (*steps, index))
    else:
        yield steps, value


def path_words(steps: Sequence[Step]) -> str:
    """The place where a value stands, as people say it: left fore, lateral quarter, flare."""
    words = [f"number {step + 1}" if isinstance(step, int) else step.replace("_", " ") for step in steps]
    return ", ".join(word for word in words if word not in ("feet", "wall")) or "the visit"


def value_line(value: Any, widest: int = WIDEST_VALUE) -> str:
    """A value on one line, cut where it is longer than so many signs; empty where there is none."""
    if value is None:
        return ""
    line = " ".join((value if isinstance(value, str) else on_one_line(value)).split())
    return line if len(line) <= widest else f"{line[: widest - 1]}…"


def side_by_side(found: Sequence[VisitDifference], titles: tuple[str, str]) -> list[str]:
    """Differences as lines of three columns: what, here, came. titles: of the last two."""
    rows = [("", *titles), *((one.what, one.here or "-", one.came or "-") for one in found)]
    first, second = (max(len(row[column]) for row in rows) for column in (0, 1))
    return [f"{what:{first}}  {here:{second}}  {came}".rstrip() for what, here, came in rows]

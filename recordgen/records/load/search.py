"""Everything that was typed, searched for words, days and numbers; each hit with its file and line.

A file need not be right to be searched: what cannot be read as YAML is searched line by line.
"""

from __future__ import annotations

import datetime as dt
import operator
import re
from collections.abc import Callable, Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

import yaml

from recordgen.days import spoken_day
from recordgen.records.layout import home_of
from recordgen.records.yaml.text import LARGEST_FILE_BYTES
from recordgen.records.yaml.tree import document

_DAY = re.compile(r"\d{4}-\d{2}-\d{2}")
_NUMBER = re.compile(r"-?\d+(?:\.\d+)?")
_LIMIT = re.compile(r"([a-z_ ]*?) ?(<=|>=|<|>) ?(-?\d+(?:\.\d+)?)", re.IGNORECASE)
_REMARK = re.compile(r"(?:^|\s)#+ ?(.*)$")
_COMPARED: dict[str, Callable[[float, float], bool]] = {
    "<": operator.lt,
    "<=": operator.le,
    ">": operator.gt,
    ">=": operator.ge,
}


@dataclass(frozen=True)
class Hit:
    """One thing that was typed: its file and line, where it stands in it, and the text. where: empty for a remark."""

    file: Path
    line: int
    where: str
    text: str


@dataclass(frozen=True)
class _Typed:
    """One thing that was typed, and all that it can be found by. around: what its file and day say of it."""

    hit: Hit
    own: str
    around: str

    def fits(self, words: Sequence[str]) -> bool:
        """Tell whether all words fit, at least one of them the entry itself rather than its file alone."""
        limits = [found for word in words if (found := _LIMIT.fullmatch(word))]
        plain = [word.casefold() for word in words if not _LIMIT.fullmatch(word)]
        own = any(word in self.own for word in plain) or bool(limits)
        return own and all(word in self.own or word in self.around for word in plain) and all(map(self._keeps, limits))

    def _keeps(self, limit: re.Match[str]) -> bool:
        number = _NUMBER.match(self.hit.text)
        named = limit[1].casefold().replace("_", " ").strip() in self.hit.where.casefold().replace("_", " ")
        return bool(named and number and _COMPARED[limit[2]](float(number[0]), float(limit[3])))


def search(records: Path, words: Sequence[str]) -> Iterator[Hit]:
    """Everything that was typed in the records and fits all words, by file and line.

    words: in any case, each a part of a name, a value, a remark, a file's name or a day as people say it; or a limit,
    such as toe_length>85.
    """
    for file in _files(records):
        for entry in _entries(file, records):
            if entry.fits(words):
                yield entry.hit


def _files(records: Path) -> Iterator[Path]:
    for pattern in ("*.yaml", "*/*.yaml", "*/*/*.yaml", "pages/*.md", "*/pages/*.md"):
        for file in sorted(records.glob(pattern)):
            home = home_of(PurePosixPath(file.relative_to(records).as_posix()))
            if home and home.part not in ("help for programs", "template"):
                yield file


def _entries(file: Path, records: Path) -> Iterator[_Typed]:
    try:
        with file.open("rb") as opened:
            raw = opened.read(LARGEST_FILE_BYTES)
    except OSError:
        return
    name = file.relative_to(records).as_posix()
    around = f"{name} {_days_in_words(name)}".casefold()
    found = document(name, raw) if file.suffix == ".yaml" else None
    if found is None or found.problems or found.root is None:
        yield from (_entry(file, at, "", line, around) for at, line in _lines(raw.decode("utf-8-sig", "replace")))
        return
    values = [_entry(file, line, where, text, around) for line, where, text in _values(found.root)]
    remarks = [_entry(file, at, "", f"# {remark}", around) for at, remark in _remarks(found.text, found.root)]
    yield from sorted([*values, *remarks], key=lambda entry: entry.hit.line)


def _entry(file: Path, line: int, where: str, text: str, around: str) -> _Typed:
    told = f"{where} {text} {_days_in_words(text)}".casefold()
    return _Typed(Hit(file, line, where, text), f"{told} {told.replace('_', ' ')}", around)


def _lines(text: str) -> Iterator[tuple[int, str]]:
    return ((at, line.strip()) for at, line in enumerate(text.splitlines(), 1) if line.strip())


def _values(node: yaml.Node, where: str = "") -> Iterator[tuple[int, str, str]]:
    """Each value with its line and the names that lead to it."""
    if isinstance(node, yaml.MappingNode):
        for key, item in node.value:
            name = f"{where}, {key.value}" if where else str(key.value)
            yield from _values(item, name)
    elif isinstance(node, yaml.SequenceNode):
        for item in node.value:
            yield from _values(item, where)
    elif node.value:
        yield node.start_mark.line + 1, where, " ".join(str(node.value).split())


def _remarks(text: str, root: yaml.Node) -> Iterator[tuple[int, str]]:
    """Remarks behind # that stand in no value."""
    taken = dict(_ends(root))
    for at, line in enumerate(text.splitlines()):
        found = _REMARK.search(line, taken.get(at, 0))
        if found and found[1].strip():
            yield at + 1, found[1].strip()


def _ends(node: yaml.Node) -> Iterator[tuple[int, int]]:
    """The line and the column up to which a file holds values, later ones after earlier ones."""
    if isinstance(node, yaml.CollectionNode):
        for item in node.value:
            for one in item if isinstance(item, tuple) else (item,):
                yield from _ends(one)
        return
    first, last = node.start_mark.line, node.end_mark.line
    yield from ((line, LARGEST_FILE_BYTES) for line in range(first, last))
    if not (isinstance(node, yaml.ScalarNode) and node.style in ("|", ">")):
        yield last, node.end_mark.column


def _days_in_words(text: str) -> str:
    """The days in a text as people say them, so that 14 October finds 2026-10-14."""
    return " ".join(_spoken_or_empty(day) for day in _DAY.findall(text))


def _spoken_or_empty(day: str) -> str:
    try:
        return spoken_day(dt.date.fromisoformat(day))
    except ValueError:
        return ""

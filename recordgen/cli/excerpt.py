"""The line that a problem stands in, with a mark under the place, for a terminal."""

from __future__ import annotations

import os
import re
import unicodedata
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from recordgen.problems import Place, visible

TAB = " " * 4
LARGEST_FILE_BYTES = 1_000_000
_LINE_END = re.compile(r"\r\n|\r|\n")


def excerpt(place: Place, records: Path, cells: int) -> Iterator[str]:
    """The line a place stands in and a mark under it; nothing for a whole file, or one that is no record to be read.

    records: the practice's folder, of whose name the place's path begins. cells: the width of the terminal.
    """
    line = _line(place, records)
    if line is None:
        return
    number = f"{place.line:5} | "
    text, before = line_around_mark(line, place.column, cells - len(number))
    yield f"{number}{text}"
    yield f"{'| ':>{len(number)}}{' ' * before}^"


def line_around_mark(line: str, column: int, cells: int) -> tuple[str, int]:
    """A line as it shows in so many cells, cut where it is longer, and how many cells stand before the mark.

    column: of the mark, from 1. A tab is shown as four blanks, and what does not show is spelled out.
    """
    at = max(0, column - 1)
    begin, end = max(0, at - cells), at + cells
    before, after = _cells_of(line[begin:at]), _cells_of(line[at:end])
    cut = begin > 0
    while before and _cells(before) > cells * 2 // 3:
        cut = bool(before.pop(0))
    left = ["…"] if cut else []
    room = cells - _cells([*left, *before])
    more = end < len(line)
    while after and _cells(after) + more > room:
        more = bool(after.pop())
    return "".join([*left, *before, *after, *(["…"] if more else [])]), _cells([*left, *before])


def _cells_of(signs: str) -> list[str]:
    return [TAB if sign == "\t" else visible(sign) for sign in signs]


def _cells(parts: Iterable[str]) -> int:
    """Tell how many cells of a terminal a text takes: two for a wide sign, none for a mark upon another."""
    return sum(_width(sign) for part in parts for sign in part)


def _width(sign: str) -> int:
    """Source: Unicode Standard Annex 11, East Asian Width; marks by their general category."""
    if unicodedata.category(sign) in ("Mn", "Me"):
        return 0
    return 2 if unicodedata.east_asian_width(sign) in ("W", "F") else 1


def _line(place: Place, records: Path) -> str | None:
    root = Path(os.path.realpath(records))
    file = root.parent / place.path
    if place.line < 1 or file.suffix != ".yaml" or not Path(os.path.realpath(file)).is_relative_to(root):
        return None
    try:
        with file.open("rb") as opened:
            text = opened.read(LARGEST_FILE_BYTES).decode("utf-8-sig", "replace")
    except OSError:
        return None
    lines: Sequence[str] = _LINE_END.split(text)
    return lines[place.line - 1] if place.line <= len(lines) else None

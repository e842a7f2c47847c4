"""A site before any engine has seen it: its name, its pages as HTML with places left for late parts, and its files."""

from __future__ import annotations

import posixpath
import re
import zlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, overload

from recordgen.cache.watched_day import EVERY_DAY, AlikeDays

_LATE = re.compile(r"<!--late (\d+)-->")


@dataclass(frozen=True)
class DatedPart:
    """A part of a page that names the day: the template that says it, and what that is filled in with, as JSON."""

    template: str
    values: str


@dataclass(frozen=True)
class Placed:
    """A dated part where it stands in the file of a finished page: from one byte up to another."""

    start: int
    end: int
    part: DatedPart


@dataclass(frozen=True)
class Page:
    """One page.

    uri: where its source would lie, such as horses/bramble.md. html: its body. late: pictures and tables of figures,
    which come in last, so that neither the engine nor search reads through them. dated: what of these names the day, by
    its number among them. stands: the days on which all else is the same. searched: whether search reads it.
    found_by: more words by which search finds it, shown nowhere. visits: the days it tells of, ISO. weight: of its
    place among what search finds. entry: what search reads of it, once its site is rendered. finished: whether the file
    stands from an earlier build, so that no text of it is here. head: more for the head of the document, such as the
    size of its paper.
    """

    uri: str
    title: str
    html: str
    late: Sequence[str] = ()
    dated: Mapping[int, DatedPart] = field(default_factory=dict)
    in_menu: bool = True
    searched: bool = True
    found_by: tuple[str, ...] = ()
    visits: tuple[str, ...] = ()
    weight: float = 1.0
    entry: Sequence[Any] | None = None
    finished: bool = False
    stands: AlikeDays = EVERY_DAY
    head: str = ""

    def complete(self, text: str) -> str:
        """The text with each place for a late part filled."""
        return self.complete_as_file(text)[0].decode()

    def complete_as_file(self, text: str) -> tuple[bytes, tuple[Placed, ...]]:
        """The same as a file holds it, and where its dated parts stand there; these may stand in other late parts."""
        late, file, placed, end = tuple(self.late), bytearray(), list[Placed](), 0
        text = _LATE.sub(lambda found: found[0] if int(found[1]) in self.dated else late[int(found[1])], text)
        for found in _LATE.finditer(text):
            file += text[end : found.start()].encode()
            start, end, number = len(file), found.end(), int(found[1])
            file += late[number].encode()
            if number in self.dated:
                placed.append(Placed(start, len(file), self.dated[number]))
        return bytes(file + text[end:].encode()), tuple(placed)


class PackedTexts(Sequence[str]):
    """Texts that are asked for once or twice, in a tenth of the memory: a large site waits for its engine with all."""

    def __init__(self, texts: Sequence[str]) -> None:
        self._count, self._packed = len(texts), zlib.compress("\0".join(texts).encode(), 1)

    def __len__(self) -> int:
        return self._count

    def __iter__(self) -> Iterator[str]:
        return iter(zlib.decompress(self._packed).decode().split("\0") if self._count else ())

    def __eq__(self, other: object) -> bool:
        return isinstance(other, Sequence) and tuple(self) == tuple(other)

    def __hash__(self) -> int:
        return hash(tuple(self))

    @overload
    def __getitem__(self, index: int) -> str: ...
    @overload
    def __getitem__(self, index: slice) -> Sequence[str]: ...
    def __getitem__(self, index: int | slice) -> str | Sequence[str]:
        return tuple(self)[index]


def late_place(number: int) -> str:
    """The mark that keeps the place of a late part."""
    return f"<!--late {number}-->"


@dataclass(frozen=True)
class Site:
    """One site: its slug, the name its readers see, and its pages, the first being the front page.

    files: what lies beside the pages, such as dates.ics, by its path in the site. finished: such files that stand from
    an earlier build, where they are not made again. language: in which its readers read.
    """

    slug: str
    name: str
    pages: tuple[Page, ...]
    files: Mapping[str, bytes] = field(default_factory=dict)
    finished: tuple[str, ...] = ()
    language: str = "en"


@dataclass(frozen=True)
class Finished:
    """The pages of a site, by their uri, and its other files, that stand from an earlier build.

    same_day: whether that was made as of the same day; else files for a calendar program, which name it, do not stand.
    """

    pages: Mapping[str, Page] = field(default_factory=dict)
    files: tuple[str, ...] = ()
    same_day: bool = True


def link(here: str, there: str) -> str:
    """The relative address from one page's source to another's: from horses/bramble.md to index.md, ../index.html."""
    folder = posixpath.dirname(here) or "."
    return posixpath.relpath(there, folder).removesuffix(".md") + ".html"

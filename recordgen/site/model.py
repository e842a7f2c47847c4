"""A site before any engine has seen it: its name, its pages as HTML with places left for late parts, and its files."""

from __future__ import annotations

import posixpath
import re
import zlib
from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, overload

_LATE = re.compile(r"<!--late (\d+)-->")


@dataclass(frozen=True)
class Page:
    """One page.

    uri: where its source would lie, such as horses/bramble.md. html: its body. late: pictures and tables of figures,
    which come in last, so that neither the engine nor search reads through them. searched: whether search reads it.
    found_by: more words by which search finds it, shown nowhere. visits: the days it tells of, ISO. weight: of its
    place among what search finds. entry: what search reads of it, once its site is rendered. finished: whether the file
    stands from an earlier build, so that no text of it is here. head: more for the head of the document, such as the
    size of its paper.
    """

    uri: str
    title: str
    html: str
    late: Sequence[str] = ()
    in_menu: bool = True
    searched: bool = True
    found_by: tuple[str, ...] = ()
    visits: tuple[str, ...] = ()
    weight: float = 1.0
    entry: Sequence[Any] | None = None
    finished: bool = False
    head: str = ""

    def complete(self, text: str) -> str:
        """The text with each place for a late part filled."""
        late = tuple(self.late)
        return _LATE.sub(lambda found: late[int(found[1])], text)


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

    files: what lies beside the pages, such as dates.ics, by its path in the site. finished: more such files, which
    stand from an earlier build. language: in which its readers read.
    """

    slug: str
    name: str
    pages: tuple[Page, ...]
    files: Mapping[str, bytes] = field(default_factory=dict)
    finished: tuple[str, ...] = ()
    language: str = "en"


@dataclass(frozen=True)
class Finished:
    """The pages of a site, by their uri, and its other files, that stand from an earlier build."""

    pages: Mapping[str, Page] = field(default_factory=dict)
    files: tuple[str, ...] = ()


def link(here: str, there: str) -> str:
    """The relative address from one page's source to another's: from horses/bramble.md to index.md, ../index.html."""
    folder = posixpath.dirname(here) or "."
    return posixpath.relpath(there, folder).removesuffix(".md") + ".html"

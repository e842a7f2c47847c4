"""A page that a practice wrote itself, and the pictures beside it."""

from __future__ import annotations

from dataclasses import dataclass
from pathlib import Path

from recordgen.records.pages.markdown import PageText, read_page


@dataclass(frozen=True)
class OwnPage:
    """One page. name: that of its file without the ending. source: its Markdown."""

    name: str
    file: Path
    source: str

    @property
    def text(self) -> PageText:
        """Its title, links and headings."""
        return read_page(self.source)


@dataclass(frozen=True)
class OwnPages:
    """The pages of one folder and the pictures beside them, by the names of their files.

    faulty: names of the files that are there and cannot be shown.
    """

    pages: tuple[OwnPage, ...] = ()
    pictures: tuple[Path, ...] = ()
    faulty: frozenset[str] = frozenset()

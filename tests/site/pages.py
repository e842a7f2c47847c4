"""Reads built pages as a browser's parser does."""

from __future__ import annotations

from functools import cache
from pathlib import Path

from bs4 import BeautifulSoup


@cache
def soup(path: Path) -> BeautifulSoup:
    """A built page, parsed."""
    return BeautifulSoup(path.read_text("utf-8"), "lxml")


def all_pages(folder: Path) -> list[Path]:
    """The built pages in a folder, in order."""
    return sorted(folder.rglob("*.html"))


def words(path: Path) -> str:
    """The words of a page's own part, without the engine's frame."""
    body = soup(path).select_one("article")
    assert body is not None
    return " ".join(body.get_text(" ").split())

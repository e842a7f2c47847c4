"""Reads built pages as a browser's parser does."""

from __future__ import annotations

import json
from functools import cache
from pathlib import Path
from typing import Any

import lxml.html
from bs4 import BeautifulSoup

from tests.support.kinds import SEARCH_INDEX


@cache
def tree(path: Path) -> lxml.html.HtmlElement:
    """A built page, parsed; much quicker to walk through than `soup`."""
    return lxml.html.parse(str(path), lxml.html.HTMLParser(encoding="utf-8")).getroot()


@cache
def soup(path: Path) -> BeautifulSoup:
    """A built page, parsed."""
    return BeautifulSoup(path.read_text("utf-8"), "lxml")


def all_pages(folder: Path) -> list[Path]:
    """The built pages in a folder, in order."""
    return sorted(folder.rglob("*.html"))


def search_entries(site: Path) -> dict[str, list[Any]]:
    """By address, what search knows of a page: as `recordgen/site/frame/search_index.py` lists it."""
    told = (site / SEARCH_INDEX).read_text("utf-8").removeprefix("recordgenFound(").removesuffix(");\n")
    return {entry[0]: entry for entry in json.loads(told)["pages"]}


def words(path: Path) -> str:
    """The words of a page's own part, without the engine's frame."""
    return " ".join(" ".join(tree(path).xpath("//article//text()")).split())


def text_of(found: BeautifulSoup, part: str) -> str:
    """The words of a part of a page."""
    section = found.select_one(part)
    assert section is not None
    return " ".join(section.get_text(" ").split())

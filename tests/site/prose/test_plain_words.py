"""The pages of prose are plain, as the other texts for owners are."""

from __future__ import annotations

import re
from pathlib import Path

import pytest

from recordgen.packaged import packaged
from tests.support.reading_age import grade, joined

# Owners read them; the year of school is a judgement on what patients are given to read (see test_reading_age.py).
HARDEST = 7
PROSE = sorted((packaged() / "site_templates" / "pages").glob("*.md"))
# What is not read as text: programs of the template, sources in small print, classes, signs of Markdown and HTML.
_NOT_TEXT = re.compile(r"\{%.*?%\}|<small>.*?</small>|\{:.*?\}|\]\(.*?\)|<[^>]+>|[*#\[\]]|^:", re.MULTILINE)
_VALUE = re.compile(r"\{\{.*?\}\}")


def read(page: Path) -> str:
    """The text of a page as it is read, each line closed by a mark; a value counts as two words."""
    lines = _VALUE.sub("6 weeks", _NOT_TEXT.sub("", page.read_text("utf-8"))).splitlines()
    return joined(line.strip(" -") for line in lines if re.search(r"[a-z]{3}", line))


def test_the_pages_are_found() -> None:
    """Words, method and safety are prose."""
    assert {"words.md", "method.md", "safety.md"} <= {page.name for page in PROSE}


@pytest.mark.parametrize("page", PROSE, ids=lambda page: page.name)
def test_a_page_is_plain(page: Path) -> None:
    """Nobody needs more than seven years of school for it."""
    assert grade(read(page)) <= HARDEST

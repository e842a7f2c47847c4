"""What a built site would load from other hosts: each would learn who reads, and the sealed site blocks it anyway."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator

from recordgen.private.site_files import SiteFile

_ADDRESS = r"(?:https?:)?//[^\s\"'<>)]+"
# What a browser fetches by itself: sources of pictures, scripts and frames, and files a style asks for.
_SOURCE = re.compile(rf"\b(?:src|srcset|poster)\s*=\s*[\"']?\s*({_ADDRESS})", re.IGNORECASE)
_STYLED = re.compile(rf"(?:\burl\(\s*|@import\s+)[\"']?\s*({_ADDRESS})", re.IGNORECASE)
_LINK = re.compile(r"<link\b[^>]*>", re.IGNORECASE)
_REL = re.compile(r"\brel\s*=\s*[\"']?([^\"'>]*)", re.IGNORECASE)
_HREF = re.compile(rf"\bhref\s*=\s*[\"']?\s*({_ADDRESS})", re.IGNORECASE)
# Links that tell something and load nothing.
_TELLING = {"alternate", "author", "canonical", "license", "next", "prev"}


def loaded_from_elsewhere(file: SiteFile) -> list[str]:
    """The addresses on other hosts that a page or a style would load, each once, in order; none for other files."""
    if not file.is_page and not file.path.endswith(".css"):
        return []
    return list(dict.fromkeys(_addresses(file.content.decode("utf-8", "replace"))))


def _addresses(text: str) -> Iterator[str]:
    found = [*_SOURCE.findall(text), *_STYLED.findall(text)]
    for link in _LINK.findall(text):
        rel = _REL.search(link)
        if not rel or not set(rel[1].lower().split()) <= _TELLING:
            found += _HREF.findall(link)
    yield from map(html.unescape, found)

"""The files of a built site as they are sealed: what they are, their scripts, and links that lead elsewhere."""

from __future__ import annotations

import html
import re
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path, PurePosixPath

from recordgen.private.crypto.blobs import LARGEST
from recordgen.problems import Trouble
from recordgen.sentences import say
from recordgen.site.single_page import policy_hash

_ADDRESS = r"(?:https?:)?//[^\s\"'<>)]+"
# What a browser fetches by itself: sources of pictures, scripts and frames, and files a style asks for.
_LOADED = re.compile(rf"\b(?:src|srcset|poster)\s*=\s*[\"']?\s*({_ADDRESS})", re.IGNORECASE)
_STYLED = re.compile(rf"(?:\burl\(\s*|@import\s+)[\"']?\s*({_ADDRESS})", re.IGNORECASE)
_LINK = re.compile(r"<link\b[^>]*>", re.IGNORECASE)
_REL = re.compile(r"\brel\s*=\s*[\"']?([^\"'>]*)", re.IGNORECASE)
_HREF = re.compile(rf"\bhref\s*=\s*[\"']?\s*({_ADDRESS})", re.IGNORECASE)
# Links that tell something and load nothing.
_TELLING = {"alternate", "author", "canonical", "license", "next", "prev"}


def foreign_addresses(file: SiteFile) -> list[str]:
    """The addresses on other hosts that a page or a style would load, each once, in order; none for other files."""
    if not file.is_page and not file.path.endswith(".css"):
        return []
    return list(dict.fromkeys(_addresses(file.content.decode("utf-8", "replace"))))


def _addresses(text: str) -> Iterator[str]:
    found = [*_LOADED.findall(text), *_STYLED.findall(text)]
    for link in _LINK.findall(text):
        rel = _REL.search(link)
        if not rel or not set(rel[1].lower().split()) <= _TELLING:
            found += _HREF.findall(link)
    yield from map(html.unescape, found)


# Not asked of the system, whose tables differ from one computer to the next.
MEDIA_TYPES = {
    ".css": "text/css; charset=utf-8",
    ".csv": "text/csv; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".ics": "text/calendar; charset=utf-8",
    ".jpeg": "image/jpeg",
    ".jpg": "image/jpeg",
    ".js": "text/javascript; charset=utf-8",
    ".json": "application/json",
    ".pdf": "application/pdf",
    ".png": "image/png",
    ".svg": "image/svg+xml",
    ".txt": "text/plain; charset=utf-8",
    ".webmanifest": "application/manifest+json",
    ".webp": "image/webp",
    ".woff2": "font/woff2",
    ".xml": "application/xml",
}
COMPRESSIBLE = {".css", ".csv", ".html", ".ics", ".js", ".json", ".svg", ".txt", ".webmanifest", ".xml"}

_SCRIPT = re.compile(r"<script\b([^>]*)>(.*?)</script\s*>", re.IGNORECASE | re.DOTALL)
_SOURCE = re.compile(r"(?:^|\s)src\s*=", re.IGNORECASE)
_TYPE = re.compile(r"(?:^|\s)type\s*=\s*[\"']?([^\"'\s>]*)", re.IGNORECASE)
_RUN = {"", "module", "text/javascript", "application/javascript"}
_TITLE = re.compile(r"<title[^>]*>(.*?)</title>", re.IGNORECASE | re.DOTALL)
# What a sealed site cannot have or does not want: a worker beside its own, and the packed map of the site.
_NOT_SEALED = {"worker.js", "sitemap.xml.gz"}


@dataclass(frozen=True)
class SiteFile:
    """One file of a built site: its path in the site with forward strokes, its bytes."""

    path: str
    content: bytes

    @property
    def media_type(self) -> str:
        """The media type a browser is told."""
        return MEDIA_TYPES.get(_ending(self.path), "application/octet-stream")

    @property
    def compressible(self) -> bool:
        """Tell whether it is text, which packs; pictures are packed already."""
        return _ending(self.path) in COMPRESSIBLE

    @property
    def is_page(self) -> bool:
        """Tell whether it is read as a page."""
        return _ending(self.path) == ".html"


def _ending(path: str) -> str:
    return PurePosixPath(path).suffix.lower()


def site_files(site: Path) -> Iterator[SiteFile]:
    """The files of a built site that readers need, in the order of their paths.

    Raises Trouble for no site, and for a file larger than a reader opens.
    """
    if not (site / "index.html").is_file():
        raise Trouble(say("{site} holds no built site", site=site), say("Build it first: recordgen build"))
    paths = {path.relative_to(site).as_posix(): path for path in site.rglob("*") if path.is_file()}
    for name in sorted(paths):
        if name not in _NOT_SEALED and not name.endswith(".map"):
            yield SiteFile(name, _read(paths[name], name))


def _read(path: Path, name: str) -> bytes:
    size = path.stat().st_size
    if size > LARGEST:
        message = say(
            "{name} is {size:.1f} MB; a reader opens {largest:.0f} MB at the most",
            name=name,
            size=size / 1000000.0,
            largest=LARGEST / 1000000.0,
        )
        raise Trouble(message, say("Make it smaller, or leave it out"))
    return path.read_bytes()


def title_of(page: bytes) -> str:
    """The title of a page, or nothing where it has none."""
    found = _TITLE.search(page.decode("utf-8", "replace"))
    return " ".join(html.unescape(found[1]).split()) if found else ""


def script_hashes(page: bytes) -> set[str]:
    """The scripts that stand in a page, as a content security policy names them: 'sha256-…', quotes included."""
    text = page.decode("utf-8", "replace").replace("\r\n", "\n")
    return {policy_hash(body) for words, body in _SCRIPT.findall(text) if _runs(words)}


def _runs(words: str) -> bool:
    kind = _TYPE.search(words)
    return not _SOURCE.search(words) and (kind[1].lower() if kind else "") in _RUN

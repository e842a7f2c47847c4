"""Finished pages on another day: what names the day is said again in its place, all else comes along as it stands."""

from __future__ import annotations

import json
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path

from recordgen.folders import bring_along
from recordgen.site.kept.standing import KeptSite
from recordgen.site.model import DatedPart, Placed, Site, link

Say = Callable[[DatedPart], str]
NONE_DATED = "[]"


def as_text(placed: Sequence[Placed]) -> str:
    """The dated parts of a file in short."""
    return json.dumps([[one.start, one.end, one.part.template, one.part.values] for one in placed])


def from_text(text: str) -> list[Placed]:
    """The dated parts again."""
    return [Placed(start, end, DatedPart(template, values)) for start, end, template, values in json.loads(text)]


def say_again(file: bytes, placed: Sequence[Placed], say: Say) -> tuple[bytes, list[Placed]]:
    """A file with its dated parts as they are said now, and where they stand in it."""
    said = {part: say(part).encode() for part in {one.part for one in placed}}
    made, found, end = bytearray(), list[Placed](), 0
    for one in placed:
        made += file[end : one.start]
        found.append(Placed(len(made), len(made) + len(said[one.part]), one.part))
        made, end = made + said[one.part], one.end
    return bytes(made + file[end:]), found


def bring_finished(site: Site, before: KeptSite, place: Path, folder: Path, say: Say | None) -> Mapping[str, str]:
    """Put the finished pages and files of a site into a new folder of it; their dated parts, by page.

    before: the site as it stands in `place`. say: how the day is said, where it is another one.
    Raises OSError, and Trouble where a template of a dated part cannot be filled in.
    """
    kept = {page.uri: page.dated for page in before.pages}
    dated = {page.uri: kept[page.uri] for page in site.pages if page.finished}
    again = [uri for uri in dated if dated[uri] != NONE_DATED] if say else []
    as_they_are = [link("index.md", uri) for uri in dated if uri not in set(again)]
    bring_along([*as_they_are, *(file for file in site.finished if file not in site.files)], place, folder)
    return {**dated, **{uri: _written_again(uri, dated[uri], place, folder, say) for uri in again if say}}


def _written_again(uri: str, dated: str, place: Path, folder: Path, say: Say) -> str:
    page = link("index.md", uri)
    content, placed = say_again((place / page).read_bytes(), from_text(dated), say)
    (folder / page).parent.mkdir(parents=True, exist_ok=True)
    (folder / page).write_bytes(content)
    return as_text(placed)

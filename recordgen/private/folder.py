"""What lies in a published place: which of its files are this site's, and which are somebody's."""

from __future__ import annotations

import hashlib
import json
import os
import re
from collections.abc import Collection
from dataclasses import dataclass
from pathlib import Path

from recordgen.problems import Trouble, counted

RING_FILE = "keys.json"
MOST_NAMED = 5

# What a sealed site consists of.
_SEALED = re.compile(r"(index|404)\.html|sw\.js|keys\.json|manifest\.bin|robots\.txt|\.nojekyll|d/[a-z2-7]{26}\.bin")


def names(folder: Path) -> list[str]:
    """The paths in a folder of all that is no folder, in order, with forward strokes; links are not followed."""
    found = [Path(at, name) for at, folders, files in os.walk(folder) for name in (*files, *_links(at, folders))]
    return sorted(path.relative_to(folder).as_posix() for path in found)


def _links(at: str, folders: list[str]) -> list[str]:
    return [name for name in folders if os.path.islink(os.path.join(at, name))]


def fingerprints(folder: Path) -> dict[str, str]:
    """The files of a folder by their paths in it, each as the SHA-256 of its bytes."""
    return {name: hashlib.sha256((folder / name).read_bytes()).hexdigest() for name in names(folder)}


def refuse_strangers(foreign: Collection[str], where: str, way_out: str) -> None:
    """Raises Trouble that names the files of somebody else, where there are any."""
    if foreign:
        some = ", ".join(sorted(foreign)[:MOST_NAMED])
        more = f" and {counted(len(foreign) - MOST_NAMED, 'other')}" if len(foreign) > MOST_NAMED else ""
        raise Trouble(f"{where} holds files that are not of this site: {some}{more}", way_out)


@dataclass(frozen=True)
class Ours:
    """Which files of a place may be replaced.

    site: the public id of the stable's sealed site, as its key ring spells it; empty where it has none. published: the
    paths of what was published last.
    """

    site: str = ""
    published: frozenset[str] = frozenset()

    def look_at(self, found: Collection[str], ring: bytes | None, where: str) -> None:
        """Raises Trouble where a place holds somebody's files, with their names, or another stable's site.

        found: the paths of all that lies there. ring: the bytes of its keys.json, None where there is none.
        """
        site = "" if ring is None else _site_of(ring)
        if site and site != self.site:
            message = f"{where} holds the sealed site of another stable, or one whose keys were lost"
            raise Trouble(message, "Give each stable a place of its own; one whose keys are lost, empty by hand")
        foreign = [name for name in found if name not in self.published and not (site and _SEALED.fullmatch(name))]
        refuse_strangers(foreign, where, "Name an empty place of its own in stable.yaml, or take them away")


def _site_of(ring: bytes) -> str:
    try:
        site = json.loads(ring).get("site")
    except (ValueError, AttributeError):
        return ""
    return site if isinstance(site, str) else ""

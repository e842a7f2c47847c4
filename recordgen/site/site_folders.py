"""The folders of built sites: each carries a mark of ours, and none that lacks it or holds more is ever replaced."""

from __future__ import annotations

import json
from pathlib import Path

from recordgen.files import list_empty_folders, list_files
from recordgen.folders import refuse_strangers
from recordgen.problems import Trouble
from recordgen.sentences import say

# Tells whose site a folder holds, and which files were written into it, each with its size in bytes.
MARK = ".recordgen-site.json"
_WAY_OUT = say("Move them elsewhere, or name another folder with --out; nothing was changed")


def mark_folder(folder: Path, slug: str) -> None:
    """Mark a folder as the site of a stable, or the trimmer's own, readable by this user alone."""
    written = {name: (folder / name).stat().st_size for name in list_files(folder)}
    (folder / MARK).write_text(json.dumps({"site": slug, "files": written}, indent=0) + "\n", "utf-8")
    folder.chmod(0o700)


def is_site(folder: Path) -> bool:
    """Tell whether a folder carries the mark of a built site."""
    return _read_mark(folder) is not None


def refuse_place(place: Path, slug: str) -> None:
    """Raises Trouble, naming what is not ours, where a site's place holds anything but that site as it was built.

    A file of ours that was changed since does not count. slug: of the site; the name of the place tells nothing.
    """
    if place.is_symlink() or (place.exists() and not place.is_dir()):
        raise Trouble(
            say("{place} is no folder", place=place), say("Name another folder with --out; nothing was changed")
        )
    site, written = _read_mark(place) or (slug, set())
    if site != slug:
        raise Trouble(say("{place} holds the site of {site}", place=place, site=site), _WAY_OUT)
    found = [*list_files(place), *list_empty_folders(place)]
    refuse_strangers([name for name in found if name not in written], str(place), _WAY_OUT)


def _read_mark(folder: Path) -> tuple[str, set[str]] | None:
    """Whose site a folder holds, and the names of what was written into it; None without a mark that reads."""
    try:
        held = json.loads((folder / MARK).read_bytes())
        return str(held["site"]), {MARK, *held["files"]}
    except (OSError, ValueError, KeyError, TypeError):
        return None

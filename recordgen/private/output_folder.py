"""Where a sheet, a shared file or a calendar may lie: outside the records' git tree, or where git leaves it alone."""

from __future__ import annotations

import os
from pathlib import Path

from recordgen.git.repository import is_ignored, top_of
from recordgen.problems import Trouble


def fit_place(out: Path | None, records: Path, such: str = "--out ..") -> Path:
    """The folder for such files: `out`, or this one where that is None.

    such: what names another place. Raises Trouble for one inside the records or their git tree, unless `out` names it
    and git ignores it.
    """
    place = Path(os.path.realpath(out or Path.cwd()))
    trees = [Path(os.path.realpath(tree)) for tree in (records, top_of(records)) if tree]
    if not any(place.is_relative_to(tree) for tree in trees):
        return out or Path.cwd()
    way_out = f"Name a place elsewhere, such as {such}, or one that git ignores"
    if out is None:
        raise Trouble("this folder lies inside the records, and no such file may get into git", way_out)
    if not is_ignored(place / "record-abcdefgh.html", records):
        shown = "this folder" if out == Path() else out
        raise Trouble(f"{shown} lies inside the records, and git does not ignore it", way_out)
    return out

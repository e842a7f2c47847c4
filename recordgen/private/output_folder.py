"""Where a shared file may lie: outside the records' git tree, or where git is told to leave it alone."""

from __future__ import annotations

import os
from pathlib import Path

from recordgen.git.repository import is_ignored, top_of
from recordgen.problems import Trouble


def fit_place(out: Path | None, records: Path) -> Path:
    """The folder for shared files: `out`, or this one where that is None.

    Raises Trouble for one inside the records or their git tree, unless `out` names it and git ignores it.
    """
    place = Path(os.path.realpath(out or Path.cwd()))
    trees = [Path(os.path.realpath(tree)) for tree in (records, top_of(records)) if tree]
    if not any(place.is_relative_to(tree) for tree in trees):
        return out or Path.cwd()
    way_out = "Name a folder elsewhere, such as --out .. or one that git ignores"
    if out is None:
        raise Trouble("this folder lies inside the records, and a shared file must not get into git", way_out)
    if not is_ignored(place / "record-abcdefgh.html", records):
        raise Trouble(f"{out} lies inside the records, and git does not ignore it", way_out)
    return out

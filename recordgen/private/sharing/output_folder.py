"""Tell where sites, a sheet, a shared file or a calendar may lie: outside the records, or where git ignores them."""

from __future__ import annotations

import os
from pathlib import Path

from recordgen.git.repository import is_ignored, top_of
from recordgen.problems import Trouble
from recordgen.sentences import say

# The one folder of the records in which sites are built.
SITES = "sites"


def fit_place(out: Path | None, records: Path, such: str = "--out ..") -> Path:
    """The folder for such files: `out`, or this one where that is None.

    such: what names another place. Raises Trouble for one inside the records or their git tree, unless `out` names it
    and git ignores it.
    """
    place = Path(os.path.realpath(out or Path.cwd()))
    if not _in_tree(place, records):
        return out or Path.cwd()
    way_out = say("Name a place elsewhere, such as {such}, or one that git ignores", such=such)
    if out is None:
        raise Trouble(say("this folder lies inside the records, and no such file may get into git"), way_out)
    if not is_ignored(place / "record-abcdefgh.html", records):
        shown = "this folder" if out == Path() else out
        raise Trouble(say("{shown} lies inside the records, and git does not ignore it", shown=shown), way_out)
    return out


def refuse_sites(out: Path, records: Path) -> None:
    """Raises Trouble where built sites would lie in the records, but for their own folder of sites.

    The same in the git tree around them, where git would keep the sites.
    """
    place, own = Path(os.path.realpath(out)), Path(os.path.realpath(records)) / SITES
    if lies_in(place, records) and not lies_in(place, own):
        way_out = say(
            "Leave --out away for {own}, or name a folder elsewhere, such as --out ../{sites}", own=own, sites=SITES
        )
        raise Trouble(say("{out} lies inside the records, where no site belongs", out=out), way_out)
    tree = top_of(records)
    if tree and lies_in(place, tree) and not is_ignored(place / "practice" / "index.html", records):
        way_out = say("Write that folder into .gitignore, such as /sites/, or name a folder elsewhere")
        raise Trouble(say("{out} lies in the records' git tree, and git does not ignore it", out=out), way_out)


def _in_tree(place: Path, records: Path) -> bool:
    """Tell whether a place lies in the records or in the git tree around them."""
    return any(lies_in(place, tree) for tree in (records, top_of(records)) if tree)


def lies_in(place: Path, folder: Path) -> bool:
    """Tell whether a place, there or not yet, is a folder or lies in it, whatever links or letter cases name them."""
    real = Path(os.path.realpath(place))
    if real.is_relative_to(os.path.realpath(folder)):
        return True
    return folder.exists() and any(one.exists() and one.samefile(folder) for one in (real, *real.parents))

"""Where a shared file may lie: outside the records' git tree, or where git is told to leave it alone."""

from __future__ import annotations

import os
import subprocess
from pathlib import Path

from recordgen.problems import Trouble
from recordgen.records.git import GitTrouble
from recordgen.records.git_log import ask, text


def fit_place(out: Path | None, records: Path) -> Path:
    """The folder for shared files: `out`, or this one where that is None.

    Raises Trouble for one inside the records or their git tree, unless `out` names it and git ignores it.
    """
    place = Path(os.path.realpath(out or Path.cwd()))
    trees = [Path(os.path.realpath(tree)) for tree in (records, git_tree(records)) if tree]
    if not any(place.is_relative_to(tree) for tree in trees):
        return out or Path.cwd()
    way_out = "Name a folder elsewhere, such as --out .. or one that git ignores"
    if out is None:
        raise Trouble("this folder lies inside the records, and a shared file must not get into git", way_out)
    if not is_ignored(place / "record-abcdefgh.html", records):
        raise Trouble(f"{out} lies inside the records, and git does not ignore it", way_out)
    return out


def git_tree(records: Path) -> Path | None:
    """The top of the git tree that the records lie in; None where there is none."""
    try:
        return Path(text(ask(records, "rev-parse", "--show-toplevel")).rstrip("\n"))
    except GitTrouble:
        return None


def is_ignored(path: Path, records: Path) -> bool:
    """Whether git leaves a file at `path` alone; no where there is no git. path: from the root of the disk on."""
    # This one command of git takes no path literally, so it is asked apart from the others.
    kept = {name: value for name, value in os.environ.items() if not name.startswith("GIT_")}
    asked = ["git", "-C", str(records), "check-ignore", "--quiet", "--", str(path)]
    try:
        return subprocess.run(asked, capture_output=True, env=kept).returncode == 0
    except FileNotFoundError:
        return False

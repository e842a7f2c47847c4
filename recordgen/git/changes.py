"""Changes under a folder since the last entry."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from recordgen.git.run import run, text

KindOfChange = Literal["added", "amended", "taken out"]


def kinds_of_change(records: Path) -> dict[Path, KindOfChange]:
    """The change of each file under `records` since the last entry, in the order of the paths.

    A renamed file counts as taken out under its old name and added under the new one. Raises GitTrouble.
    """
    inside = text(run(records, "rev-parse", "--show-prefix")).rstrip("\n")
    told = text(run(records, "status", "--porcelain=v1", "-z", "--untracked-files=all", "--no-renames", "--", "."))
    entries = ((entry[3:], _kind(entry[:2])) for entry in told.split("\0") if entry)
    found = {records / name.removeprefix(inside): kind for name, kind in entries if name.startswith(inside)}
    return dict(sorted(found.items()))


def _kind(states: str) -> KindOfChange:
    if "D" in states:
        return "taken out"
    return "added" if states == "??" or "A" in states else "amended"

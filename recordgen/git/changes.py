"""Changes under a folder since the last entry."""

from __future__ import annotations

from pathlib import Path
from typing import Literal

from recordgen.git.repository import top_of
from recordgen.git.run import run, text
from recordgen.git.troubles import GitTrouble
from recordgen.problems import quoted
from recordgen.sentences import say

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


def names_changed_since(records: Path, revision: str) -> set[str]:
    """The files under `records`, by their names from there, that are not now as they were at a revision.

    What is not kept in git yet counts too. revision: any name of an entry, such as one of a tag. Raises GitTrouble.
    """
    try:
        entry = text(
            run(records, "rev-parse", "--verify", "--quiet", "--end-of-options", f"{revision}^{{commit}}")
        ).strip()
    except GitTrouble as trouble:
        if top_of(records) is None:
            raise
        raise GitTrouble(
            say("git knows no entry {revision} here", revision=quoted(revision)), say("Look with: git log")
        ) from trouble
    inside = text(run(records, "rev-parse", "--show-prefix")).rstrip("\n")
    differ = text(run(records, "diff", "--name-only", "--no-renames", "--no-ext-diff", "-z", entry, "--", "."))
    new = text(run(records, "ls-files", "--others", "--exclude-standard", "-z"))
    found = {name.removeprefix(inside) for name in differ.split("\0") if name}
    return found | {name for name in new.split("\0") if name}

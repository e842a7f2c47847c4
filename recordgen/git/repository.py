"""What a repository is and holds, as far as a folder in it is concerned."""

from __future__ import annotations

from pathlib import Path

from recordgen.git.run import run, text
from recordgen.git.troubles import GitTrouble


def top_of(folder: Path) -> Path | None:
    """The top of the git tree that a folder lies in; None where there is none."""
    try:
        return Path(text(run(folder, "rev-parse", "--show-toplevel")).rstrip("\n"))
    except GitTrouble:
        return None


def first_entry(folder: Path) -> str | None:
    """The first entry of the history and the folder's place in its repository, as `hash/place/`.

    None where there is no git, no repository or no entry. Raises GitTrouble where the history is cut short.
    """
    try:
        roots = text(run(folder, "rev-list", "--max-parents=0", "HEAD", "--")).split()
        shallow = text(run(folder, "rev-parse", "--is-shallow-repository")).strip() == "true"
        place = text(run(folder, "rev-parse", "--show-prefix")).strip()
    except GitTrouble:
        return None
    if shallow:
        raise GitTrouble("the records' history is cut short", "Fetch all of it: git fetch --unshallow")
    return f"{roots[-1]}/{place}" if roots else None


def is_ignored(path: Path, folder: Path) -> bool:
    """Whether git leaves a file at `path` alone; no where there is no git.

    path: from the root of the disk on. folder: any in the repository.
    """
    # This one command of git takes no path literally.
    not_literally = {"GIT_LITERAL_PATHSPECS": "0"}
    try:
        run(folder, "check-ignore", "--quiet", "--", str(path), more=not_literally)
    except GitTrouble:
        return False
    return True


def kept_now(folder: Path) -> dict[str, str]:
    """The content of each file under the folder in the present entry, by its name from there.

    As git's names of the contents; none where there is no entry yet. Raises GitTrouble.
    """
    try:
        run(folder, "rev-parse", "--quiet", "--verify", "HEAD")
    except GitTrouble:
        return {}
    told = text(run(folder, "ls-tree", "-r", "-z", "HEAD"))
    entries = (entry.partition("\t") for entry in told.split("\0") if entry)
    return {name: about.split(" ")[2] for about, _, name in entries}


def states_of(folder: Path) -> dict[str, str]:
    """What git says of each file under the folder that is not as it keeps it, by name: two letters, as git status."""
    told = run(
        *(folder, "status", "--porcelain=v1", "-z", "--untracked-files=all", "--ignored=matching", "--no-renames"),
        *("--", "."),
    )
    return {entry[3:].rstrip("/"): entry[:2] for entry in text(told).split("\0") if entry}

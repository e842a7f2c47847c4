"""The state of a repository, as far as a folder in it is concerned."""

from __future__ import annotations

import os
from collections.abc import Collection, Iterator
from dataclasses import dataclass
from pathlib import Path

from recordgen.git.run import as_bytes, run, text
from recordgen.git.troubles import GitTrouble
from recordgen.sentences import say


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
        shallow, _, place = text(run(folder, "rev-parse", "--is-shallow-repository", "--show-prefix")).partition("\n")
    except GitTrouble:
        return None
    if shallow == "true":
        raise GitTrouble(say("the records' history is cut short"), say("Fetch all of it: git fetch --unshallow"))
    return f"{roots[-1]}/{place.strip()}" if roots else None


def is_ignored(path: Path, folder: Path) -> bool:
    """Tell whether git leaves a file at `path` alone; no where there is no git.

    path: from the root of the disk on. folder: any in the repository.
    """
    # This one command of git takes no path literally.
    not_literally = {"GIT_LITERAL_PATHSPECS": "0"}
    try:
        run(folder, "check-ignore", "--quiet", "--", str(path), more=not_literally)
    except GitTrouble:
        return False
    return True


@dataclass(frozen=True)
class Files:
    """The files under a folder by their names from there; a repository within is one name with a slash behind it.

    tracked: in git. ignored: those of them that git is told to ignore all the same. new: neither in git nor ignored.
    """

    tracked: frozenset[str]
    ignored: frozenset[str]
    new: frozenset[str]


def files_of(folder: Path) -> Files:
    """The files under a folder, as git sees them. Raises GitTrouble."""
    return Files(
        _list_files(folder, "--cached"),
        _list_files(folder, "--cached", "--ignored", "--exclude-standard"),
        _list_files(folder, "--others", "--exclude-standard"),
    )


def _list_files(folder: Path, *which: str) -> frozenset[str]:
    return frozenset(filter(None, text(run(folder, "ls-files", "-z", *which)).split("\0")))


def staged_files(folder: Path) -> dict[str, str]:
    """The bytes about to be kept of each file under the folder, by its name from there, where it is not kept so yet.

    As git's names of the contents. Within a hook this is what the entry will hold. Raises GitTrouble.
    """
    told = text(run(folder, "ls-files", "-z", "--stage", more=_index_of_hook(folder)))
    entries = (entry.partition("\t") for entry in told.split("\0") if entry)
    kept = list_contents(folder)
    found = {name: about.split(" ")[1] for about, _, name in entries}
    return {name: content for name, content in found.items() if kept.get(name) != content}


def files_about_to_add(folder: Path) -> frozenset[str]:
    """While git runs a hook before an entry: the files that are new to git in it; none at any other time."""
    return frozenset(staged_files(folder)) - list_contents(folder).keys() if _index_of_hook(folder) else frozenset()


def _index_of_hook(folder: Path) -> dict[str, str]:
    """While git runs a hook it tells in a variable where the new entry is put together: nothing, or that variable."""
    told = os.environ.get("GIT_INDEX_FILE")
    if not told:
        return {}
    index = os.path.realpath(told)
    own = os.path.realpath(folder / text(run(folder, "rev-parse", "--git-dir")).rstrip("\n"))
    return {"GIT_INDEX_FILE": index} if os.path.dirname(index) == own else {}


def hashes_of(folder: Path, names: Collection[str]) -> dict[str, str]:
    """The name that git would give the content of each file as it lies on the disk; git keeps none of it.

    names: from the folder. Raises GitTrouble.
    """
    if not names:
        return {}
    # This command of git counts the names it is given from the top, wherever it runs.
    places = text(run(folder, "rev-parse", "--show-toplevel", "--show-prefix")).split("\n")
    given = as_bytes("".join(f"{places[1]}{name}\n" for name in names))
    told = text(run(Path(places[0]), "hash-object", "--stdin-paths", given=given))
    return dict(zip(names, told.split(), strict=True))


def contents_of(folder: Path, names: Collection[str]) -> Iterator[tuple[str, bytes | None]]:
    """The bytes behind each of git's names of contents, in their order; None where there is no such file in git.

    Raises GitTrouble.
    """
    if not names:
        return
    told = run(folder, "cat-file", "--batch", given="".join(f"{name}\n" for name in sorted(names)).encode())
    start = 0
    while start < len(told):
        end = told.index(b"\n", start)
        name, *kind = told[start:end].decode().split(" ")
        start = end + 1
        if len(kind) < 2:
            yield name, None
            continue
        size = int(kind[1])
        yield name, told[start : start + size] if kind[0] == "blob" else None
        start += size + 1


def list_contents(folder: Path) -> dict[str, str]:
    """The content of each file under the folder in the present entry, by its name from there.

    As git's names of the contents; none where there is no entry yet. Raises GitTrouble.
    """
    try:
        told = text(run(folder, "ls-tree", "-r", "-z", "HEAD"))
    except GitTrouble:
        if _has_entry(folder):
            raise
        return {}
    entries = (entry.partition("\t") for entry in told.split("\0") if entry)
    return {name: about.split(" ")[2] for about, _, name in entries}


def _has_entry(folder: Path) -> bool:
    try:
        run(folder, "rev-parse", "--quiet", "--verify", "HEAD")
    except GitTrouble:
        return False
    return True


def states_of(folder: Path) -> dict[str, str]:
    """The letters of git for each file under the folder that is not as it keeps it, by name: two, as git status."""
    told = run(
        *(folder, "status", "--porcelain=v1", "-z", "--untracked-files=all", "--ignored=matching", "--no-renames"),
        *("--", "."),
    )
    return {entry[3:].rstrip("/"): entry[:2] for entry in text(told).split("\0") if entry}

"""The state of a repository as one text: while it is the same, so is all that git tells of a folder."""

from __future__ import annotations

import hashlib
from pathlib import Path

from recordgen.git.run import run, text
from recordgen.git.troubles import GitTrouble


def repository_state(folder: Path) -> str:
    """The present entry, the index, how far the history reaches, and each file that is not as git keeps it.

    Of a folder without git, why git tells nothing.
    """
    try:
        places = text(run(folder, "rev-parse", "--show-prefix", "--git-path", "shallow", "--git-path", "index"))
        now = run(
            *(folder, "status", "--porcelain=v2", "--branch", "-z", "--untracked-files=all", "--ignored=matching"),
            *("--no-renames", "--", "."),
        )
        ignored = run(folder, "ls-files", "-z", "--cached", "--ignored", "--exclude-standard")
    except GitTrouble as trouble:
        return f"{trouble.message} {trouble.way_out}"
    prefix, shallow, index = places.removesuffix("\n").rsplit("\n", 2)
    held = [_bytes(folder / file) for file in (shallow, index)]
    return " ".join([prefix, *(hashlib.sha256(part).hexdigest() for part in (now, ignored, *held))])


def _bytes(file: Path) -> bytes:
    try:
        return file.read_bytes()
    except OSError:
        return b""


def present_entry(folder: Path) -> str:
    """The present entry by git's name of it, and whether the history is cut short: the same on every computer.

    `nothing` of a folder that is not the whole of a repository with an entry in it.
    """
    try:
        places = text(run(folder, "rev-parse", "--is-shallow-repository", "--show-prefix")).split("\n")
        entry = text(run(folder, "rev-parse", "--verify", "--quiet", "HEAD")).strip()
    except GitTrouble:
        return "nothing"
    if places[1]:
        return "nothing"
    return f"cut short at {entry}" if places[0] == "true" else entry

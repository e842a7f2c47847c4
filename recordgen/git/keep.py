"""New entries: the files of one stable, those of the practice, and the first of all."""

from __future__ import annotations

import os
from collections.abc import Sequence
from contextlib import suppress
from pathlib import Path

from recordgen.files import spare_room
from recordgen.git.repository import list_contents
from recordgen.git.run import KEEP, as_bytes, run
from recordgen.git.troubles import GitTrouble
from recordgen.sentences import say

# Where a repository keeps what git runs before an entry, as `init` lays it out.
HOOKS = ".githooks"


def commit(records: Path, paths: Sequence[Path], says: str) -> None:
    """One entry of just these files; whatever else is staged stays as it is, and a file that is gone is taken out.

    paths: as `kinds_of_change` gives them. says: the entry's text, as `diary.message` writes it. Raises GitTrouble.
    """
    if not paths:
        raise GitTrouble(say("nothing has changed"), say("Save the files first"))
    new = [path for path in paths if os.path.lexists(path)]
    if new:
        _of_files(records, new, "add", "--intent-to-add")
    _of_files(records, paths, "commit", "--quiet", "--only", f"--message={says}")


def forget(records: Path, paths: Sequence[Path]) -> None:
    """Git no longer has these files in mind for an entry that was not made; the files stay as they are."""
    with suppress(GitTrouble):
        _of_files(records, paths, "reset", "--quiet")


def take_back(records: Path, files: Sequence[Path], says: str) -> None:
    """One more entry that takes back what the last one did; nothing is rewritten.

    files: those of the last entry, all as git keeps them. says: the entry's text. Raises Trouble, with everything as
    it was.
    """
    try:
        with spare_room(records, say("Nothing was taken back")):
            run(records, "revert", "--no-commit", "HEAD", purpose=KEEP)
            run(records, "commit", "--quiet", f"--message={says}", purpose=KEEP)
    except GitTrouble:
        with suppress(GitTrouble):
            run(records, "revert", "--quit", purpose=KEEP)
        _restore(records, files)
        raise


def _restore(records: Path, files: Sequence[Path]) -> None:
    """Files as the last entry has them, however far git came when it was to take that back."""
    forget(records, files)
    kept = list_contents(records)
    there = [file for file in files if file.relative_to(records).as_posix() in kept]
    if there:
        _of_files(records, there, "checkout", "--quiet", "HEAD")
    for file in set(files).difference(there):
        file.unlink(missing_ok=True)


def _of_files(records: Path, paths: Sequence[Path], *words: str) -> None:
    names = "\0".join(str(path.relative_to(records)) for path in paths)
    from_stdin = ("--pathspec-from-file=-", "--pathspec-file-nul")
    run(records, *words, *from_stdin, purpose=KEEP, given=as_bytes(names))


def begin(folder: Path, says: str) -> None:
    """A new repository in `folder` with all its files in a first entry. Raises GitTrouble."""
    run(folder, "init", "--quiet", purpose=KEEP)
    run(folder, "add", "--all", "--", ".", purpose=KEEP)
    run(folder, "commit", "--quiet", f"--message={says}", purpose=KEEP)


def look_through_first(folder: Path) -> None:
    """From now on git runs what lies in the repository's own folder of hooks before an entry. Raises GitTrouble."""
    run(folder, "config", "--local", "core.hooksPath", HOOKS, purpose=KEEP)

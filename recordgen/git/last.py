"""The last entry of the history, and whether one more entry can take it back."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from recordgen.git.repository import staged_files
from recordgen.git.run import run, text
from recordgen.git.troubles import GitTrouble
from recordgen.sentences import say


@dataclass(frozen=True)
class LastEntry:
    """The last entry: what it says, how many entries it follows, and its files, from the top of the repository."""

    says: str
    parents: int
    files: tuple[str, ...]


def last_entry(folder: Path) -> LastEntry:
    """The last entry of the repository that a folder lies in. Raises GitTrouble."""
    fields = text(run(folder, "log", "-1", "--format=%P%x00%s", "HEAD", "--")).rstrip("\n").split("\0")
    files = text(
        run(folder, "diff-tree", "--root", "-r", "-z", "--name-only", "--no-commit-id", "--no-renames", "HEAD")
    )
    return LastEntry(fields[1], len(fields[0].split()), tuple(filter(None, files.split("\0"))))


def refuse_to_take_back(folder: Path, entry: LastEntry) -> None:
    """Raises GitTrouble where the last entry cannot be taken back by one more, without touching anything else."""
    inside = text(run(folder, "rev-parse", "--show-prefix")).rstrip("\n")
    if entry.parents != 1:
        message = say("the last entry is where two histories were put together")
        if not entry.parents:
            message = say("the last entry is the first of all")
        raise GitTrouble(message, say("It stays; mend its files by hand, then: recordgen commit"))
    if others := [name for name in entry.files if not name.startswith(inside)]:
        raise GitTrouble(
            say("the last entry is about other things too, such as {others}", others=others[0]),
            say("Look with: git show"),
        )
    if staged_files(folder):
        raise GitTrouble(say("something waits to be kept in git"), say("Keep it first: recordgen commit"))


def in_records(folder: Path, names: Sequence[str]) -> list[Path]:
    """Files named from the top of the repository, as paths that go on from a folder in it. Raises GitTrouble."""
    inside = text(run(folder, "rev-parse", "--show-prefix")).rstrip("\n")
    return [folder / name.removeprefix(inside) for name in names]

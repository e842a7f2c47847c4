"""The last change is taken back, by an entry of its own; nothing is rewritten."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from pathlib import Path

from recordgen.git.changes import kinds_of_change
from recordgen.git.keep import take_back
from recordgen.git.last import in_records, last_entry, refuse_to_take_back
from recordgen.problems import Trouble
from recordgen.sentences import say

UNDONE = "Taken back: "
AGAIN = "Done again: "


@dataclass(frozen=True)
class Undo:
    """The last entry, about to be taken back: what it said, its files as they lie, and what the new entry says."""

    records: Path
    last: str
    files: tuple[Path, ...]
    says: str


def plan_undo(records: Path) -> Undo:
    """The way back from the last entry. Raises Trouble where there is none that touches nothing else."""
    entry = last_entry(records)
    refuse_to_take_back(records, entry)
    files = in_records(records, entry.files)
    _refuse_unkept(records, files)
    back = entry.says.removeprefix(UNDONE)
    says = f"{AGAIN}{back}" if back != entry.says else f"{UNDONE}{entry.says.removeprefix(AGAIN)}"
    return Undo(records, entry.says, tuple(files), says)


def undo(planned: Undo) -> None:
    """Makes the entry that takes the last one back. Raises Trouble, with everything as it was."""
    take_back(planned.records, planned.files, planned.says)


def _refuse_unkept(records: Path, files: Sequence[Path]) -> None:
    """Raises Trouble where something lies there that is not in git: it would be lost, or left without its horse."""
    folders = {file.parent for file in files if file.name in ("horse.yaml", "stable.yaml")}
    near = [
        path for path in kinds_of_change(records) if path in files or any(folder in path.parents for folder in folders)
    ]
    if near:
        names = ", ".join(path.relative_to(records).as_posix() for path in near[:3])
        raise Trouble(
            say("not in git yet: {names}", names=names), say("Keep it or delete it first, so that nothing is lost")
        )

"""Two lines of entries joined into one: what both changed, and the files put in place so that a kill loses nothing."""

from __future__ import annotations

import os
import tempfile
from collections.abc import Collection, Iterator, Mapping
from dataclasses import dataclass
from functools import partial
from pathlib import Path

from recordgen.git.copies import entry_of, name_entry
from recordgen.git.repository import hashes_of
from recordgen.git.run import CARRY, KEEP, READ, as_bytes, run, text
from recordgen.git.troubles import GitTrouble
from recordgen.problems import Trouble, quoted
from recordgen.sentences import say

# The entry whose files are being put in place.
JOINING = "refs/recordgen/joining"

_ask = partial(run, purpose=READ)
_carry = partial(run, purpose=CARRY)


@dataclass(frozen=True)
class BothSides:
    """The contents of one file on three sides, as git's names: before, here, there. None where there was no file."""

    path: str
    before: str | None
    here: str | None
    there: str | None


@dataclass(frozen=True)
class JoinedLines:
    """All that git makes of two lines. tree: all files. both: those that both sides changed, by their paths."""

    tree: str
    both: tuple[BothSides, ...]


def join_lines(records: Path, here: str, there: str, base: str) -> JoinedLines:
    """Join two lines without touching any file. base: the last entry of both. Raises GitTrouble."""
    told = text(_carry(records, "merge-tree", "--write-tree", "-z", here, there, fine=(0, 1)))
    tree, *rest = told.split("\0")
    sides: dict[str, dict[int, str]] = {}
    for one in rest:
        if not one:
            break
        about, _, path = one.partition("\t")
        _, content, stage = about.split(" ")
        sides.setdefault(path, {})[int(stage)] = content
    both = {path: BothSides(path, found.get(1), found.get(2), found.get(3)) for path, found in sides.items()}
    for changed in _changed_on_both(records, here, there, base):
        both.setdefault(changed.path, changed)
    return JoinedLines(tree.strip(), tuple(both[path] for path in sorted(both)))


def _changed_on_both(records: Path, here: str, there: str, base: str) -> Iterator[BothSides]:
    """Files of one name that both sides changed or added, each otherwise."""
    ours, theirs = changed_contents(records, base, here), changed_contents(records, base, there)
    for path in ours.keys() & theirs.keys():
        (before, mine), (_, other) = ours[path], theirs[path]
        if mine and other and mine != other:
            yield BothSides(path, before, mine, other)


def changed_contents(records: Path, one: str, other: str) -> dict[str, tuple[str | None, str | None]]:
    """The content of each file in which two entries or trees differ, as git's names, by its path. Raises GitTrouble."""
    parts = text(_ask(records, "diff-tree", "-r", "-z", "--raw", "--no-abbrev", "--no-renames", one, other)).split("\0")
    found = {}
    for about, path in zip(parts[::2], parts[1::2], strict=False):
        _, _, old, new, _ = about.split(" ")
        found[path] = (_some(old), _some(new))
    return found


def _some(content: str) -> str | None:
    return None if set(content) == {"0"} else content


def content_of(records: Path, name: str | None) -> bytes:
    """The bytes behind git's name of a content; none where there is no file. Raises GitTrouble."""
    return _ask(records, "cat-file", "blob", name) if name else b""


def tree_with(records: Path, tree: str, files: Mapping[str, bytes | None]) -> str:
    """A tree with some files in place of its own; None takes one out. Raises GitTrouble."""
    if not files:
        return tree
    modes = {}
    for entry in text(_ask(records, "ls-tree", "-r", "-z", tree)).split("\0"):
        about, _, path = entry.partition("\t")
        modes[path] = about.split(" ")[0]
    lines = []
    for path, content in files.items():
        if content is None:
            lines.append(f"0 {'0' * 40}\t{path}\0")
        else:
            blob = text(_carry(records, "hash-object", "-w", "--stdin", given=content)).strip()
            lines.append(f"{modes.get(path, '100644')} {blob}\t{path}\0")
    with tempfile.TemporaryDirectory() as folder:
        own = {"GIT_INDEX_FILE": os.path.join(folder, "index")}
        _carry(records, "read-tree", tree, more=own)
        _carry(records, "update-index", "-z", "--index-info", given=as_bytes("".join(lines)), more=own)
        return text(_carry(records, "write-tree", more=own)).strip()


def write_joined_entry(records: Path, tree: str, here: str, there: str, says: str) -> str:
    """A new entry that follows both lines. Raises GitTrouble."""
    return text(run(records, "commit-tree", "-m", says, "-p", here, "-p", there, tree, purpose=KEEP)).strip()


def take_over(records: Path, entry: str) -> None:
    """Make an entry the present one, with its files in place; what is not in git stays. Raises GitTrouble.

    A kill leaves a name behind by which `end_taking_over` goes on.
    """
    now = entry_of(records, "HEAD")
    name_entry(records, JOINING, entry)
    try:
        # A file that was saved again as it was is not taken for changed.
        _carry(records, "update-index", "-q", "--refresh", fine=(0, 1))
        _carry(records, "read-tree", "-m", "-u", now or entry, entry)
    except GitTrouble:
        name_entry(records, JOINING, None)
        raise
    _end(records, entry)


def end_taking_over(records: Path) -> bool:
    """Go on where a kill stopped `take_over`; False where nothing was stopped.

    Raises Trouble where a file was changed since then.
    """
    entry, now = entry_of(records, JOINING), entry_of(records, "HEAD")
    if entry is None or now is None:
        return False
    if entry != now:
        _refuse_changed(records, changed_contents(records, now, entry))
        _carry(records, "read-tree", "--reset", "-u", entry)
    _end(records, entry)
    return True


def _end(records: Path, entry: str) -> None:
    _carry(records, "update-ref", "-m", "joined", "HEAD", entry)
    name_entry(records, JOINING, None)


def _refuse_changed(records: Path, changed: Mapping[str, tuple[str | None, str | None]]) -> None:
    """Raises Trouble where a file is neither as it was nor as it is to be."""
    there: Collection[str] = [path for path in changed if os.path.lexists(records / path)]
    now = hashes_of(records, there)
    for path, (old, new) in changed.items():
        if path in now and now[path] not in (old, new):
            way_out = say("Move it elsewhere, run this again, and put your change in after that")
            raise Trouble(say("{path} was changed while records were being joined", path=quoted(path)), way_out)


def join_texts(before: bytes, here: bytes, there: bytes) -> bytes | None:
    """Three states of a text joined line by line; None where both sides changed the same lines. Raises GitTrouble."""
    with tempfile.TemporaryDirectory() as folder:
        for name, content in (("here", here), ("before", before), ("there", there)):
            Path(folder, name).write_bytes(content)
        try:
            return _ask(Path(folder), "merge-file", "-p", "-q", "here", "before", "there")
        except GitTrouble:
            return None

"""A copy of a whole repository at another place, bare: made, sent to, fetched from, and read back to the last byte."""

from __future__ import annotations

from collections.abc import Mapping
from functools import partial
from pathlib import Path

from recordgen.git.run import CARRY, READ, run, text
from recordgen.git.troubles import GitTrouble

# The name by which a repository remembers its copy.
REMOTE_NAME = "backup"
# Beside its main line the copy has one more, of a single file.
MAIN_LINE = "refs/heads/records"
SIDE_LINE = "refs/heads/keys"
# Our names for where the lines of the copy stand, and for the side line when both last held the same.
THERE = {MAIN_LINE: "refs/recordgen/there/records", SIDE_LINE: "refs/recordgen/there/keys"}
MET_SIDE = "refs/recordgen/met/keys"

_ask = partial(run, purpose=READ)
_carry = partial(run, purpose=CARRY)


def begin_copy(folder: Path) -> None:
    """A new bare repository in a folder that is there and empty. Raises GitTrouble."""
    _carry(folder, "init", "--bare", "--quiet", "--template=", f"--initial-branch={MAIN_LINE.rpartition('/')[2]}")


def is_bare(folder: Path) -> bool:
    """Tell whether a folder is itself a bare repository."""
    try:
        told = text(_ask(folder, "rev-parse", "--is-bare-repository", "--absolute-git-dir")).split("\n")
    except GitTrouble:
        return False
    return told[0] == "true" and Path(told[1]).resolve() == folder.resolve()


def last_copy_address(records: Path) -> str | None:
    """The address of the copy that was used last; None where there is none."""
    try:
        return text(_ask(records, "config", "--local", "--get", f"remote.{REMOTE_NAME}.url")).strip() or None
    except GitTrouble:
        return None


def remember_copy_address(records: Path, address: str) -> None:
    """Remember the address of a copy, in place of an earlier one. Raises GitTrouble."""
    _carry(records, "config", "--local", f"remote.{REMOTE_NAME}.url", address)


def lines_of(folder: Path, address: str) -> dict[str, str]:
    """The entry at which each branch of a copy stands, by its full name. Raises GitTrouble."""
    told = text(_carry(folder, "ls-remote", "--heads", "--", address))
    return {name: entry for entry, _, name in (line.partition("\t") for line in told.splitlines())}


def fetch_lines(records: Path, address: str) -> dict[str, str]:
    """Bring all that the lines of a copy hold, without changing anything but names of ours; their entries by line.

    Raises GitTrouble.
    """
    standing = {line: entry for line, entry in lines_of(records, address).items() if line in THERE}
    if standing:
        named = [f"+{line}:{THERE[line]}" for line in standing]
        _carry(records, "fetch", "--quiet", "--no-tags", "--no-write-fetch-head", "--", address, *named)
    return standing


def send_lines(records: Path, address: str, lines: Mapping[str, str]) -> None:
    """Send entries to lines of a copy, all or none, and only forward. Raises GitTrouble.

    lines: our entry by the copy's name.
    """
    named = [f"{entry}:{line}" for line, entry in lines.items()]
    _carry(records, "push", "--quiet", "--atomic", "--", address, *named)


def entry_of(folder: Path, name: str) -> str | None:
    """The entry that a name stands for; None where there is none."""
    try:
        return text(_ask(folder, "rev-parse", "--quiet", "--verify", f"{name}^{{commit}}")).strip()
    except GitTrouble:
        return None


def is_before(records: Path, one: str, other: str) -> bool:
    """Tell whether an entry is the other or led to it."""
    try:
        _ask(records, "merge-base", "--is-ancestor", one, other)
    except GitTrouble:
        return False
    return True


def common_entry(records: Path, one: str, other: str) -> str | None:
    """The last entry that led to both; None where they have nothing in common."""
    try:
        return text(_ask(records, "merge-base", one, other)).strip()
    except GitTrouble:
        return None


def entries_between(records: Path, one: str | None, other: str) -> list[str]:
    """The first lines of the entries that led to the other and not to the one, oldest first. Raises GitTrouble.

    one: None where all are meant.
    """
    span = f"{one}..{other}" if one else other
    told = text(_ask(records, "log", "--no-merges", "--reverse", "--format=%s", span, "--"))
    return told.splitlines()


def name_entry(records: Path, name: str, entry: str | None) -> None:
    """Give an entry a name of ours, or take the name away. Raises GitTrouble."""
    _carry(records, "update-ref", *([name, entry] if entry else ["-d", name]))


def entry_of_file(records: Path, name: str, content: bytes, before: str | None) -> str:
    """A new entry that holds one file, beside the history. before: the entry it follows. Raises GitTrouble."""
    blob = text(_carry(records, "hash-object", "-w", "--stdin", given=content)).strip()
    tree = text(_carry(records, "mktree", given=f"100644 blob {blob}\t{name}\n".encode())).strip()
    nobody = {
        f"GIT_{role}_{what}": value
        for role in ("AUTHOR", "COMMITTER")
        for what, value in (("NAME", "recordgen"), ("EMAIL", "recordgen@localhost"))
    }
    after = ["-p", before] if before else []
    return text(_carry(records, "commit-tree", "-m", name, *after, tree, more=nobody)).strip()


def file_in(folder: Path, entry: str, name: str) -> bytes:
    """The bytes of a file in an entry. Raises GitTrouble."""
    return _ask(folder, "cat-file", "blob", f"{entry}:{name}")


def clone_and_check(address: str, room: Path) -> Path:
    """All of a copy, read again from its place into a folder of its own, every byte held against its name.

    room: a folder to work in. Raises GitTrouble where anything is missing or damaged.
    """
    folder = room / "read-back"
    _carry(room, "clone", "--quiet", "--mirror", "--no-local", "--template=", "--", address, str(folder))
    _carry(folder, "fsck", "--full", "--strict", "--no-dangling", "--no-progress")
    return folder


def clone_copy(address: str, folder: Path) -> None:
    """New records out of a copy, in a folder that is not there yet; nothing in them is run. Raises GitTrouble."""
    branch = MAIN_LINE.rpartition("/")[2]
    words = ("--quiet", "--no-local", "--no-tags", f"--origin={REMOTE_NAME}", f"--branch={branch}")
    _carry(folder.parent, "clone", *words, "--", address, str(folder))

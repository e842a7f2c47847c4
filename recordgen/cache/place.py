"""The folder of the cache: private, marked as ours, measured, pruned to a size and cleared of what is ours alone."""

from __future__ import annotations

import os
import re
import stat
from collections.abc import Iterator
from contextlib import suppress
from dataclasses import dataclass
from pathlib import Path

from platformdirs import user_cache_path

from recordgen.files import clear_part, is_part, write_new
from recordgen.sentences import say

# Tells programs that make backups that nothing here need be kept, and us that the folder is ours.
# Source: Cache Directory Tagging Specification, version 0.6.
TAG = "CACHEDIR.TAG"
SIGNATURE = "Signature: 8a477f597d28d172789f06886806bc55"
MARK = f"{SIGNATURE}\n# Made by recordgen, and made again when it is needed: all of it may be deleted at any time.\n"
# So much is kept, in bytes. Judgement: some ten practices of 300 horses, less than a film.
MOST_BYTES = 500_000_000
# Pruning goes on to this share, so that it is not needed again at once.
PRUNED_TO = 0.8
# Where an entry lies, from the folder on.
_ENTRY = re.compile(r"[a-z-]+/[0-9a-f]{2}/[0-9a-f]{64}")


def place_of_user() -> Path:
    """The place where things are kept on this computer: a folder of this user's alone, outside every repository."""
    return Path(os.environ.get("RECORDGEN_CACHE") or user_cache_path("recordgen") / "results")


def why_unusable(folder: Path) -> str:
    """Tell why a folder cannot be used, a sentence without a full stop; empty where it can, which makes and closes it.

    One with anything in it and without our mark is somebody's, and stays as it is.
    """
    try:
        if not folder.exists():
            folder.mkdir(mode=0o700, parents=True)
        if not is_marked(folder):
            if any(not is_part(path.name) for path in folder.iterdir()):
                return say("{folder} is no folder of recordgen's", folder=folder)
            write_new(folder / TAG, MARK, mode=0o600)
        return _closed_to_others(folder)
    except OSError as fault:
        return say("{folder} cannot be used: {fault}", folder=folder, fault=fault.strerror or fault)


def is_marked(folder: Path) -> bool:
    """Tell whether a folder carries our mark."""
    try:
        return (folder / TAG).read_bytes() == MARK.encode()
    except OSError:
        return False


def _closed_to_others(folder: Path) -> str:
    """Closes a folder to everybody else; why it is not used, where it is another user's. Raises OSError."""
    found = folder.stat()
    if hasattr(os, "getuid") and found.st_uid != os.getuid():
        return say("{folder} belongs to another user", folder=folder)
    if os.name == "posix" and stat.S_IMODE(found.st_mode) != 0o700:
        folder.chmod(0o700)
    return ""


@dataclass(frozen=True)
class Stored:
    """One file of the cache. size: in bytes. used: when it was of use last, in seconds."""

    path: Path
    size: int
    used: float


def stored(folder: Path) -> Iterator[Stored]:
    """The entries in a folder, and the parts of some that were never finished; nothing of anybody else's."""
    for at, _, names in os.walk(folder):
        for name in names:
            path = Path(at, name)
            if _is_ours(path.relative_to(folder)):
                with suppress(OSError):
                    found = path.stat()
                    yield Stored(path, found.st_size, found.st_mtime)


def _is_ours(path: Path) -> bool:
    whole = path.with_name(path.name[1:65]) if is_part(path.name) else path
    return bool(_ENTRY.fullmatch(whole.as_posix()))


def prune(folder: Path, most: int = MOST_BYTES) -> int:
    """Take out what was of no use for longest, where there is more than `most` bytes; how many files went.

    Parts that killed runs left go in any case.
    """
    found = list(stored(folder)) if is_marked(folder) else []
    entries = [one for one in found if not is_part(one.path.name)]
    gone = sum(clear_part(one.path) for one in found if is_part(one.path.name))
    left = sum(one.size for one in entries)
    aim = left if left <= most else int(most * PRUNED_TO)
    for one in sorted(entries, key=lambda entry: entry.used):
        if left <= aim:
            break
        gone += _taken_out(one.path)
        left -= one.size
    return gone


def clear(folder: Path) -> int:
    """Take out all entries; how many files went. Folders that are empty then go too, and nothing of anybody else's."""
    found = list(stored(folder)) if is_marked(folder) else []
    gone = sum(clear_part(one.path) if is_part(one.path.name) else _taken_out(one.path) for one in found)
    for at, folders, _ in os.walk(folder, topdown=False) if found else ():
        for name in folders:
            with suppress(OSError):
                Path(at, name).rmdir()
    return gone


def _taken_out(path: Path) -> bool:
    with suppress(OSError):
        path.unlink()
        return True
    return False

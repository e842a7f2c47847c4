"""Entries: bytes kept under a kind and a key, each in a file that tells whether it is whole and which one it is."""

from __future__ import annotations

import hashlib
import os
import re
import time
from contextlib import suppress
from functools import cached_property
from pathlib import Path

from recordgen.cache.place import place_of_user, why_unusable
from recordgen.files import write_whole
from recordgen.sentences import say

# The first line of each file; another number for another form.
MAGIC = b"recordgen cache 1"
# What was of use within a day is not marked as used again.
DAY_S = 86_400
_KEY = re.compile(r"[0-9a-f]{64}")


class Cache:
    """A folder of entries. Several processes may share it, and it may be deleted at any time.

    An entry that is missing, cut short, changed, swapped with another or of another form is no entry, and a folder that
    cannot be used holds none: whoever asked makes the result again.
    """

    def __init__(self, folder: Path | None) -> None:
        """folder: made when something is first kept; None for nowhere."""
        self.folder = folder

    @cached_property
    def why_not(self) -> str:
        """The reason why nothing is kept, as a sentence without a full stop; empty where all is well."""
        if self.folder is None:
            return say("nothing is kept")
        return why_unusable(self.folder)

    def get(self, kind: str, key: str) -> bytes | None:
        """The content kept under a key, or None.

        kind: what it is, such as pictures. key: SHA-256 of all that it was made from, in hexadecimal digits.
        """
        if self.folder is None or self.why_not:
            return None
        file = _file(self.folder, kind, key)
        try:
            content = _content(file.read_bytes(), kind, key)
        except OSError:
            return None
        if content is not None:
            _mark_used(file)
        return content

    def put(self, kind: str, key: str, content: bytes) -> None:
        """Keep content under a key, in the place of what was there; a folder that takes nothing costs only time."""
        if self.folder is None or self.why_not:
            return
        file = _file(self.folder, kind, key)
        with suppress(OSError):
            for parent in (self.folder, file.parent.parent, file.parent):
                parent.mkdir(mode=0o700, exist_ok=True)
            write_whole(file, _head(kind, key, content) + content, mode=0o600, lasting=False)


def user_cache() -> Cache:
    """The cache of this user on this computer."""
    return Cache(place_of_user())


def _file(folder: Path, kind: str, key: str) -> Path:
    """Spread over folders, as some systems are slow with many files in one. Raises ValueError for what is no key."""
    if not _KEY.fullmatch(key):
        raise ValueError(f"{key!r} is no SHA-256")
    return folder / kind / key[:2] / key


def _head(kind: str, key: str, content: bytes) -> bytes:
    """The lines before the content: its form, its kind, its key, and the hash of all that together."""
    named = b"%s\n%s\n%s\n" % (MAGIC, kind.encode(), key.encode())
    return b"%s%s\n" % (named, hashlib.sha256(named + content).hexdigest().encode())


def _content(kept: bytes, kind: str, key: str) -> bytes | None:
    """The content of a file, or None where it is not what was kept under this key."""
    content = kept[len(_head(kind, key, b"")) :]
    return content if kept == _head(kind, key, content) + content else None


def _mark_used(file: Path) -> None:
    """Marks an entry as of use lately: such are pruned last."""
    with suppress(OSError):
        if time.time() - file.stat().st_mtime > DAY_S:
            os.utime(file)

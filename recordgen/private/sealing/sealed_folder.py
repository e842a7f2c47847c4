"""The folder a sealed site is written to: empty or its own, each file whole, nothing rewritten that is the same."""

from __future__ import annotations

import json
import re
from collections.abc import Collection, Iterable
from pathlib import Path

from recordgen.files import is_part, list_files, write_whole
from recordgen.folders import refuse_strangers
from recordgen.private.crypto.blobs import MAGIC
from recordgen.private.crypto.key_ring import b64u
from recordgen.problems import Trouble
from recordgen.sentences import say

RING = "keys.json"
MANIFEST = "manifest.bin"
BLOBS = "d"
BLOB_FILE = re.compile(r"d/[a-z2-7]{26}\.bin")
_WAY_OUT = say("Name an empty folder for the sealed site, or take them away")


def _is_part(name: str) -> bool:
    """Tell whether a write that was cut short left a file."""
    folder, _, file = name.rpartition("/")
    return folder in ("", BLOBS) and is_part(file)


def blob_file(name: str) -> str:
    """The place where a blob lies in the folder."""
    return f"{BLOBS}/{name}.bin"


class Outlet:
    """Writes into the folder, and keeps count of what it changed."""

    def __init__(self, folder: Path) -> None:
        """A folder, made where it is missing."""
        self.folder = folder
        self.written: dict[str, int] = {}
        self.deleted: list[str] = []

    def refuse_foreign(self, site_id: bytes, fixed: Collection[str]) -> None:
        """Raises Trouble, naming them, for files that this site did not write, and for another stable's site.

        fixed: the names beside the blobs; they count as its own beside the key ring of this site alone.
        """
        found = self.files()
        own = self._is_own(site_id) if RING in found else False
        foreign = [name for name in found if not (own and name in fixed) and not self._is_ours_by_form(name)]
        refuse_strangers(foreign, str(self.folder), _WAY_OUT)

    def files(self) -> list[str]:
        """The paths of all files in the folder but git's own, in order."""
        return [name for name in list_files(self.folder) if name.split("/")[0] != ".git"]

    def _is_own(self, site_id: bytes) -> bool:
        try:
            site = json.loads((self.folder / RING).read_bytes()).get("site")
        except (OSError, ValueError, AttributeError):
            return False
        if isinstance(site, str) and site != b64u(site_id):
            message = say(
                "{folder} holds the sealed site of another stable, or of keys that were lost", folder=self.folder
            )
            raise Trouble(message, say("Name a folder of its own, or empty this one"))
        return site is not None

    def _is_ours_by_form(self, name: str) -> bool:
        if _is_part(name):
            return True
        path = self.folder / name
        return bool(BLOB_FILE.fullmatch(name)) and not path.is_symlink() and path.read_bytes().startswith(MAGIC)

    def put(self, name: str, content: bytes) -> None:
        """Write one file so that whoever reads it at that moment sees all of it or what was before."""
        path = self.folder / name
        if path.is_file() and path.stat().st_size == len(content) and path.read_bytes() == content:
            return
        path.parent.mkdir(parents=True, exist_ok=True)
        write_whole(path, content, mode=0o644, lasting=False)
        self.written[name] = len(content)

    def keep_only(self, kept: Iterable[str]) -> None:
        """Take away the blobs and left-over parts that are not among `kept`."""
        wanted = set(kept)
        for name in self.files():
            if name not in wanted and (BLOB_FILE.fullmatch(name) or _is_part(name)):
                (self.folder / name).unlink()
                self.deleted.append(name)

"""Templates as the engine compiled them, kept in memory and on this computer: compiling takes longer than filling."""

from __future__ import annotations

from pathlib import Path

import jinja2
from jinja2 import BytecodeCache
from jinja2.bccache import Bucket

from recordgen.pictures.kept import keep
from recordgen.site.ways_here import picture_folder


class Compiled(BytecodeCache):
    """Compiled templates, by their place. What was compiled from another source, or is damaged, is compiled anew.

    A folder that cannot be written to only costs the time of compiling.
    """

    def __init__(self) -> None:
        self._known: dict[str, bytes] = {}

    def load_bytecode(self, bucket: Bucket) -> None:
        """Give back what was compiled before, from memory or from the folder."""
        kept = self._known.get(bucket.key) or self._read(bucket.key)
        if kept:
            bucket.bytecode_from_string(kept)

    def dump_bytecode(self, bucket: Bucket) -> None:
        """Keep what was compiled."""
        self._known[bucket.key] = bucket.bytecode_to_string()
        keep(self._file(bucket.key), self._known[bucket.key])

    def _read(self, key: str) -> bytes:
        try:
            self._known[key] = self._file(key).read_bytes()
        except OSError:
            return b""
        return self._known[key]

    @staticmethod
    def _file(key: str) -> Path:
        # Another version of the engine may compile to something else.
        return picture_folder() / f"templates-{jinja2.__version__}" / f"{key}.bin"


COMPILED = Compiled()

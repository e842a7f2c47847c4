"""The answer of a command, remembered for as long as nothing changes that it was made from."""

from __future__ import annotations

import json
import os
from collections.abc import Sequence
from pathlib import Path
from typing import Any

from recordgen.cache.entries import Cache
from recordgen.cache.inputs import content_digest, files_in, stat_digest, templates_digest, touched_digest
from recordgen.cache.spelling import key_of
from recordgen.cache.values import as_json, from_json
from recordgen.cache.versions import program_version
from recordgen.git.state import repository_state
from recordgen.problems import Place, Problem

KIND = "answers"
# What an answer may hold beside plain values.
CLASSES = {one.__name__: one for one in (Problem, Place)}
# The folders of the records that no command reads: git's own, and the sites built there.
NOT_READ = (".git", "sites")


class Remembered:
    """The answer of one command with its options, by all that it reads: every file of the records, git, the program.

    What changed while the command ran, and be it back again, is noticed at its end: then nothing is remembered.
    """

    def __init__(self, cache: Cache, records: Path, *asked: object) -> None:
        """asked: the command, and all that its answer goes by beside the records."""
        self.cache, self.records, self.asked = cache, records, asked
        # While git runs a hook, what is about to be kept is looked at too.
        self.off = cache.folder is None or bool(cache.why_not) or "GIT_INDEX_FILE" in os.environ
        self.touched = "" if self.off else self._touched()
        self.key = "" if self.off else self._now()

    def answer(self) -> Any:
        """The values kept when nothing was otherwise than now; None where there are none."""
        found = None if self.off else self.cache.get(KIND, self.key)
        return None if found is None else from_json(json.loads(found), CLASSES)

    def keep(self, answer: object) -> None:
        """Keep plain values, tuples and mappings of them, days, sentences and problems."""
        if not self.off and (self._now(), self._touched()) == (self.key, self.touched):
            self.cache.put(KIND, self.key, json.dumps(as_json(answer, CLASSES)).encode())

    def _touched(self) -> str:
        return touched_digest(Path(os.path.realpath(self.records)), self._not_read())

    def _not_read(self) -> list[Path]:
        return [Path(os.path.realpath(self.records), name) for name in NOT_READ]

    def _now(self) -> str:
        records = os.path.realpath(self.records)
        held = content_digest(Path(records), self._not_read())
        program = (program_version(), templates_digest())
        return key_of(str(self.records), records, held, repository_state(self.records), program, self.asked)


def outputs_digest(folders: Sequence[Path]) -> str:
    """The files of some folders, so that one that was edited, taken out or put in shows."""
    return stat_digest(files_in(*folders))

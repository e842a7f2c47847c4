"""The keys of one practice on their way to a copy and back, sealed under words that are asked for once a computer."""

from __future__ import annotations

import base64
import hashlib
import json
from collections.abc import Callable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Self

from pydantic import BaseModel, ConfigDict, ValidationError

from recordgen.files import write_whole, writing
from recordgen.private.crypto.primitives import NotOpened
from recordgen.private.keystore.backup import local_keys, put_back
from recordgen.private.keystore.checksum import verified_content, with_checksum
from recordgen.private.keystore.location import ENDING, private_folder, state_file
from recordgen.private.keystore.sealed_copy import KeyBackup, SealingKey
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.problems import Trouble
from recordgen.records.load.folders import TAKEN
from recordgen.sentences import say

# The file in the copy that holds the sealed keys.
FILE = "keys"
_ENDING = ".copy"

# Asks for the words of a copy; empty where nobody knows them now.
AskWords = Callable[[], str]
# Which of two states of a stable's keys stays, by its file, our readers and theirs: True for the one here, None while
# nobody said.
AskKeys = Callable[[str, str, str], bool | None]


class _Memory(BaseModel):
    """The sealing key of a copy, and what was the same here and there when both met last, by the names of files."""

    model_config = ConfigDict(extra="forbid")

    v: int = 1
    iterations: int
    salt: str
    key: str
    met: dict[str, str] = {}


@dataclass
class CopiedKeys:
    """The knowledge of this computer about the keys in a copy. sealing: None where the words were never typed here."""

    records: Path
    sealing: SealingKey | None = None
    met: dict[str, str] = field(default_factory=dict)

    @classmethod
    def read(cls, records: Path) -> Self:
        """Read what this computer remembers; nothing of it where the memory is damaged."""
        file = state_file(records, TAKEN, _ENDING)
        try:
            memory = _Memory.model_validate_json((verified_content(file.read_bytes()) or b"") if file.exists() else b"")
        except ValidationError:
            return cls(records)
        key = SealingKey(memory.iterations, base64.b64decode(memory.salt), base64.b64decode(memory.key))
        return cls(records, key, memory.met)

    @property
    def here(self) -> dict[str, str]:
        """The practice's keys on this computer, by the names of their files. Raises Trouble where any are damaged."""
        file = state_file(self.records, TAKEN)
        return local_keys(file.name.removeprefix(TAKEN).removesuffix(ENDING))

    def is_as_met(self) -> bool:
        """Tell whether nothing changed here since both met."""
        return _sums(self.here) == self.met

    def seal(self) -> bytes:
        """The keys that are here, sealed for the copy."""
        assert self.sealing is not None
        return self.sealing.seal(json.dumps(self.here))

    def open_keys(self, raw: bytes, ask: AskWords) -> dict[str, str] | None:
        """The keys in a copy; None where nobody gave the words. Raises Trouble where it is damaged, and NotOpened."""
        copy = KeyBackup.read(raw)
        if copy is None:
            raise Trouble(
                say("the keys in the copy are damaged"), say("The records are whole; make the copy of keys anew")
            )
        if self.sealing is None or not self.sealing.is_of(copy):
            words = ask()
            if not words.strip():
                return None
            self.sealing = SealingKey.of(copy, words)
        try:
            text = self.sealing.open_text(copy)
        except NotOpened:
            self.sealing = None
            raise NotOpened(
                say("these words do not open the keys in the copy"),
                say("Look for a word left out or spelled otherwise"),
            ) from None
        return {Path(name).name: content for name, content in json.loads(text).items()}

    def take_in(self, there: Mapping[str, str], ask: AskKeys) -> tuple[str, ...]:
        """Take in the keys of a copy: those that are missing or older here. The files that changed. Raises Trouble."""
        here = self.here
        changed: list[str] = []
        for name in sorted(there):
            mine = here.get(name)
            if mine is None or not name.endswith(ENDING):
                changed += put_back({name: there[name]}).put_back
            elif mine != there[name] and self._is_theirs(name, mine, there[name], ask):
                _newer(there[name], mine, private_folder() / name).save()
                changed.append(name)
        return tuple(changed)

    def _is_theirs(self, name: str, mine: str, other: str, ask: AskKeys) -> bool:
        """Tell whether the state of the copy takes the place of ours: where it alone changed, or somebody says so."""
        met = self.met.get(name)
        if _sum(mine) == met:
            return True
        if _sum(other) == met:
            return False
        return ask(name.removesuffix(ENDING), _readers(mine), _readers(other)) is False

    def keep(self) -> None:
        """Remember the sealing key, and that both sides are the same now. Raises Trouble."""
        self.keep_met(self.here)

    def keep_met(self, states: Mapping[str, str]) -> None:
        """Remember the sealing key, and what the copy holds. Raises Trouble."""
        if self.sealing is None:
            return
        self.met = _sums(states)
        memory = _Memory(
            iterations=self.sealing.iterations,
            salt=base64.b64encode(self.sealing.salt).decode(),
            key=base64.b64encode(self.sealing.key).decode(),
            met=self.met,
        )
        file = state_file(self.records, TAKEN, _ENDING)
        with writing(file):
            write_whole(file, with_checksum((memory.model_dump_json(indent=1) + "\n").encode()), mode=0o600)


def _newer(theirs: str, mine: str, file: Path) -> SiteKeys:
    """Their keys, counted on from whichever side published last."""
    state = SiteKeys.of(theirs.encode(), file)
    ahead = max(state.serial, SiteKeys.of(mine.encode(), file).serial)
    if ahead > state.serial:
        state.serial, state.digest = ahead, ""
    return state


def _readers(text: str) -> str:
    names = [reader.name for reader in SiteKeys.of(text.encode(), Path(FILE)).readers]
    return ", ".join(names) or say("nobody")


def _sums(states: Mapping[str, str]) -> dict[str, str]:
    return {name: _sum(text) for name, text in states.items()}


def _sum(text: str) -> str:
    return hashlib.sha256(text.encode()).hexdigest()

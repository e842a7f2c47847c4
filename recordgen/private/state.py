"""What the publisher alone keeps of one sealed site: its keys, its slots, and what was published last."""

from __future__ import annotations

import secrets
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, PrivateAttr, ValidationError

from recordgen.files import write_whole
from recordgen.private.frames import ReaderKey
from recordgen.private.keys import ITERATIONS, KEY_BYTES, Keys, keys_of
from recordgen.private.moved_keys import refuse_left_behind
from recordgen.private.ring import Slot, link_slot, ring_file, words_slot
from recordgen.private.whereabouts import state_file
from recordgen.private.words import six_words
from recordgen.problems import Trouble

SITE_ID_BYTES = 16
# This edition and the one before: a network of caches may serve the last manifest for minutes.
EDITIONS_KEPT = 2

SiteId = Annotated[bytes, Field(min_length=SITE_ID_BYTES, max_length=SITE_ID_BYTES)]
Master = Annotated[bytes, Field(min_length=KEY_BYTES, max_length=KEY_BYTES, repr=False)]


class Shown(BaseModel):
    """A page of the last edition: its title, and the SHA-256 of its bytes."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    title: str
    digest: str


class KeysMissing(Trouble):
    """A stable that has no keys on this computer."""


class State(BaseModel):
    """The private side of one sealed site. Nothing of it is published but what `ring` and `sealing` write.

    site_id: for life. master: until the next rotation. serial, day, kid, digest: of the last edition. notes: whom a
    slot was made for, by its id. editions: the blobs of the last editions with their SHA-256, newest first. fixed: the
    other published files with theirs. pages: of the last edition, by path.
    """

    model_config = ConfigDict(extra="forbid", ser_json_bytes="base64", val_json_bytes="base64")

    v: Literal[1] = 1
    site_id: SiteId
    master: Master
    serial: int = 0
    day: str = ""
    kid: str = ""
    digest: str = ""
    slots: list[Slot] = []
    notes: dict[str, str] = {}
    editions: list[dict[str, str]] = []
    fixed: dict[str, str] = {}
    pages: dict[str, Shown] = {}
    _file: Path = PrivateAttr()

    @classmethod
    def begin(cls, records: Path, slug: str) -> State:
        """New keys for a stable, not saved yet, without a slot. Raises Trouble where it has keys."""
        file = state_file(records, slug)
        if file.exists():
            raise Trouble(f"{slug} has keys already", "Publish with them, or rotate them")
        return cls.new(file)

    @classmethod
    def new(cls, file: Path) -> State:
        """New keys that `save` puts into a file."""
        state = cls(site_id=secrets.token_bytes(SITE_ID_BYTES), master=secrets.token_bytes(KEY_BYTES))
        state._file = file
        return state

    @classmethod
    def load(cls, records: Path, slug: str) -> State:
        """The keys of a stable. Raises KeysMissing where there are none, and Trouble where the file cannot be read."""
        file = state_file(records, slug)
        if not file.exists():
            refuse_left_behind(records, slug)
            message = f"{slug} was not published from this computer yet"
            way_out = (
                f"Publish it: recordgen publish {slug}. If it was published from another one, bring its keys first: "
                "recordgen readers --restore FILE"
            )
            raise KeysMissing(message, way_out)
        return cls.read(file)

    @classmethod
    def read(cls, file: Path) -> State:
        """The keys in a file. Raises Trouble where it cannot be read."""
        return cls.of(file.read_bytes(), file)

    @classmethod
    def of(cls, text: bytes, file: Path) -> State:
        """The keys in a text that belongs into a file. Raises Trouble where it cannot be read."""
        try:
            state = cls.model_validate_json(text)
        except ValidationError:
            raise Trouble(
                f"{file} is damaged or of a newer recordgen", "Bring it back from the copy you kept"
            ) from None
        state._file = file
        return state

    def save(self) -> None:
        """Keep all of it, whole or not at all, for this user's eyes alone. Raises OSError."""
        write_whole(self._file, self.model_dump_json(indent=1) + "\n", mode=0o600)

    @property
    def file(self) -> Path:
        """Where it is kept."""
        return self._file

    @property
    def keys(self) -> Keys:
        """The keys of today."""
        return keys_of(self.master, self.site_id)

    @property
    def reader(self) -> ReaderKey:
        """What readers get to hold once their words fit."""
        return ReaderKey(self.keys.enc, self.keys.kid, self.site_id)

    @property
    def ring(self) -> bytes:
        """The text of `keys.json`."""
        return ring_file(self.reader, self.slots)

    def add_words(self, note: str = "", words: str | None = None, iterations: int = ITERATIONS) -> tuple[str, str]:
        """A new slot for words, drawn unless given: the slot's id and the words, which are kept nowhere."""
        drawn = words or six_words()
        return self._added(words_slot(self.reader, drawn, iterations), note), drawn

    def add_link(self, note: str = "") -> tuple[str, str]:
        """A new slot for a link: the slot's id and the secret for `#k=`, which is kept nowhere."""
        slot, secret = link_slot(self.reader)
        return self._added(slot, note), secret

    def _added(self, slot: Slot, note: str) -> str:
        self.slots.append(slot)
        self.notes[slot.id] = note
        return slot.id

    def drop(self, slot_id: str) -> None:
        """Take a slot out of the ring; whoever kept the old ring can still open with it, until the next rotation.

        Raises Trouble for an unknown slot and for the last one.
        """
        left = [slot for slot in self.slots if slot.id != slot_id]
        if len(left) == len(self.slots):
            raise Trouble(f"there is no way in with the id {slot_id}", f"There are: {', '.join(self.notes) or 'none'}")
        if not left:
            raise Trouble("this is the last way in; without it nobody could read the site", "Add another one first")
        self.slots = left
        self.notes.pop(slot_id, None)

    def rotate(self, iterations: int = ITERATIONS) -> str:
        """New keys and new words, which are kept nowhere: every other way in and every blob published so far is dead.

        Takes effect for readers with the next publishing.
        """
        self.master = secrets.token_bytes(KEY_BYTES)
        self.slots, self.notes = [], {}
        return self.add_words(iterations=iterations)[1]

"""The publisher's own keeping of one sealed site: its keys, its readers, and what was published last."""

from __future__ import annotations

import secrets
from pathlib import Path
from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field, PrivateAttr, ValidationError

from recordgen.files import write_whole, writing
from recordgen.private.crypto.blobs import ReaderKey
from recordgen.private.crypto.key_ring import Slot, link_slot, ring_file, words_slot
from recordgen.private.crypto.passphrases import ITERATIONS, six_words
from recordgen.private.crypto.primitives import KEY_BYTES, Keys, keys_of
from recordgen.private.keystore.checksum import verified_content, with_checksum
from recordgen.private.keystore.location import state_file
from recordgen.private.keystore.moved_keys import refuse_left_behind
from recordgen.private.keystore.proof import proof_of
from recordgen.problems import Trouble
from recordgen.sentences import say

SITE_ID_BYTES = 16
# This edition and the one before: a network of caches may serve the last manifest for minutes.
EDITIONS_KEPT = 2

RESTORE = say("Bring them back from your copy: recordgen readers --restore FILE")
BEGIN_ANEW = say("empty the place that is served, publish, and give every reader new words")

SiteId = Annotated[bytes, Field(min_length=SITE_ID_BYTES, max_length=SITE_ID_BYTES)]
Master = Annotated[bytes, Field(min_length=KEY_BYTES, max_length=KEY_BYTES, repr=False)]


class SeenEdition(BaseModel):
    """A page of the last edition: its title, and the SHA-256 of its bytes."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    title: str
    digest: str


class Reader(BaseModel):
    """Somebody who can open the site: a name, the public slot made for it, and the proof that the slot opens."""

    model_config = ConfigDict(extra="forbid", frozen=True, ser_json_bytes="base64", val_json_bytes="base64")

    name: str
    slot: Slot
    proof: bytes = Field(repr=False)

    @property
    def by(self) -> Literal["words", "link"]:
        """The key that opens it."""
        return "link" if self.slot.kind == "link" else "words"


class KeysMissing(Trouble):
    """A stable that has no keys on this computer."""


class KeysDamaged(Trouble):
    """Kept keys that are not, bit for bit, what was kept."""


class SiteKeys(BaseModel):
    """The private side of one sealed site. Nothing of it is published but what `ring` and `sealing` write.

    site_id, names: for life; by names the horses' pages are named, so that a bookmark outlives new words. master: until
    the next rotation. serial, day, kid, digest: of the last edition. readers: oldest first. editions: the blobs of the
    last editions with their SHA-256, newest first. fixed: the other published files with theirs. pages: of the last
    edition, by path.
    """

    model_config = ConfigDict(extra="forbid", ser_json_bytes="base64", val_json_bytes="base64")

    v: Literal[1] = 1
    site_id: SiteId
    names: Master
    master: Master
    serial: int = 0
    day: str = ""
    kid: str = ""
    digest: str = ""
    readers: list[Reader] = []
    editions: list[dict[str, str]] = []
    fixed: dict[str, str] = {}
    pages: dict[str, SeenEdition] = {}
    _file: Path = PrivateAttr()

    @classmethod
    def begin(cls, records: Path, slug: str) -> SiteKeys:
        """New keys for a stable, not saved yet, without a slot. Raises Trouble where it has keys."""
        file = state_file(records, slug)
        if file.exists():
            raise Trouble(say("{slug} has keys already", slug=slug), say("Publish with them, or rotate them"))
        return cls.new(file)

    @classmethod
    def new(cls, file: Path) -> SiteKeys:
        """New keys that `save` puts into a file."""
        names, master = secrets.token_bytes(KEY_BYTES), secrets.token_bytes(KEY_BYTES)
        state = cls(site_id=secrets.token_bytes(SITE_ID_BYTES), names=names, master=master)
        state._file = file
        return state

    @classmethod
    def load(cls, records: Path, slug: str) -> SiteKeys:
        """The keys of a stable. Raises KeysMissing, KeysDamaged, and Trouble for those of another version."""
        file = state_file(records, slug)
        if not file.exists():
            refuse_left_behind(records, slug)
            message = say("{slug} was not published from this computer yet", slug=slug)
            way_out = say(
                "Publish it: recordgen publish {slug}. If it was published from another one, bring its "
                "keys first: recordgen readers --restore FILE",
                slug=slug,
            )
            raise KeysMissing(message, way_out)
        return cls.read(file)

    @classmethod
    def read(cls, file: Path) -> SiteKeys:
        """The keys in a file. Raises KeysDamaged, and Trouble for those of another version."""
        return cls.of(file.read_bytes(), file)

    @classmethod
    def of(cls, kept: bytes, file: Path) -> SiteKeys:
        """The keys in bytes that belong into a file. Raises KeysDamaged, and Trouble for those of another version."""
        content = verified_content(kept)
        if content is None:
            way_out = say(
                "{restore}. Without a copy, move that file away, {begin_anew}", restore=RESTORE, begin_anew=BEGIN_ANEW
            )
            raise KeysDamaged(say("the keys in {file} are damaged, so nothing is done with them", file=file), way_out)
        try:
            state = cls.model_validate_json(content)
        except ValidationError:
            raise Trouble(
                say("the keys in {file} are of another version of recordgen", file=file), say("Use that one")
            ) from None
        state._file = file
        return state

    @property
    def file_bytes(self) -> bytes:
        """All of it as it is kept, with its checksum."""
        return with_checksum((self.model_dump_json(indent=1) + "\n").encode())

    def save(self) -> None:
        """Keep all of it, whole or not at all, for this user's eyes alone. Raises Trouble."""
        with writing(self._file, say("The keys stay as they were, and words shown just now open nothing")):
            write_whole(self._file, self.file_bytes, mode=0o600)

    @property
    def file(self) -> Path:
        """The place where it is kept."""
        return self._file

    @property
    def keys(self) -> Keys:
        """The keys of today."""
        return keys_of(self.master, self.site_id)

    @property
    def reader_key(self) -> ReaderKey:
        """Contents for readers once their words fit."""
        return ReaderKey(self.keys.enc, self.keys.kid, self.site_id)

    @property
    def ring(self) -> bytes:
        """The text of `keys.json`."""
        return ring_file(self.reader_key, [reader.slot for reader in self.readers])

    def add_words(self, name: str = "", words: str | None = None, iterations: int = ITERATIONS) -> tuple[Reader, str]:
        """A new reader, and the words that open the site, drawn unless given; they are kept nowhere."""
        drawn = words or six_words()
        return self._add_reader(name, *words_slot(self.reader_key, drawn, iterations)), drawn

    def add_link(self, name: str = "") -> tuple[Reader, str]:
        """A new reader, and the secret for `#k=` that opens the site, which is kept nowhere."""
        slot, own_key, secret = link_slot(self.reader_key)
        return self._add_reader(name, slot, own_key), secret

    def _add_reader(self, name: str, slot: Slot, own_key: bytes) -> Reader:
        reader = Reader(name=name, slot=slot, proof=proof_of(self.keys, slot, own_key))
        self.readers.append(reader)
        return reader

    def drop(self, slot_id: str) -> None:
        """Take a reader out; whoever kept the old ring can still open with it, until the next rotation.

        Raises Trouble for an unknown slot and for the last one.
        """
        left = [reader for reader in self.readers if reader.slot.id != slot_id]
        if len(left) == len(self.readers):
            ids = ", ".join(reader.slot.id for reader in self.readers)
            raise Trouble(
                say("there is no way in with the id {slot_id}", slot_id=slot_id),
                say("There are: {ids}", ids=ids or say("none")),
            )
        if not left:
            raise Trouble(
                say("this is the last way in; without it nobody could read the site"), say("Add another one first")
            )
        self.readers = left

    def rotate(self, iterations: int = ITERATIONS) -> list[tuple[Reader, str]]:
        """New keys, and for every reader new words or a new link, kept nowhere; whatever was published so far is dead.

        Takes effect for readers with the next publishing.
        """
        before, self.readers = self.readers, []
        self.master = secrets.token_bytes(KEY_BYTES)
        return [
            self.add_link(reader.name) if reader.by == "link" else self.add_words(reader.name, iterations=iterations)
            for reader in before
        ]

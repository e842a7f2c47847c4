"""Notes of this computer about the publishing of one stable, in the folder of keys."""

from __future__ import annotations

import hashlib
import json
import shutil
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from recordgen.files import write_whole
from recordgen.folders import workroom
from recordgen.private.crypto.key_ring import b64u
from recordgen.private.keystore.checksum import verified_content, with_checksum
from recordgen.private.keystore.location import state_file
from recordgen.private.keystore.lock import alone
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.problems import Trouble
from recordgen.sentences import say

ITSELF = "keys.json"


@dataclass(frozen=True)
class KeyStore:
    """The files of one stable. keys: where its state is kept, there or not yet."""

    records: Path
    slug: str
    keys: Path

    @classmethod
    def of(cls, records: Path, slug: str) -> KeyStore:
        """Those of a stable. Raises Trouble where the folder of keys cannot be used."""
        return cls(records, slug, state_file(records, slug))

    @property
    def last_sealed(self) -> Path:
        """The folder of the last sealed edition that was sent; nothing in it can be read without the words."""
        return self.keys.with_suffix(".sealed")

    @property
    def _last_plain(self) -> Path:
        return self.keys.with_suffix(".plain")

    def state(self) -> SiteKeys:
        """The stable's keys, or new ones that are not kept yet. Raises Trouble where the file cannot be read."""
        begun = self.keys.exists()
        return SiteKeys.load(self.records, self.slug) if begun else SiteKeys.begin(self.records, self.slug)

    def plain_fingerprints(self) -> dict[str, str]:
        """The files that were published unsealed, by path with their SHA-256; none where the last were sealed.

        Raises Trouble where the note of them is damaged.
        """
        if not self._last_plain.exists():
            return {}
        note = verified_content(self._last_plain.read_bytes())
        if note is None:
            message = say(
                "{last_plain}, the note of what was published unsealed, is damaged", last_plain=self._last_plain
            )
            raise Trouble(message, say("Delete it, empty the place that is served, and publish again"))
        found: dict[str, str] = json.loads(note)
        return found

    def keep_plain(self, published: Mapping[str, str]) -> None:
        """Keep what was published unsealed; nothing, once a sealed site took its place."""
        if published:
            write_whole(self._last_plain, with_checksum(json.dumps(published, indent=1).encode()), mode=0o600)
        else:
            self._last_plain.unlink(missing_ok=True)

    def keep_sealed(self, folder: Path) -> None:
        """Keep a sealed edition that was sent, in place of the one before."""
        shutil.rmtree(self.last_sealed, ignore_errors=True)
        shutil.copytree(folder, self.last_sealed)

    def take_blobs(self, out: Path, state: SiteKeys) -> None:
        """Copy the blobs of the last sealed editions into a folder, but for those that are not as they were sent."""
        for name, digest in {name: digest for edition in state.editions for name, digest in edition.items()}.items():
            kept = self.last_sealed / name
            content = kept.read_bytes() if kept.is_file() else b""
            if hashlib.sha256(content).hexdigest() == digest:
                (out / name).parent.mkdir(parents=True, exist_ok=True)
                (out / name).write_bytes(content)

    @contextmanager
    def room(self) -> Iterator[Path]:
        """A folder to work in, for one process at a time; what a killed one left in its own is taken away.

        Raises Trouble where somebody else works on this stable.
        """
        with alone(self.keys), workroom(self.keys.parent) as room:
            yield room


def site_of(state: SiteKeys) -> str:
    """The public id of a stable's sealed site, as its key ring spells it."""
    return b64u(state.site_id)


def paths_of(state: SiteKeys) -> set[str]:
    """The paths of the last sealed editions."""
    return {*state.fixed, *(name for edition in state.editions for name in edition)}


def draft_of(state: SiteKeys, folder: Path) -> SiteKeys:
    """A copy of a state that is saved into a folder, so that the state itself stays as it is."""
    write_whole(folder / ITSELF, state.file_bytes, mode=0o600)
    return SiteKeys.read(folder / ITSELF)

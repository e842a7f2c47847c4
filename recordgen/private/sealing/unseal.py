"""A sealed folder read back without a browser, and compared with what was published."""

from __future__ import annotations

import hashlib
import json
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict, ValidationError

from recordgen.private.crypto.blobs import FILE, MANIFEST_NAME, Blob, ReaderKey, open_blob
from recordgen.private.crypto.blobs import MANIFEST as MANIFEST_KIND
from recordgen.private.crypto.key_ring import open_by_own_key, open_by_words, parse_ring
from recordgen.private.crypto.passphrases import FEWEST_ITERATIONS
from recordgen.private.crypto.primitives import NotOpened
from recordgen.private.keystore.proof import proven_key
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.private.sealing.sealed_folder import MANIFEST, RING, Outlet, blob_file
from recordgen.problems import Trouble, quoted
from recordgen.sentences import say

# What a published place answers for a path: its bytes, or None where there is nothing.
Read = Callable[[str], bytes | None]


class Manifest(BaseModel):
    """The contents of a sealed site: for each path the name of its blob, its media type and its length in bytes."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    v: Literal[1]
    serial: int
    time: str
    files: dict[str, tuple[str, str, int]]
    csp: tuple[str, ...]


@dataclass(frozen=True, order=True)
class Fault:
    """A published file that is not as it was published."""

    path: str
    kind: Literal["missing", "changed", "foreign"]


def unseal(folder: Path, passphrase: str, fewest: int = FEWEST_ITERATIONS) -> dict[str, bytes]:
    """The files of a sealed site by their paths.

    fewest: rounds of hashing below which a key ring is refused. Raises NotOpened where the words do not fit and where
    anything was changed, and OSError where a file is missing.
    """
    return files_of(folder, open_by_words(parse_ring((folder / RING).read_bytes()), passphrase, fewest))


def files_of(folder: Path, reader: ReaderKey) -> dict[str, bytes]:
    """The files of a sealed site by their paths, for whoever has the readers' key. Raises NotOpened and OSError."""
    return {path: _file(folder, reader, path, entry) for path, entry in read_manifest(folder, reader).files.items()}


def read_manifest(folder: Path, reader: ReaderKey) -> Manifest:
    """The manifest of a sealed site. Raises NotOpened and OSError."""
    sealed = Blob(MANIFEST_NAME, (folder / MANIFEST).read_bytes())
    try:
        return Manifest.model_validate(json.loads(open_blob(reader, MANIFEST_KIND, sealed)))
    except (ValidationError, ValueError):
        raise NotOpened(say("the manifest is not of the known form")) from None


def _file(folder: Path, reader: ReaderKey, path: str, entry: tuple[str, str, int]) -> bytes:
    name, _, length = entry
    body = open_blob(reader, FILE, Blob(name, (folder / blob_file(name)).read_bytes()))
    if len(body) != length:
        raise NotOpened(say("{path} is not as long as the manifest tells", path=path))
    return body


def refuse_unreadable(folder: Path, state: SiteKeys, fewest: int = FEWEST_ITERATIONS) -> None:
    """Raises Trouble where a reader's way into a sealed folder, tried here as their browser will, does not open it all.

    The words are not kept, so each slot is tried from the step after their hashing on, with the key in its proof.
    fewest: rounds of hashing below which a slot is refused.
    """
    whole: set[ReaderKey] = set()
    for reader in state.readers:
        try:
            own_key = proven_key(state.keys, reader.slot, reader.proof)
            key = open_by_own_key(parse_ring((folder / RING).read_bytes()), reader.slot.id, own_key, fewest)
            if key not in whole:
                files_of(folder, key)
                whole.add(key)
        except (NotOpened, OSError):
            message = say("what was sealed does not open for {reader}, so it is not sent", reader=quoted(reader.name))
            way_out = say("Publish again; if this is told once more, make new keys: recordgen readers STABLE --rotate")
            raise Trouble(message, way_out) from None


def faults(folder: Path, state: SiteKeys) -> list[Fault]:
    """Differences of a folder from the published site, in the order of paths; nothing where all is as it was."""
    known = {*state.fixed, *(name for edition in state.editions for name in edition)}
    foreign = [Fault(name, "foreign") for name in Outlet(folder).files() if name not in known]
    return sorted([*faults_through_reader(lambda name: _bytes(folder / name), state), *foreign])


def faults_through_reader(read: Read, state: SiteKeys) -> list[Fault]:
    """Differences of a place that is asked file by file, such as an address, from the published site.

    Blobs of the edition before may be missing. What else lies there cannot be asked for.
    """
    newest, *earlier = state.editions or [{}]
    found = [*_faults_of_edition(read, state.fixed | newest, must_be_there=True)]
    for edition in earlier:
        left = {name: digest for name, digest in edition.items() if name not in newest}
        found += _faults_of_edition(read, left, must_be_there=False)
    return sorted(found)


def _faults_of_edition(read: Read, published: dict[str, str], must_be_there: bool) -> list[Fault]:
    return [fault for name, digest in published.items() if (fault := _fault(read(name), name, digest, must_be_there))]


def _fault(content: bytes | None, name: str, digest: str, must_be_there: bool) -> Fault | None:
    if content is None:
        return Fault(name, "missing") if must_be_there else None
    return Fault(name, "changed") if hashlib.sha256(content).hexdigest() != digest else None


def _bytes(path: Path) -> bytes | None:
    try:
        return path.read_bytes()
    except OSError:
        return None

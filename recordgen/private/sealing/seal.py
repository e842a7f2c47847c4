"""A built site to a folder of files that tell nothing without the words: blobs, key ring, reader's files, manifest."""

from __future__ import annotations

import datetime as dt
import hashlib
import json
from collections.abc import Iterable, Iterator, Mapping
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from recordgen.files import list_files
from recordgen.private.crypto.blobs import FILE, Blob, blob, frame_body
from recordgen.private.crypto.blobs import MANIFEST as MANIFEST_KIND
from recordgen.private.keystore.site_keys import EDITIONS_KEPT, SeenEdition, SiteKeys
from recordgen.private.sealing.sealed_folder import MANIFEST, RING, Outlet, blob_file
from recordgen.private.sealing.site_files import SiteFile, foreign_addresses, script_hashes, site_files, title_of
from recordgen.private.sealing.unlock_pages import lock_files, reader_files, with_lock
from recordgen.problems import Trouble
from recordgen.progress import tell
from recordgen.records.load.tables import read_reference
from recordgen.sentences import listed, say

# Of many faults alike, so many are told.
MOST_TOLD = 5


@dataclass(frozen=True, order=True)
class SealedPage:
    """A page as its reader knows it: path in the site, title."""

    path: str
    title: str


Pages = tuple[SealedPage, ...]


@dataclass(frozen=True)
class SealedSite:
    """The outcome of sealing, against the edition before.

    serial: number of the edition. files: how many files of the site were sealed. size: bytes published, earlier
    editions left out. written: published files that were written, with their bytes. deleted: those taken away.
    """

    new: Pages
    changed: Pages
    removed: Pages
    serial: int
    files: int
    size: int
    written: dict[str, int]
    deleted: tuple[str, ...]


@dataclass(frozen=True)
class _Entry:
    """A file of the site once it is sealed."""

    file: SiteFile
    blob: Blob

    @property
    def index_entry(self) -> list[str | int]:
        return [self.blob.name, self.file.media_type, len(self.file.content)]


@dataclass
class _Edition:
    """Facts gathered while blobs are written; their bytes are let go."""

    files: dict[str, list[str | int]]
    scripts: set[str]
    blobs: dict[str, str]
    pages: dict[str, SeenEdition]
    size: int = 0

    def add(self, entry: _Entry) -> None:
        """Note one file."""
        file, name = entry.file, blob_file(entry.blob.name)
        self.files[file.path] = entry.index_entry
        self.blobs[name] = _sha256(entry.blob.content)
        self.size += len(entry.blob.content)
        if file.is_page:
            self.scripts |= script_hashes(file.content)
            self.pages[file.path] = SeenEdition(title=title_of(file.content) or file.path, digest=_sha256(file.content))


def seal(
    site: Path,
    state: SiteKeys,
    base: str,
    out: Path,
    *,
    today: dt.date | None = None,
    words: Mapping[str, str] | None = None,
    own_device: bool | None = None,
) -> SealedSite:
    """Seal a built site into an empty folder or the one it was sealed into before, and save the state.

    base: the address or path at which the site will be read. today: the day that the edition carries, if content, keys
    or ways in have changed. words: the phrases, or ours. own_device: as `reader_files` takes it.
    The same site gives the same bytes; the manifest is written last.
    Raises Trouble for foreign files in `out` (with their names), a page that would load from another host, a file too
    large, or a state without any way in.
    """
    if not state.readers:
        raise Trouble(say("there are no words for this site, so nobody could read it"), say("Add words first"))
    words = read_reference(None)[0].phrases if words is None else words
    fixed = reader_files(base, words, own_device=own_device)
    outlet = Outlet(out)
    outlet.refuse_foreign(state.site_id, [*fixed, RING, MANIFEST])
    _refuse_elsewhere(site)
    edition = _Edition({}, set(), {}, {})
    count = len(list_files(site))
    for done, entry in enumerate(_entries(state, _files_with_lock(site, base, words))):
        tell(say("Sealing files"), min(done, count), count)
        outlet.put(blob_file(entry.blob.name), entry.blob.content)
        edition.add(entry)
    before = state.pages
    public = {RING: state.ring, **dict(sorted(fixed.items())), MANIFEST: _manifest(state, edition, today)}
    _note(state, edition, public)
    state.save()
    for name, content in public.items():
        outlet.put(name, content)
    outlet.keep_only(name for kept in state.editions for name in kept)
    new, changed, removed = _differences(before, edition.pages)
    size = edition.size + sum(map(len, public.values()))
    return SealedSite(
        new, changed, removed, state.serial, len(edition.files), size, outlet.written, tuple(outlet.deleted)
    )


def _refuse_elsewhere(site: Path) -> None:
    """Raises Trouble where a page or a style would load something from another host."""
    found = [(file.path, address) for file in site_files(site) for address in foreign_addresses(file)]
    if found:
        told: list[str] = [
            say("{path} from {address}", path=path, address=address) for path, address in found[:MOST_TOLD]
        ]
        told += [say("and {number} more", number=len(found) - MOST_TOLD)] if len(found) > MOST_TOLD else []
        way_out = say("Keep such files with your own under site_templates, or leave them out")
        raise Trouble(
            say(
                "pages would load files from other hosts, which then learn who reads: {files}",
                files=listed(told, "; "),
            ),
            way_out,
        )


def _files_with_lock(site: Path, base: str, words: Mapping[str, str]) -> Iterator[SiteFile]:
    """The files to seal: those of the site, its pages with their lock, and what the lock needs."""
    for file in site_files(site):
        yield SiteFile(file.path, with_lock(file.content, base)) if file.is_page else file
    for path, content in lock_files(words).items():
        yield SiteFile(path, content)


def _entries(state: SiteKeys, files: Iterable[SiteFile]) -> Iterator[_Entry]:
    keys = state.keys
    for file in files:
        frame = frame_body(file.content, file.compressible)
        yield _Entry(file, blob(keys, state.site_id, FILE, file.path, frame))


def _manifest(state: SiteKeys, edition: _Edition, today: dt.date | None) -> bytes:
    """The sealed manifest; its number and day move on where content, keys or ways in differ from the last edition."""
    content: dict[str, Any] = {"v": 1, "files": edition.files, "csp": sorted(edition.scripts)}
    digest = _sha256(_json(content) + state.ring)
    if digest != state.digest:
        state.serial, state.day, state.digest = state.serial + 1, today.isoformat() if today else "", digest
    frame = frame_body(_json(content | {"serial": state.serial, "time": state.day}), compress=True)
    return blob(state.keys, state.site_id, MANIFEST_KIND, "", frame).content


def _note(state: SiteKeys, edition: _Edition, public: dict[str, bytes]) -> None:
    """Keep in the state what this edition consists of; blobs under other keys are no use to any reader."""
    kid = state.keys.kid.hex()
    earlier = [blobs for blobs in state.editions if blobs != edition.blobs] if kid == state.kid else []
    state.editions = [edition.blobs, *earlier][:EDITIONS_KEPT]
    state.kid = kid
    state.fixed = {name: _sha256(content) for name, content in public.items()}
    state.pages = edition.pages


def _differences(before: dict[str, SeenEdition], now: dict[str, SeenEdition]) -> tuple[Pages, Pages, Pages]:
    new = [SealedPage(path, page.title) for path, page in now.items() if path not in before]
    changed = [SealedPage(path, page.title) for path, page in now.items() if path in before and before[path] != page]
    removed = [SealedPage(path, page.title) for path, page in before.items() if path not in now]
    return tuple(new), tuple(changed), tuple(removed)


def _json(value: Any) -> bytes:
    return json.dumps(value, sort_keys=True, separators=(",", ":"), ensure_ascii=False).encode()


def _sha256(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()

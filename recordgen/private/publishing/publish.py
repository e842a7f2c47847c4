"""A stable's site, or the page for the phone, from the records to where people read it.

It is built, sealed, looked at, and sent once that is wanted.

Until an edition begins to be sent nothing is kept, so that looking at what would change changes nothing.
"""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterable, Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from recordgen.cache.entries import Cache, user_cache
from recordgen.files import filling, fingerprints, write_whole
from recordgen.git.remotes import address_of, refuse_own
from recordgen.hoof.naming import Naming
from recordgen.private.crypto.primitives import hkdf
from recordgen.private.keystore.field_key import FieldKey, keep_if_new, key_to_be
from recordgen.private.keystore.key_store import KeyStore, draft_of, paths_of, site_of
from recordgen.private.keystore.moved_keys import refuse_left_behind
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.private.publishing.address import (
    folder_of,
    neighbours,
    publish_of_field,
    publish_of_stable,
    refuse_inside,
    refuse_shared,
    sharing_origin,
)
from recordgen.private.publishing.build import build_field_for, build_for, neutral_names
from recordgen.private.publishing.ownership import Ours
from recordgen.private.publishing.to_command import run_command
from recordgen.private.publishing.to_folder import STAYS, put_folder, refuse_place
from recordgen.private.publishing.to_git import push_branch
from recordgen.private.sealing.seal import SealedPage, seal
from recordgen.private.sealing.site_files import title_of
from recordgen.private.sealing.unseal import refuse_unreadable
from recordgen.records.history.earlier_names import find_first_names
from recordgen.records.load.everything import Whole, read_whole
from recordgen.records.load.folders import FIELD
from recordgen.records.models.stable import Publish

# Stands at every unknown address, and is no page that anybody looks for.
LOST = "404.html"


@dataclass(frozen=True)
class Changes:
    """Changes of an edition for its readers, against the one that was sent before, in the order of the titles."""

    new: tuple[SealedPage, ...]
    changed: tuple[SealedPage, ...]
    removed: tuple[SealedPage, ...]


@dataclass(frozen=True)
class Task:
    """A site to publish, and where.

    slug: the stable's folder, or the field page's. name: as people call it. others: where the practice's other sites
    are published. key: what phones seal for, where it is the field page.
    """

    slug: str
    name: str
    whole: Whole
    publish: Publish
    others: dict[str, Publish]
    shelf: KeyStore
    today: dt.date
    cache: Cache
    key: FieldKey | None = None

    @property
    def naming(self) -> Naming:
        """The practice's own words."""
        return Naming.of(self.whole.practice.file, self.whole.reference.phrases)


@dataclass(frozen=True, kw_only=True)
class Edition:
    """A stable's site as files ready to be sent.

    folder: the files. ours: what may be replaced where they go. day: the day the edition carries. words: what opens it,
    where they were drawn just now; kept nowhere, and to be shown before `begin`.
    """

    task: Task
    folder: Path
    changes: Changes
    ours: Ours
    day: dt.date
    words: str = ""

    def begin(self) -> None:
        """Keep what must not be lost even if sending fails."""
        if self.task.key:
            keep_if_new(self.task.shelf.records, self.task.key)

    def send(self, say: Callable[[str], None]) -> bool:
        """Send it; False where the same was there already. say: gets each line that a program prints.

        Raises Trouble where it does not arrive; what is served then stays, unless a program of the practice's own
        wrote over it.
        """
        arrived = deliver(self.folder, self.task.publish, self.task.shelf.records, self.ours, say)
        self._keep()
        return arrived

    def _keep(self) -> None:
        self.task.shelf.keep_plain(fingerprints(self.folder))


@dataclass(frozen=True, kw_only=True)
class SealedEdition(Edition):
    """The same, sealed. state: as it stays until the edition is sent. draft: as it is from then on."""

    state: SiteKeys
    draft: SiteKeys

    def begin(self) -> None:
        """Keep the keys, and the edition's number: none is used twice, even if this one only half arrives."""
        super().begin()
        self.state.serial = self.draft.serial
        self.state.save()

    def _keep(self) -> None:
        write_whole(self.state.file, self.draft.file_bytes, mode=0o600)
        self.task.shelf.keep_sealed(self.folder)
        self.task.shelf.keep_plain({})


def look_ahead(publish: Publish, records: Path, ours: Ours) -> None:
    """Raises Trouble for what would stop sending and can be seen before anything is built, without a network."""
    if publish.to:
        place = folder_of(publish.to, records)
        refuse_inside(place, records)
        refuse_place(place, ours)
    if publish.git:
        refuse_own(address_of(publish.git.remote, records), records)


def deliver(folder: Path, publish: Publish, records: Path, ours: Ours, say: Callable[[str], None]) -> bool:
    """Put the files of a folder where a stable's site is served; False where they were there already.

    Raises Trouble where they do not arrive.
    """
    look_ahead(publish, records, ours)
    if publish.to:
        return put_folder(folder, folder_of(publish.to, records), ours)
    if publish.git:
        return push_branch(folder, publish.git, records, ours)
    run_command(publish.command or "", folder, records, say)
    return True


@contextmanager
def edition(
    records: Path, slug: str, today: dt.date, plain: bool = False, cache: Cache | None = None
) -> Iterator[Edition]:
    """The edition of a stable's site as of today, or of the field page, for as long as the block runs.

    plain: unsealed. cache: of what is read, pictures and figures; the user's own where None.

    Raises Trouble where the records say nowhere to publish it, where another is published there, where it cannot be
    built or sealed, and while somebody else works on it.
    """
    cache = cache or user_cache()
    whole = read_whole(records, today, None if slug == FIELD else slug, cache=cache)
    name, publish = _what_and_where(whole, slug)
    others = neighbours(records, slug)
    refuse_shared(publish, others, records)
    refuse_left_behind(records, slug)
    shelf = KeyStore.of(records, slug)
    with filling(shelf.keys.parent, STAYS), shelf.room() as room:
        state = shelf.state()
        ours = Ours(site_of(state), frozenset({*shelf.plain_fingerprints(), *paths_of(state)}))
        look_ahead(publish, records, ours)
        key = key_to_be(records) if slug == FIELD else None
        task = Task(slug, name, whole, publish, others, shelf, today, cache, key)
        yield _plain_edition(task, ours, room) if plain else _sealed_edition(task, ours, state, room)


def _what_and_where(whole: Whole, slug: str) -> tuple[str, Publish]:
    if slug == FIELD:
        return Naming(whole.reference.phrases).phrase("publish_field_page"), publish_of_field(whole.practice.file)
    stable = whole.practice.stables[0].stable
    return stable.name, publish_of_stable(stable, slug)


def _build_site(task: Task, page_name: Callable[[str], str], site: Path, sealed: bool) -> None:
    if task.key:
        build_field_for(task.whole, task.today, site, task.key.public, sealed, task.cache)
    else:
        build_for(task.publish.address, task.whole, task.today, page_name, site, task.cache)


def _plain_edition(task: Task, ours: Ours, room: Path) -> Edition:
    site = room / "site"
    _build_site(task, str, site, sealed=False)
    return Edition(
        task=task, folder=site, changes=_changes(site, task.shelf.plain_fingerprints()), ours=ours, day=task.today
    )


def _changes(site: Path, before: dict[str, str]) -> Changes:
    now = {path: digest for path, digest in fingerprints(site).items() if path.endswith(".html")}
    old = {path: digest for path, digest in before.items() if path.endswith(".html")}
    pages = {path: SealedPage(path, title_of((site / path).read_bytes())) for path in now}
    return Changes(
        _by_title(pages[path] for path in now if path not in old),
        _by_title(pages[path] for path in now if path in old and old[path] != now[path]),
        _by_title(SealedPage(path, path) for path in old if path not in now),
    )


def _by_title(pages: Iterable[SealedPage]) -> tuple[SealedPage, ...]:
    return tuple(sorted((page for page in pages if page.path != LOST), key=lambda page: (page.title, page.path)))


def _sealed_edition(task: Task, ours: Ours, state: SiteKeys, room: Path) -> SealedEdition:
    words = "" if state.readers else state.add_words(task.name)[1]
    site, out, draft = room / "site", room / "sealed", draft_of(state, room)
    horses = ((horse.stable, horse.slug) for horse in task.whole.practice.horses)
    # A horse's page keeps its address though its folder is renamed or the keys are rotated.
    first = find_first_names(task.shelf.records, horses)
    names = neutral_names(hkdf(state.names, state.site_id, b"page names"), list(first.values()))
    _build_site(task, lambda slug: names(first[slug]), site, sealed=True)
    task.shelf.take_blobs(out, state)
    changes = _seal_into(out, site, draft, task)
    refuse_unreadable(out, draft)
    day = dt.date.fromisoformat(draft.day)
    return SealedEdition(
        task=task, folder=out, changes=changes, ours=ours, day=day, words=words, state=state, draft=draft
    )


def _seal_into(out: Path, site: Path, draft: SiteKeys, task: Task) -> Changes:
    """Seals a built site. Its day is never before that of the edition sent last, even if the clock was set back."""
    last = dt.date.fromisoformat(draft.day) if draft.day else task.today
    own_device = False if sharing_origin(task.publish, task.others) else None
    words = task.whole.reference.phrases
    base, today = task.publish.address, max(last, task.today)
    told = seal(site, draft, base, out, today=today, words=words, own_device=own_device)
    return Changes(_by_title(told.new), _by_title(told.changed), _by_title(told.removed))

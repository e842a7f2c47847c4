"""Tell who may read a stable's site: ways in by words or by link, given and taken away, in effect when published."""

from __future__ import annotations

import unicodedata
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from recordgen.hoof.naming import Naming
from recordgen.language.catalogs import ENGLISH_CODE
from recordgen.language.spoken import language_of
from recordgen.private.keystore.key_store import KeyStore
from recordgen.private.keystore.site_keys import Reader, SiteKeys
from recordgen.problems import Trouble, quoted
from recordgen.records.home import language_in
from recordgen.records.load.folders import FIELD, SLUG, stable_meant
from recordgen.records.load.tables import read_reference
from recordgen.sentences import say


def link_of(address: str, secret: str) -> str:
    """The address that opens a site by itself; its last part never reaches the host."""
    return f"{address}#k={secret}"


def readers_named(state: SiteKeys, name: str) -> list[Reader]:
    """The readers of a name, however its letters are spelled: capitals, and the spaces between, do not matter."""
    return [reader for reader in state.readers if _alike(reader.name) == _alike(name)]


def _alike(name: str) -> str:
    return " ".join(unicodedata.normalize("NFKC", name).casefold().split())


def the_reader(state: SiteKeys, told: str) -> Reader:
    """The reader with this id, or else the only one of this name. Raises Trouble."""
    found = [reader for reader in state.readers if reader.slot.id == told] or readers_named(state, told)
    if len(found) == 1:
        return found[0]
    ids = ", ".join(f"{reader.slot.id} ({reader.by})" for reader in found)
    if found:
        raise Trouble(
            say("there are {found} ways in for {told}", found=len(found), told=quoted(told)),
            say("Name one by its id: {ids}", ids=ids),
        )
    names = ", ".join(sorted({quoted(reader.name) for reader in state.readers if reader.name}))
    raise Trouble(
        say("there is no way in for {told}", told=quoted(told)),
        say("There is one for: {names}", names=names or say("nobody")),
    )


@contextmanager
def changing(records: Path, slug: str) -> Iterator[SiteKeys]:
    """A stable's keys, to be changed by nobody else meanwhile, and saved where the block ends well. Raises Trouble."""
    state_of(records, slug)
    with KeyStore.of(records, slug).room():
        state = SiteKeys.load(records, slug)
        yield state
        state.save()


def state_of(records: Path, slug: str) -> SiteKeys:
    """The keys of a stable that was published. Raises Trouble where it has none."""
    refuse_unknown(records, slug)
    return SiteKeys.load(records, slug)


def refuse_unknown(records: Path, slug: str) -> None:
    """Raises Trouble where the records hold no stable in a folder of that name, nor a practice for the field page."""
    if slug == FIELD and (records / "practice.yaml").is_file():
        return
    if not SLUG.fullmatch(slug) or not (records / slug / "stable.yaml").is_file():
        raise Trouble(say("there is no stable {slug}", slug=quoted(slug)), stable_meant(slug, records))


def naming_of(records: Path) -> Naming:
    """The practice's own words in its language, read without its records."""
    code = language_in(records) or ENGLISH_CODE
    return Naming(read_reference(records, code)[0].phrases, language=language_of(code))

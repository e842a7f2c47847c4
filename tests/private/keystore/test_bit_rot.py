"""One bit that flips in what is kept: never a traceback, and never a site that its readers cannot open."""

from __future__ import annotations

import re
import shutil
from collections.abc import Iterator
from contextlib import suppress
from pathlib import Path

import pytest

from recordgen.private.crypto.key_ring import open_by_link, parse_ring
from recordgen.private.keystore.backup import backup, restore
from recordgen.private.keystore.checksum import verified_content, with_checksum
from recordgen.private.keystore.key_store import KeyStore
from recordgen.private.keystore.site_keys import KeysDamaged, SiteKeys
from recordgen.private.sealing.seal import seal
from recordgen.private.sealing.unseal import files_of, refuse_unreadable, unseal
from recordgen.problems import Trouble
from recordgen.records.load.tables import read_reference
from tests.support.sealed_site import QUICK, WORDS, contents, new_state, sealed, small_site

PHRASES = read_reference(None)[0].phrases


def flipped(content: bytes) -> Iterator[bytes]:
    """A content with one bit changed, for each bit of each byte."""
    for at, byte in enumerate(content):
        for bit in range(8):
            yield content[:at] + bytes([byte ^ 1 << bit]) + content[at + 1 :]


@pytest.fixture
def made(tmp_path: Path) -> tuple[SiteKeys, str]:
    """Keys with words and a link after one edition of a small site, and the link's secret."""
    small_site(tmp_path / "site")
    state = new_state(tmp_path)
    secret = state.add_link("the yard's tablet")[1]
    sealed(tmp_path / "site", state, tmp_path / "out")
    return state, secret


@pytest.fixture
def state(made: tuple[SiteKeys, str]) -> SiteKeys:
    """The keys."""
    return made[0]


@pytest.fixture
def secret(made: tuple[SiteKeys, str]) -> str:
    """The link's secret."""
    return made[1]


def test_every_flipped_bit_in_the_keys_is_found(state: SiteKeys) -> None:
    """Wherever in the file it is, names and spaces included."""
    kept = state.file.read_bytes()
    damaged = sum(verified_content(other) is None for other in flipped(kept))

    assert (verified_content(kept) is not None, damaged) == (True, 8 * len(kept))
    with pytest.raises(KeysDamaged, match="nothing is done with them"):
        SiteKeys.of(next(flipped(kept)), state.file)


def test_every_flipped_bit_in_a_copy_of_the_keys_is_found(
    state: SiteKeys, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nothing is put back from it, and the words are not blamed."""
    monkeypatch.setenv("RECORDGEN_PRIVATE", str(tmp_path / "keys"))
    SiteKeys.begin(tmp_path, "willowmere").save()
    made = backup(tmp_path / "copy", WORDS, QUICK)

    assert all(verified_content(other) is None for other in flipped(made.content))
    for content in list(flipped(made.content))[::1000]:
        made.path.write_bytes(content)
        with pytest.raises(Trouble, match="or a damaged one"):
            restore(made.path, WORDS, QUICK)


# Every value that a reader's way in hangs on.
FIELDS = re.compile(rb'"(?:site_id|master|id|kind|iter|salt|iv|key|proof)": "?([^",\n]+)')


def rotten(content: bytes) -> Iterator[bytes]:
    """The keys with one bit changed, at the begin and in the middle of each value that a way in hangs on."""
    for start, end in (found.span(1) for found in FIELDS.finditer(content)):
        for at in {start, (start + end) // 2}:
            yield content[:at] + bytes([content[at] ^ 1]) + content[at + 1 :]


def opens(content: bytes, secret: str, folder: Path) -> bool:
    """Whether keys seal a site that passes the last look. Then the words and the link open it."""
    state = SiteKeys.of(with_checksum(content), folder / "other.keys")
    out = folder / "other"
    seal(folder / "site", state, "/w/", out, words=PHRASES)
    refuse_unreadable(out, state, QUICK)
    link = open_by_link(parse_ring((out / "keys.json").read_bytes()), secret)

    assert unseal(out, WORDS, fewest=QUICK) == files_of(out, link)
    return True


def test_keys_that_rot_before_they_are_kept_publish_nothing_that_readers_cannot_open(
    state: SiteKeys, secret: str, tmp_path: Path
) -> None:
    """In memory no checksum helps, so the sealed site is tried as each reader's browser will try it."""
    content = verified_content(state.file.read_bytes())
    assert content
    passed = 0
    for other in rotten(content):
        shutil.rmtree(tmp_path / "other", ignore_errors=True)
        with suppress(Trouble):
            passed += opens(other, secret, tmp_path)

    assert opens(content, secret, tmp_path)
    assert passed == 0


def test_a_rotten_copy_of_the_last_edition_is_not_sent_again(state: SiteKeys, tmp_path: Path) -> None:
    """Blobs that are as they were sent stay for whoever is reading; no other file is taken from it."""
    shelf = KeyStore(tmp_path, "willowmere", state.file)
    shelf.keep_sealed(tmp_path / "out")
    first, second, *others = sorted((shelf.last_sealed / "d").iterdir())
    first.write_bytes(next(flipped(first.read_bytes())))
    second.unlink()
    shelf.take_blobs(tmp_path / "next", state)

    assert sorted(contents(tmp_path / "next")) == [f"d/{blob.name}" for blob in others]
    shelf.keep_sealed(tmp_path / "out")
    assert contents(shelf.last_sealed) == contents(tmp_path / "out")


def test_every_flipped_bit_in_the_note_of_a_plain_site_ends_in_a_sentence(tmp_path: Path) -> None:
    """It says what to do; nobody's files are taken for ours by it."""
    shelf = KeyStore(tmp_path, "willowmere", tmp_path / "willowmere.keys")
    shelf.keep_plain({"index.html": "ab" * 32, "horses/bramble.html": "cd" * 32})
    note = tmp_path / "willowmere.plain"

    assert len(shelf.plain_fingerprints()) == 2
    assert all(verified_content(other) is None for other in flipped(note.read_bytes()))
    for content in (b"", b"{}", next(flipped(note.read_bytes()))):
        note.write_bytes(content)
        with pytest.raises(Trouble, match=r"willowmere\.plain, the note of .* is damaged"):
            shelf.plain_fingerprints()

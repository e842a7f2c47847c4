"""The key ring: who gets in, and who does not."""

import json
import unicodedata

import pytest

from recordgen.private.crypto.blobs import ReaderKey
from recordgen.private.crypto.key_ring import (
    b64u,
    link_slot,
    open_by_link,
    open_by_words,
    parse_ring,
    ring_file,
    unb64u,
    words_slot,
)
from recordgen.private.crypto.passphrases import pbkdf2
from recordgen.private.crypto.primitives import NotOpened, decrypt, hkdf
from tests.support.sealed_site import QUICK

READER = ReaderKey(b"e" * 32, b"k" * 8, b"s" * 16)
WORDS = "mähne amber candle wicket pebble oat"


@pytest.fixture(scope="module")
def ring_text() -> bytes:
    """A ring with two ways in by words and one by link, which is not kept."""
    slots = [words_slot(READER, words, QUICK)[0] for words in ("other words", WORDS)] + [link_slot(READER)[0]]
    return ring_file(READER, slots)


def opened(text: bytes, words: str) -> ReaderKey:
    """The contents that the words open, with the tests' few rounds."""
    return open_by_words(parse_ring(text), words, fewest=QUICK)


def altered(text: bytes, **changes: int | str) -> bytes:
    """The ring with other values in its second slot."""
    told = json.loads(text)
    told["slots"][1] |= changes
    return json.dumps(told).encode()


@pytest.mark.parametrize(
    "typed",
    [WORDS, WORDS.upper(), WORDS.replace(" ", "-"), f"\t{WORDS}\n", unicodedata.normalize("NFD", WORDS)],
    ids=["as given", "capitals", "hyphens", "white space", "decomposed"],
)
def test_the_words_open_however_they_are_typed(ring_text: bytes, typed: str) -> None:
    """Any way of typing them gives the readers' key."""
    assert opened(ring_text, typed) == READER


@pytest.mark.parametrize("typed", ["", WORDS[:-1], WORDS + " oat", WORDS.replace(" ", "")])
def test_other_words_do_not_fit(ring_text: bytes, typed: str) -> None:
    """One letter, one word, no spaces: all told in the same words."""
    with pytest.raises(NotOpened, match="do not fit"):
        opened(ring_text, typed)


def test_a_link_opens_its_slot_and_no_other() -> None:
    """The secret of one link is no use for another."""
    (one, _, secret), (other, _, _) = link_slot(READER), link_slot(READER)

    assert len(secret) == 43
    assert open_by_link(parse_ring(ring_file(READER, [other, one])), secret) == READER
    with pytest.raises(NotOpened, match="link does not fit"):
        open_by_link(parse_ring(ring_file(READER, [other])), secret)


def test_a_reader_refuses_few_rounds(ring_text: bytes) -> None:
    """A ring that was weakened is not tried."""
    with pytest.raises(NotOpened, match="1000 rounds"):
        open_by_words(parse_ring(ring_text), WORDS)


def test_a_reader_refuses_endless_rounds(ring_text: bytes) -> None:
    """A ring that would hold up a phone for minutes is not tried."""
    with pytest.raises(NotOpened, match="10000001 rounds"):
        opened(altered(ring_text, iter=10_000_001), WORDS)


@pytest.mark.parametrize("changes", [{"id": "other"}, {"iter": QUICK + 1}, {"iv": b64u(bytes(12))}])
def test_a_slot_that_was_changed_opens_nothing(ring_text: bytes, changes: dict[str, int | str]) -> None:
    """Id, rounds and nonce are held by the seal."""
    with pytest.raises(NotOpened, match="do not fit"):
        opened(altered(ring_text, **changes), WORDS)


@pytest.mark.parametrize("kind", ["pass", "link"])
def test_a_slot_has_the_form_that_browsers_read(kind: str) -> None:
    """The wrapped key opens with the standard steps and the text that binds it, spelled out here."""
    slot, own_key, *secret = words_slot(READER, WORDS, QUICK) if kind == "pass" else link_slot(READER)
    salt, rounds = unb64u(slot.salt), {"pass": QUICK, "link": 0}[kind]
    own = pbkdf2(WORDS.encode(), salt, QUICK) if kind == "pass" else hkdf(unb64u(secret[0]), salt, b"sld1 link")
    bound = f"sld1 slot|c3Nzc3Nzc3Nzc3Nzc3Nzcw|a2tra2tra2s|{slot.id}|{kind}|{rounds}"

    assert own_key == own
    assert decrypt(own, unb64u(slot.iv), unb64u(slot.key), bound.encode()) == READER.enc


@pytest.mark.parametrize("name", ["site", "kid"])
def test_a_ring_moved_to_another_site_or_time_opens_nothing(ring_text: bytes, name: str) -> None:
    """Site and key number are held by each slot."""
    told = json.loads(ring_text) | {name: b64u(bytes(8))}

    with pytest.raises(NotOpened, match="do not fit"):
        opened(json.dumps(told).encode(), WORDS)


@pytest.mark.parametrize("text", [b"", b"[]", b"{}", b'{"v": 2, "site": "", "kid": "", "slots": []}'])
def test_what_is_no_ring_is_told(text: bytes) -> None:
    """Anything else in its place is refused."""
    with pytest.raises(NotOpened, match=r"keys\.json"):
        parse_ring(text)


def test_slots_draw_their_own_salt_and_nonce() -> None:
    """The same words twice share nothing that shows."""
    (one, _), (other, _) = words_slot(READER, WORDS, QUICK), words_slot(READER, WORDS, QUICK)

    assert (len(unb64u(one.salt)), len(unb64u(one.iv)), len(unb64u(one.key))) == (16, 12, 48)
    assert not {one.salt, one.iv, one.key, one.id} & {other.salt, other.iv, other.key, other.id}


def test_a_ring_shows_neither_words_nor_key(ring_text: bytes) -> None:
    """The public file holds no secret as text; the site's number, which is public, is there."""
    shown = ring_text.decode()

    assert b64u(READER.site_id) in shown
    assert not [secret for secret in (*WORDS.split(), b64u(READER.enc)) if secret in shown]


def test_no_words_make_no_slot() -> None:
    """White space alone would open for everybody."""
    with pytest.raises(ValueError, match="needs words"):
        words_slot(READER, " - ", QUICK)

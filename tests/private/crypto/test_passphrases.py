"""Words for readers: drawn from a published list, and read the same however they are typed."""

import hashlib
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.private.crypto import passphrases as module
from recordgen.private.crypto.passphrases import ITERATIONS, normal, pbkdf2, six_words, within_limits, word_list
from recordgen.private.crypto.primitives import NotOpened

# The published list, its words sorted, one a line.
# Source: Electronic Frontier Foundation, EFF's long word list, 2016, CC BY 3.0; two packages ship the same words.
PUBLISHED = "6d557f0693958fb5e650b68b5bee585eb82cf4da32965505c789e924743bc522"
HYPHENED = ["drop-down", "felt-tip", "t-shirt", "yo-yo"]

# Source: RFC 7914, section 11, read in test suites that quote it.
# The next three: RFC 6070's inputs with SHA-256, read in test suites; no official source.
PBKDF2_CASES = {
    "RFC 7914, one round": (
        (b"passwd", b"salt", 1),
        "55ac046e56e3089fec1691c22544b605f94185216dde0465e68b9d57c20dacbc"
        "49ca9cccf179b645991664b39d77ef317c71b845b1e30bd509112041d3a19783",
    ),
    "RFC 7914, 80,000 rounds": (
        (b"Password", b"NaCl", 80000),
        "4ddcd8f60b98be21830cee5ef22701f9641a4418d04c0414aeff08876b34ab56"
        "a1d425a1225833549adb841b51c9b3176a272bdebba1d078478f62b397f33c8d",
    ),
    "one round": (
        (b"password", b"salt", 1),
        "120fb6cffcf8b32c43e7225256c4f837a86548c92ccc35480805987cb70be17b",
    ),
    "4,096 rounds": (
        (b"password", b"salt", 4096),
        "c5e478d59288c841aa530db6845c4c8d962893a001ce4e11a4963873aa98134a",
    ),
    "40 bytes": (
        (b"passwordPASSWORDpassword", b"saltSALTsaltSALTsaltSALTsaltSALTsalt", 4096),
        "348c89dbcbd32b2f32d814b8116e84cf2b17347ebc1800181c4e2a1fb8dd53e1c635518c7dac47e9",
    ),
}


def test_the_words_are_those_of_the_published_list() -> None:
    """All of it but the four words with a hyphen."""
    whole = "".join(f"{word}\n" for word in sorted([*word_list(), *HYPHENED]))

    assert hashlib.sha256(whole.encode()).hexdigest() == PUBLISHED


def test_six_words_are_six_of_the_list() -> None:
    """They stand with a space between them and come out of the way they are hashed unchanged."""
    drawn = six_words()

    assert len(drawn.split(" ")) == 6
    assert set(drawn.split(" ")) <= set(word_list())
    assert normal(drawn) == drawn


def test_words_are_drawn_anew_each_time() -> None:
    """Fifty drawings give fifty different sixes."""
    assert len({six_words() for _ in range(50)}) == 50


def test_words_come_from_the_systems_source_of_chance(monkeypatch: pytest.MonkeyPatch) -> None:
    """Each word is one choice of `secrets`."""
    monkeypatch.setattr("secrets.choice", lambda words: words[-1])

    assert six_words() == " ".join([word_list()[-1]] * 6)


def test_a_list_that_is_not_whole_is_refused(monkeypatch: pytest.MonkeyPatch) -> None:
    """A shorter list would make words that are guessed sooner."""
    monkeypatch.setattr(module, "LIST", ("xkcdpass", "static/eff-short"))

    with pytest.raises(RuntimeError, match="1296 words rather than 7776"):
        word_list.__wrapped__()


@pytest.mark.parametrize(
    "typed",
    [
        "Larch Amber Candle",
        "  larch\tamber\r\ncandle\n",
        "larch-amber-candle",
        "larch - amber -- candle",
        "ｌａｒｃｈ ａｍｂｅｒ ｃａｎｄｌｅ",
        "larch. amber. candle. ",
        "1. larch\n2. amber\n3. candle",
        "“larch, amber, candle”",
        "larch\u00a0amber \u200bcandle",
    ],
)
def test_ways_of_typing_come_out_the_same(typed: str) -> None:
    """Capitals, white space, marks, numbers and wide letters make no difference."""
    assert normal(typed) == "larch amber candle"


def test_composed_and_decomposed_letters_are_the_same() -> None:
    """One keyboard writes ä as one sign, another as two."""
    assert normal(unicodedata.normalize("NFD", "Mähne")) == normal(unicodedata.normalize("NFC", "Mähne")) == "mähne"


def test_other_white_space_stays() -> None:
    """Only ASCII white space parts words, since a browser's script counts others than Python does."""
    assert normal("larch\x1camber\x85oat") == "larch\x1camber\x85oat"


@given(st.text(alphabet=st.characters(max_codepoint=0x17F), max_size=40))
def test_words_read_twice_stay_as_they_are(text: str) -> None:
    """Reading words is settled after one time."""
    assert normal(normal(text)) == normal(text)


@pytest.mark.parametrize("case", PBKDF2_CASES)
def test_pbkdf2_gives_the_published_keys(case: str) -> None:
    """Words, salt and rounds make the key of the standard."""
    (words, salt, rounds), key = PBKDF2_CASES[case]

    assert pbkdf2(words, salt, rounds, len(key) // 2).hex() == key


@pytest.mark.parametrize("rounds", [0, 599_999, 10_000_001])
def test_too_few_and_too_many_rounds_are_refused(rounds: int) -> None:
    """A ring that would be guessed quickly, or never open, is not tried."""
    with pytest.raises(NotOpened, match="rounds of hashing"):
        within_limits(rounds)


def test_what_is_written_is_read() -> None:
    """The rounds of new slots lie within a reader's limits."""
    assert within_limits(ITERATIONS) == 1_000_000

"""Words for readers: drawn from a published list, and read the same however they are typed."""

import hashlib
import unicodedata

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.private.crypto import passphrases as module
from recordgen.private.crypto.passphrases import normal, six_words, word_list

# The published list, its words sorted, one a line.
# Source: Electronic Frontier Foundation, EFF's long word list, 2016, CC BY 3.0; two packages ship the same words.
PUBLISHED = "6d557f0693958fb5e650b68b5bee585eb82cf4da32965505c789e924743bc522"
HYPHENED = ["drop-down", "felt-tip", "t-shirt", "yo-yo"]


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
    ],
)
def test_ways_of_typing_come_out_the_same(typed: str) -> None:
    """Capitals, white space, hyphens and wide letters make no difference."""
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

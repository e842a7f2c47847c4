"""The words that open a sealed site: drawn, never chosen, read the same however they are typed, and hashed slowly."""

from __future__ import annotations

import re
import secrets
import unicodedata
from functools import cache
from importlib.resources import files

from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.kdf.pbkdf2 import PBKDF2HMAC

from recordgen.private.crypto.primitives import KEY_BYTES, NotOpened
from recordgen.sentences import say

# The long list for dice of the Electronic Frontier Foundation, 2016, under CC BY 3.0, as the package xkcdpass ships it:
# common English words, of which six out of 7776 make 77 bits.
LIST = ("xkcdpass", "static/eff-long")
LIST_LENGTH = 7776
COUNT = 6

# What is written, and what a reader takes. Fewer make guessing cheap; more would hold up a phone for minutes.
ITERATIONS = 1_000_000
FEWEST_ITERATIONS = 600_000
MOST_ITERATIONS = 10_000_000

# Kept to ASCII, and what keyboards and notes put around words by themselves: curled quotes, signs of no width. What
# else counts as white space differs between Python and a browser's script.
_GAPS = re.compile(r"[\t\n\v\f\r -@\[-`{-~\u200b-\u200d\u2018-\u201f\ufeff]+")


def six_words() -> str:
    """Six words drawn by chance, with spaces between them."""
    return " ".join(secrets.choice(word_list()) for _ in range(COUNT))


@cache
def word_list() -> tuple[str, ...]:
    """The words to draw from, in order; the few with a hyphen are left out, so that six words stay six.

    Raises RuntimeError where the installed list is not whole.
    """
    package, path = LIST
    words = sorted(set(files(package).joinpath(path).read_text("utf-8").split()))
    if len(words) != LIST_LENGTH:
        raise RuntimeError(f"the list of words holds {len(words)} words rather than {LIST_LENGTH}")
    return tuple(word for word in words if "-" not in word)


def normal(text: str) -> str:
    """Words as they are hashed: one form of each letter, small, one space between words.

    Full-width, composed and capital letters come out the same; white space, numbers and marks only part words, since a
    keyboard puts a full stop behind two blanks, and a list numbers its lines.
    """
    parts = _GAPS.split(unicodedata.normalize("NFKC", text).lower())
    return " ".join(part for part in parts if part)


def pbkdf2(words: bytes, salt: bytes, iterations: int, length: int = KEY_BYTES) -> bytes:
    """A key from words that people type, by PBKDF2-HMAC-SHA256; `length` in bytes.

    Source: RFC 8018, section 5.2.
    """
    return PBKDF2HMAC(SHA256(), length, salt, iterations).derive(words)


def within_limits(iterations: int, fewest: int = FEWEST_ITERATIONS) -> int:
    """The number of iterations, if a reader takes it. Raises NotOpened for one that guards too little or never ends."""
    if not fewest <= iterations <= MOST_ITERATIONS:
        raise NotOpened(
            say(
                "{iterations} rounds of hashing are not between {fewest} and {most_iterations}",
                iterations=iterations,
                fewest=fewest,
                most_iterations=MOST_ITERATIONS,
            )
        )
    return iterations

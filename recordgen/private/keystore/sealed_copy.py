"""Keys as one sealed text, and the key that seals it: made of words once, then kept with the other keys."""

from __future__ import annotations

import secrets
from dataclasses import dataclass, field
from typing import Literal, Self

from pydantic import BaseModel, ConfigDict, ValidationError

from recordgen.private.crypto.key_ring import SALT_BYTES, b64u, unb64u
from recordgen.private.crypto.passphrases import FEWEST_ITERATIONS, ITERATIONS, normal, pbkdf2, within_limits
from recordgen.private.crypto.primitives import NONCE_BYTES, decrypt, encrypt
from recordgen.private.keystore.checksum import verified_content, with_checksum


class KeyBackup(BaseModel):
    """The encrypted file as it is read back."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    v: Literal[1]
    iter: int
    salt: str
    iv: str
    states: str

    @classmethod
    def read(cls, raw: bytes) -> Self | None:
        """The file out of its bytes; None where they are none, or damaged."""
        try:
            return cls.model_validate_json(verified_content(raw) or b"")
        except ValidationError:
            return None


@dataclass(frozen=True)
class SealingKey:
    """The key made of six words, which seals the same keys again and again without the words being asked for."""

    iterations: int
    salt: bytes
    key: bytes = field(repr=False)

    @classmethod
    def new(cls, words: str, iterations: int = ITERATIONS) -> Self:
        """A key for words that seal for the first time."""
        salt = secrets.token_bytes(SALT_BYTES)
        return cls(iterations, salt, pbkdf2(normal(words).encode(), salt, iterations))

    @classmethod
    def of(cls, copy: KeyBackup, words: str, fewest: int = FEWEST_ITERATIONS) -> Self:
        """The key of words for a copy; whether they fit shows when it is opened. Raises Trouble for too few rounds."""
        salt = unb64u(copy.salt)
        return cls(copy.iter, salt, pbkdf2(normal(words).encode(), salt, within_limits(copy.iter, fewest)))

    def is_of(self, copy: KeyBackup) -> bool:
        """Tell whether a copy was sealed with a key of the same words and salt."""
        return (copy.iter, unb64u(copy.salt)) == (self.iterations, self.salt)

    def seal(self, text: str) -> bytes:
        """The bytes of a copy that holds a text. Every one has a nonce of its own."""
        iv = secrets.token_bytes(NONCE_BYTES)
        states = b64u(encrypt(self.key, iv, text.encode(), _associated_data(self.iterations)))
        copy = KeyBackup(v=1, iter=self.iterations, salt=b64u(self.salt), iv=b64u(iv), states=states)
        return with_checksum((copy.model_dump_json(indent=1) + "\n").encode())

    def open_text(self, copy: KeyBackup) -> str:
        """The text of a copy. Raises NotOpened."""
        return decrypt(self.key, unb64u(copy.iv), unb64u(copy.states), _associated_data(copy.iter)).decode()


def _associated_data(iterations: int) -> bytes:
    return f"recordgen keys|1|{iterations}".encode()

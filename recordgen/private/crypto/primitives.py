"""The keys of one sealed site, and the two standard steps they are made and used by: HKDF and AES-GCM."""

from __future__ import annotations

from dataclasses import dataclass, field

from cryptography.exceptions import InvalidTag
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.kdf.hkdf import HKDF

from recordgen.problems import Trouble
from recordgen.sentences import say

KEY_BYTES = 32
NONCE_BYTES = 12


class NotOpened(Trouble):
    """Bytes that these words or keys do not open, or that were changed since they were sealed."""


@dataclass(frozen=True)
class Keys:
    """The keys of one site until the next rotation: `enc` for readers, `mac` and `proof` for the publisher alone.

    enc, mac, proof: 32 bytes. kid: 8 bytes, public, tells the keys of one time from those of another.
    """

    enc: bytes = field(repr=False)
    mac: bytes = field(repr=False)
    proof: bytes = field(repr=False)
    kid: bytes


def keys_of(master: bytes, site_id: bytes) -> Keys:
    """The keys that come out of a site's master key.

    master: 32 random bytes. site_id: 16 bytes.
    """
    enc, mac, proof, kid = (hkdf(master, site_id, b"sld1 " + use) for use in (b"enc", b"mac", b"proof", b"kid"))
    return Keys(enc, mac, proof, kid[:8])


def hkdf(secret: bytes, salt: bytes, info: bytes, length: int = KEY_BYTES) -> bytes:
    """A key from a secret that is random already, by HKDF-SHA256; `length` in bytes.

    Source: RFC 5869.
    """
    return HKDF(SHA256(), length, salt, info).derive(secret)


def encrypt(key: bytes, nonce: bytes, plain: bytes, bound: bytes) -> bytes:
    """The bytes sealed by AES-256-GCM, tag last; `bound` is not hidden, and without it nothing opens.

    key: 32 bytes. nonce: 12 bytes, never twice with one key for different bytes. Source: NIST SP 800-38D.
    """
    return AESGCM(key).encrypt(nonce, plain, bound)


def decrypt(key: bytes, nonce: bytes, sealed: bytes, bound: bytes) -> bytes:
    """The bytes that `encrypt` was given. Raises NotOpened where key, nonce, bytes or `bound` are not the same."""
    try:
        return AESGCM(key).decrypt(nonce, sealed, bound)
    except (InvalidTag, ValueError):
        raise NotOpened(say("these bytes cannot be opened: another key, or changed since they were sealed")) from None

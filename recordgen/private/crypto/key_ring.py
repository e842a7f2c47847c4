"""The key ring of a sealed site, public as `keys.json`: slots that each wrap the readers' key.

    {"v": 1, "site": b64u, "kid": b64u, "slots": [{"id", "kind", "iter", "salt", "iv", "key"}, ...]}

b64u is base64 in its URL form without `=`. `key` is AES-256-GCM of the readers' key under the slot's own key, bound to
the text `sld1 slot|site|kid|id|kind|iter`, whose site and kid are spelled as in the file. The slot's own key is
PBKDF2-HMAC-SHA256 of the words (kind `pass`), or HKDF-SHA256 of 32 random bytes with info `sld1 link` (kind `link`).
"""

from __future__ import annotations

import base64
import json
import secrets
from typing import Any, Literal

from pydantic import BaseModel, ConfigDict, Field, ValidationError

from recordgen.private.crypto.blobs import ReaderKey
from recordgen.private.crypto.passphrases import FEWEST_ITERATIONS, ITERATIONS, normal, pbkdf2, within_limits
from recordgen.private.crypto.primitives import KEY_BYTES, NONCE_BYTES, NotOpened, decrypt, encrypt, hkdf
from recordgen.sentences import say

SlotKind = Literal["pass", "link"]
SALT_BYTES = 16


class Slot(BaseModel):
    """One way in. Salt and iv are drawn once and kept, so that publishing again changes nothing."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    id: str
    kind: SlotKind
    iter: int
    salt: str
    iv: str
    key: str


class KeyRing(BaseModel):
    """The public file as it is read back."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    v: Literal[1]
    site: str
    kid: str
    slots: tuple[Slot, ...] = Field(max_length=100)


def words_slot(reader: ReaderKey, words: str, iterations: int = ITERATIONS) -> tuple[Slot, bytes]:
    """A slot that these words open, and its own key (32 bytes). Raises ValueError for no words at all."""
    if not normal(words):
        raise ValueError("a slot needs words")
    salt = secrets.token_bytes(SALT_BYTES)
    own_key = pbkdf2(normal(words).encode(), salt, iterations)
    return _wrap_key(reader, own_key, "pass", iterations, salt), own_key


def link_slot(reader: ReaderKey) -> tuple[Slot, bytes, str]:
    """A slot that a link opens, its own key (32 bytes), and the link's secret (43 signs), which is kept nowhere."""
    secret, salt = secrets.token_bytes(KEY_BYTES), secrets.token_bytes(SALT_BYTES)
    own_key = _of_link(secret, salt)
    return _wrap_key(reader, own_key, "link", 0, salt), own_key, b64u(secret)


def _wrap_key(reader: ReaderKey, own_key: bytes, kind: SlotKind, iterations: int, salt: bytes) -> Slot:
    iv, slot_id = secrets.token_bytes(NONCE_BYTES), secrets.token_hex(4)
    bound = _associated_data(b64u(reader.site_id), b64u(reader.kid), slot_id, kind, iterations)
    key = encrypt(own_key, iv, reader.enc, bound)
    return Slot(id=slot_id, kind=kind, iter=iterations, salt=b64u(salt), iv=b64u(iv), key=b64u(key))


def _of_link(secret: bytes, salt: bytes) -> bytes:
    return hkdf(secret, salt, b"sld1 link")


def _associated_data(site: str, kid: str, slot_id: str, kind: SlotKind, iterations: int) -> bytes:
    return f"sld1 slot|{site}|{kid}|{slot_id}|{kind}|{iterations}".encode()


def ring_file(reader: ReaderKey, slots: list[Slot]) -> bytes:
    """The text of `keys.json`, the same for the same slots."""
    told: dict[str, Any] = {"v": 1, "site": b64u(reader.site_id), "kid": b64u(reader.kid)}
    told["slots"] = [slot.model_dump() for slot in slots]
    return (json.dumps(told, sort_keys=True, indent=1) + "\n").encode()


def parse_ring(text: bytes) -> KeyRing:
    """A key ring from its file. Raises NotOpened where it is none."""
    try:
        return KeyRing.model_validate_json(text)
    except ValidationError:
        raise NotOpened(say("keys.json is not the key ring of a sealed site")) from None


def open_by_words(ring: KeyRing, words: str, fewest: int = FEWEST_ITERATIONS) -> ReaderKey:
    """The contents that these words open, tried on each slot for words. Raises NotOpened where they fit none."""
    typed = normal(words).encode()
    for slot in (slot for slot in ring.slots if slot.kind == "pass"):
        own_key = pbkdf2(typed, unb64u(slot.salt), within_limits(slot.iter, fewest))
        if reader := _try_slot(ring, slot, own_key):
            return reader
    raise NotOpened(say("these words do not fit"), say("Look for a word left out or spelled otherwise"))


def open_by_link(ring: KeyRing, secret: str) -> ReaderKey:
    """The contents that a link's secret opens. Raises NotOpened where it fits no slot."""
    for slot in (slot for slot in ring.slots if slot.kind == "link"):
        if reader := _try_slot(ring, slot, _of_link(unb64u(secret), unb64u(slot.salt))):
            return reader
    raise NotOpened(say("this link does not fit"), say("It may be older than the last change of keys"))


def open_by_own_key(ring: KeyRing, slot_id: str, own_key: bytes, fewest: int = FEWEST_ITERATIONS) -> ReaderKey:
    """The contents that a slot's own key opens, as in a browser that has just hashed the words. Raises NotOpened."""
    for slot in (slot for slot in ring.slots if slot.id == slot_id):
        if slot.kind == "pass":
            within_limits(slot.iter, fewest)
        if reader := _try_slot(ring, slot, own_key):
            return reader
    raise NotOpened(say("the key ring has no slot {slot_id} that its own key opens", slot_id=slot_id))


def _try_slot(ring: KeyRing, slot: Slot, own_key: bytes) -> ReaderKey | None:
    bound = _associated_data(ring.site, ring.kid, slot.id, slot.kind, slot.iter)
    try:
        enc = decrypt(own_key, unb64u(slot.iv), unb64u(slot.key), bound)
    except NotOpened:
        return None
    return ReaderKey(enc, unb64u(ring.kid), unb64u(ring.site))


def b64u(content: bytes) -> str:
    """Bytes in base64's URL form, without `=`."""
    return base64.urlsafe_b64encode(content).decode().rstrip("=")


def unb64u(text: str) -> bytes:
    """The bytes of a text as `b64u` writes it. Raises NotOpened for any other."""
    try:
        return base64.b64decode(text + "=" * (-len(text) % 4), altchars=b"-_", validate=True)
    except ValueError:
        raise NotOpened(say("a key is not spelled as keys are")) from None

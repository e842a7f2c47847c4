"""The proof that a reader's slot opens, kept by the publisher, who does not keep the reader's words.

As a slot is made, its own key is at hand. It is kept sealed under a key of the publisher's, and bound to every sign of
the slot. So a proof that opens shows three things at once: the slot is the one that these words were drawn for, it
belongs to these very keys, and its own key can be tried on it as a reader's browser will, but for the hashing of words.
Whoever could read a proof has the publisher's keys, which open more; of the words it tells nothing that the public slot
does not.
"""

from __future__ import annotations

import secrets

from recordgen.private.crypto.key_ring import Slot
from recordgen.private.crypto.primitives import NONCE_BYTES, Keys, decrypt, encrypt


def proof_of(keys: Keys, slot: Slot, own_key: bytes) -> bytes:
    """The proof to keep for a new slot: nonce (12 bytes), then the slot's own key, sealed."""
    nonce = secrets.token_bytes(NONCE_BYTES)
    return nonce + encrypt(keys.proof, nonce, own_key, _associated_data(slot))


def proven_key(keys: Keys, slot: Slot, proof: bytes) -> bytes:
    """The slot's own key (32 bytes). Raises NotOpened where keys, slot or proof are not as they were made."""
    return decrypt(keys.proof, proof[:NONCE_BYTES], proof[NONCE_BYTES:], _associated_data(slot))


def _associated_data(slot: Slot) -> bytes:
    return f"sld1 proof|{slot.model_dump_json()}".encode()

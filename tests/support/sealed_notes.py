"""Field notes as the page on the phone writes them, put together here from the published steps alone."""

from __future__ import annotations

import base64
import hashlib
import json
import zlib
from collections.abc import Sequence
from typing import Any

from cryptography.hazmat.primitives.asymmetric import ec
from cryptography.hazmat.primitives.ciphers.aead import AESGCM
from cryptography.hazmat.primitives.hashes import SHA256
from cryptography.hazmat.primitives.kdf.hkdf import HKDF
from cryptography.hazmat.primitives.serialization import Encoding, PublicFormat

Part = dict[str, Any]


def url64(content: bytes) -> str:
    """Base64 in its URL form, without `=`."""
    return base64.urlsafe_b64encode(content).decode().rstrip("=")


def sealed_notes(file: str, parts: Sequence[Part], practice: bytes, own: int | None = None) -> bytes:
    """A sealed file of notes. practice: the public key, 65 bytes. own: the file's own private key, else a new one."""
    curve = ec.SECP256R1()
    pair = ec.derive_private_key(own, curve) if own else ec.generate_private_key(curve)
    brought = pair.public_key().public_bytes(Encoding.X962, PublicFormat.UncompressedPoint)
    shared = pair.exchange(ec.ECDH(), ec.EllipticCurvePublicKey.from_encoded_point(curve, practice))
    key = HKDF(SHA256(), 32, brought, b"recordgen field notes 1").derive(shared)
    head = _head(file, len(parts), url64(hashlib.sha256(practice).digest()[:9]), url64(brought))
    return _file(head, [_sealed(number, part, key, head) for number, part in enumerate(parts, 1)])


def _sealed(number: int, part: Part, key: bytes, head: str) -> str:
    plain = json.dumps(part).encode()
    small = zlib.compressobj(wbits=-15)
    packed = small.compress(plain) + small.flush()
    flagged = b"\1" + packed if len(packed) < len(plain) else b"\0" + plain
    nonce = bytes(8) + number.to_bytes(4, "big")
    return url64(AESGCM(key).encrypt(nonce, flagged, hashlib.sha256(head.encode()).digest() + nonce))


def plain_notes(file: str, parts: Sequence[Part], summed: bool = True) -> bytes:
    """The same without a seal; without sums where the browser cannot make any."""
    texts = [json.dumps(part, ensure_ascii=False) for part in parts]
    sums = [hashlib.sha256(text.encode()).hexdigest() if summed else "-" for text in texts]
    return _file(_head(file, len(parts)), [f"{one} {text}" for one, text in zip(sums, texts, strict=True)])


def _head(file: str, lines: int, to: str = "", key: str = "") -> str:
    return json.dumps({"field_notes": 1, "file": file, "to": to, "key": key, "lines": lines})


def _file(head: str, contents: Sequence[str]) -> bytes:
    return ("\n".join([head, *(f"{number} {one}" for number, one in enumerate(contents, 1))]) + "\n").encode()

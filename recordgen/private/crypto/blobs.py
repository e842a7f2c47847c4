"""One file to one sealed blob and back: compressed, padded, named by its content, encrypted."""

from __future__ import annotations

import base64
import hashlib
import hmac
import struct
import zlib
from dataclasses import dataclass
from typing import Literal

from recordgen.private.crypto.primitives import NONCE_BYTES, Keys, NotOpened, decrypt, encrypt
from recordgen.sentences import say

MAGIC = b"SLD1"
HEADER_BYTES = len(MAGIC) + 1 + 8

# The kind of a blob, and the part of its header that tells it.
Kind = Literal[1, 2]
FILE: Kind = 1
MANIFEST: Kind = 2
MANIFEST_NAME = "manifest"

COMPRESSED = 1
# The usual one: on pages full of drawings, higher ones take much longer and save next to nothing.
LEVEL = 6
# Compression that saves less than this share is not worth the reader's time.
WORTH = 0.05
# A reader opens a whole file in memory.
LARGEST = 25 * 1000 * 1000


@dataclass(frozen=True)
class Blob:
    """A sealed file as it is published: its name without ending, its bytes."""

    name: str
    content: bytes


@dataclass(frozen=True)
class ReaderKey:
    """The key to blobs: the readers' key, and which site and which of its keys it belongs to."""

    enc: bytes
    kid: bytes
    site_id: bytes

    def __repr__(self) -> str:
        return f"ReaderKey(kid={self.kid.hex()})"


def padme(length: int) -> int:
    """A length rounded up so that only about log log of it shows, by 12 % at the most.

    Source: Padme padding, Nikitin et al. 2019, Proc. Privacy Enhancing Technologies 2019(4). From memory, not read.
    """
    if length < 2:
        return length
    exponent = length.bit_length() - 1
    kept_bits = exponent.bit_length()
    step = 1 << (exponent - kept_bits)
    return -(-length // step) * step


def frame_body(body: bytes, compress: bool) -> bytes:
    """The exact bytes to encrypt: flags (1 byte), length (4, big-endian), body, zeros up to a padded length."""
    packed = zlib.compress(body, LEVEL) if compress else body
    smaller = compress and len(packed) <= len(body) * (1 - WORTH)
    inner = packed if smaller else body
    whole = struct.pack(">BI", COMPRESSED if smaller else 0, len(inner)) + inner
    return whole.ljust(padme(len(whole)), b"\0")


def parse_frame(frame: bytes) -> bytes:
    """The body of a frame. Raises NotOpened for a frame that `frame_body` does not write."""
    if len(frame) < 5:
        raise NotOpened(say("a frame ends too early"))
    flags, length = struct.unpack_from(">BI", frame)
    inner, padding = frame[5 : 5 + length], frame[5 + length :]
    if flags > COMPRESSED or len(inner) != length or any(padding) or len(frame) != padme(5 + length):
        raise NotOpened(say("a frame is not of the known form"))
    return _inflate(inner) if flags == COMPRESSED else inner


def _inflate(packed: bytes) -> bytes:
    stream = zlib.decompressobj()
    try:
        body = stream.decompress(packed, LARGEST + 1)
    except zlib.error:
        raise NotOpened(say("a frame does not unpack")) from None
    if len(body) > LARGEST or not stream.eof or stream.unused_data:
        raise NotOpened(say("a frame does not unpack to one file"))
    return body


def name_and_nonce(mac: bytes, kind: Kind, path: str, frame: bytes) -> tuple[str, bytes]:
    """The name (26 letters and digits) and the nonce (12 bytes) of a frame at a path.

    Both come from the frame rather than from the file: another zlib packs the same file otherwise, and one nonce must
    not meet two frames. By chance two frames out of a million share a nonce once in 10^17; rotate before 2^24.
    """
    place = path.encode()
    sum_of = hmac.digest(mac, bytes([kind]) + struct.pack(">I", len(place)) + place + frame, hashlib.sha256)
    name = base64.b32encode(sum_of[NONCE_BYTES : NONCE_BYTES + 16]).decode().rstrip("=").lower()
    return name, sum_of[:NONCE_BYTES]


def blob(keys: Keys, site_id: bytes, kind: Kind, path: str, frame: bytes) -> Blob:
    """A frame sealed under the name that its content gives it; a manifest keeps its fixed name."""
    name, nonce = name_and_nonce(keys.mac, kind, path, frame)
    name = MANIFEST_NAME if kind == MANIFEST else name
    header = MAGIC + bytes([kind]) + keys.kid
    return Blob(name, header + nonce + encrypt(keys.enc, nonce, frame, header + site_id + name.encode()))


def open_blob(reader: ReaderKey, kind: Kind, sealed: Blob) -> bytes:
    """The file inside a blob. Raises NotOpened where it was changed, cut, renamed or sealed with other keys."""
    header, rest = sealed.content[:HEADER_BYTES], sealed.content[HEADER_BYTES:]
    if header != MAGIC + bytes([kind]) + reader.kid:
        raise NotOpened(say("{sealed} was not sealed for this site and these keys", sealed=sealed.name))
    bound = header + reader.site_id + sealed.name.encode()
    return parse_frame(decrypt(reader.enc, rest[:NONCE_BYTES], rest[NONCE_BYTES:], bound))

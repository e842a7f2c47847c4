"""Pictures drawn for the tests of photographs, and pieces of files made by hand."""

from __future__ import annotations

import io
import struct
import zlib

import numpy as np
from PIL import Image, ImageDraw

CORNERS = ((220, 40, 40), (40, 170, 60), (40, 70, 200), (240, 230, 60))
XMP = b"http://ns.adobe.com/xap/1.0/\0<x:xmpmeta>somewhere</x:xmpmeta>"
IPTC = b"Photoshop 3.0\x008BIM\x04\x04\0\0\0\0\0\x08\x1c\x02\x5a\0\x03Yew"
PROFILE = b"ICC_PROFILE\0\x01\x01" + bytes(200)
EXIF = b"Exif\0\0MM\0*\0\0\0\x08\0\0\0\0\0\0"


def drawn(width: int = 320, height: int = 240) -> Image.Image:
    """A picture with another colour in each corner: red, green, blue, yellow, by rows."""
    picture = Image.new("RGB", (width, height), (200, 190, 170))
    draw = ImageDraw.Draw(picture)
    for index, colour in enumerate(CORNERS):
        x, y = index % 2 * width // 2, index // 2 * height // 2
        draw.rectangle((x, y, x + width // 2 - 1, y + height // 2 - 1), fill=colour)
    return picture


def file_of(picture: Image.Image, kind: str = "JPEG", **how: object) -> bytes:
    """The bytes of a picture in a file of that kind."""
    out = io.BytesIO()
    picture.save(out, kind, **how)
    return out.getvalue()


def opened(raw: bytes) -> Image.Image:
    """The picture in some bytes."""
    return Image.open(io.BytesIO(raw))


def corners(picture: Image.Image) -> np.ndarray:
    """The colours in the middle of each quarter, by rows."""
    width, height = picture.size
    at = [(x * width // 4, y * height // 4) for y in (1, 3) for x in (1, 3)]
    return np.array([picture.convert("RGB").getpixel(spot) for spot in at], dtype=float)


def segment(marker: int, content: bytes) -> bytes:
    """A segment of a JPEG file. Source: ITU-T T.81, B.1.1.4."""
    return bytes((0xFF, marker)) + (len(content) + 2).to_bytes(2) + content


def with_segments(raw: bytes, *more: bytes) -> bytes:
    """A JPEG file with segments behind its first one."""
    first = 4 + int.from_bytes(raw[4:6]) - 2 + 2
    return raw[:first] + b"".join(more) + raw[first:]


def with_place(raw: bytes | None = None) -> bytes:
    """A JPEG file as a telephone writes it: place, time, maker, orientation, text of three kinds, a comment."""
    exif = Image.Exif()
    exif[0x0112], exif[0x010F] = 1, "Maker of cameras"
    exif.get_ifd(0x8769)[0x9003] = "2026:10:14 09:30:00"
    exif.get_ifd(0x8825).update({1: "N", 2: (51.0, 28.0, 40.0), 3: "W", 4: (0.0, 0.0, 5.0)})
    made = file_of(opened(raw) if raw else drawn(), exif=exif, comment=b"at the yew tree")
    return with_segments(made, segment(0xE1, XMP), segment(0xED, IPTC))


def chunk(name: bytes, content: bytes) -> bytes:
    """A chunk of a PNG file. Source: PNG (W3C), section 5.3."""
    return len(content).to_bytes(4) + name + content + zlib.crc32(name + content).to_bytes(4)


def claiming(width: int, height: int) -> bytes:
    """A small PNG file that claims to hold a picture of this size."""
    head = struct.pack(">IIBBBBB", width, height, 8, 2, 0, 0, 0)
    return b"\x89PNG\r\n\x1a\n" + chunk(b"IHDR", head) + chunk(b"IDAT", zlib.compress(bytes(99))) + chunk(b"IEND", b"")

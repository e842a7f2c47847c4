"""Metadata of a JPEG file, told from its segments; nothing is decoded.

Source: ITU-T T.81 (JPEG), annex B, for markers and segments; ITU-T T.871 (JFIF), section 10, for its own segment.
"""

from __future__ import annotations

from collections.abc import Iterator
from dataclasses import dataclass
from typing import BinaryIO, NamedTuple

from recordgen.sentences import say

START, END, SCAN, COMMENT = 0xD8, 0xD9, 0xDA, 0xFE
# What follows the head of a scan up to the next marker; no marker of the standard has this number.
CODED = 0
FRAMES = {*range(0xC0, 0xD0)} - {0xC4, 0xC8, 0xCC}
# Baseline, extended and progressive: what every browser decodes.
SHOWN_FRAMES = {0xC0, 0xC1, 0xC2}
TABLES = {0xC4, 0xDB, 0xDD}
CLOSING = bytes((0xFF, END))

# A file that was made here has its first scan within this many bytes.
_FIRST_READ = 4096
# In a coded scan these follow 0xFF without ending it: a stuffed zero, the restart markers, another 0xFF.
_GOES_ON = {0x00, *range(0xD0, 0xD8), 0xFF}

# How the content of a segment begins, and what that is.
_KNOWN = (
    (b"Exif\0", "EXIF"),
    (b"http://ns.adobe.com/x", "XMP"),
    (b"ICC_PROFILE\0", say("a colour profile")),
    (b"MPF\0", say("more pictures")),
    (b"Photoshop ", "IPTC"),
    (b"JFIF\0", say("a small copy of itself")),
    (b"JFXX\0", say("a small copy of itself")),
)


class NotAPicture(Exception):
    """A file is no JPEG picture, or not a whole one; the reason as half a sentence."""


class Segment(NamedTuple):
    """A piece of the file: its marker's number, and where it begins and ends, the marker included."""

    marker: int
    start: int
    end: int


@dataclass(frozen=True)
class Headers:
    """Facts in the head of a file: the size of the picture in pixels, and all that the file carries besides it."""

    width: int
    height: int
    carries: tuple[str, ...]


def segments(data: bytes) -> Iterator[Segment]:
    """The pieces of a JPEG file in order, from behind its first marker up to its last.

    Raises NotAPicture where it is none, or ends too early.
    """
    if data[:2] != bytes((0xFF, START)):
        raise NotAPicture(say("this is no JPEG picture"))
    at = 2
    while (marker := _marker(data, at)) != END:
        end = at + 2 + int.from_bytes(data[at + 2 : at + 4])
        if end > len(data) or end < at + 4:
            raise NotAPicture(say("the picture is cut short"))
        yield Segment(marker, at, end)
        if marker == SCAN:
            at, end = end, _end_of_scan(data, end)
            yield Segment(CODED, at, end)
        at = end
    yield Segment(END, at, at + 2)


def _marker(data: bytes, at: int) -> int:
    if len(data) < at + 2:
        raise NotAPicture(say("the picture is cut short"))
    if data[at] != 0xFF or data[at + 1] in (0x00, 0xFF):
        raise NotAPicture(say("the picture is damaged"))
    return data[at + 1]


def _end_of_scan(data: bytes, at: int) -> int:
    while (at := data.find(0xFF, at)) >= 0 and at + 1 < len(data):
        if data[at + 1] not in _GOES_ON:
            return at
        at += 1
    raise NotAPicture(say("the picture is cut short"))


def headers(file: BinaryIO) -> Headers:
    """Facts of an open file's picture, and its metadata.

    Read are its head and its last two bytes, so that a large picture takes no longer than a small one.
    Raises NotAPicture where the file is no JPEG picture, is cut short, or goes on behind its picture.
    """
    head = file.read(_FIRST_READ)
    try:
        found = headers_of(head)
    except NotAPicture:
        found = headers_of(head + file.read())
    file.seek(-len(CLOSING), 2)
    if file.read() != CLOSING:
        raise NotAPicture(say("the picture is cut short, or something stands behind it in the file"))
    return found


def headers_of(data: bytes) -> Headers:
    """The same of the first bytes of a file. Raises NotAPicture where they do not reach the first scan."""
    size, carries = None, []
    for marker, start, end in segments(data):
        if marker == SCAN:
            break
        if marker in FRAMES:
            size = _size(marker, data[start:end])
        elif more := besides(marker, data[start + 4 : end]):
            carries.append(more)
    if size is None:
        raise NotAPicture(say("the picture is damaged"))
    return Headers(*size, tuple(dict.fromkeys(carries)))


def _size(marker: int, segment: bytes) -> tuple[int, int]:
    height, width = int.from_bytes(segment[5:7]), int.from_bytes(segment[7:9])
    if marker not in SHOWN_FRAMES or not width or not height:
        raise NotAPicture(say("this is a kind of JPEG that no browser shows"))
    return width, height


def besides(marker: int, content: bytes) -> str | None:
    """The name of a segment that the picture does not need; None for one that it needs, or that tells nothing."""
    if marker in TABLES or _is_harmless(marker, content):
        return None
    if marker == COMMENT:
        return "a comment"
    return next((told for begins, told in _KNOWN if content.startswith(begins)), f"a segment of kind {marker:X}")


def _is_harmless(marker: int, content: bytes) -> bool:
    """Tell whether a segment only says how colours are coded: JFIF without a small copy, or its like for others."""
    if marker == 0xE0:
        return content.startswith(b"JFIF\0") and len(content) == 14 and content[12:] == b"\0\0"
    return marker == 0xEE and content.startswith(b"Adobe") and len(content) == 12


def picture_alone(data: bytes) -> bytes:
    """The same picture, bit for bit, in a file that holds nothing else; a file that was plain comes out as it is.

    Raises NotAPicture where the file is no JPEG picture or ends too early.
    """
    kept = [data[:2]]
    for marker, start, end in segments(data):
        if marker in (SCAN, CODED, END) or marker in FRAMES or not besides(marker, data[start + 4 : end]):
            kept.append(data[start:end])
    return b"".join(kept)

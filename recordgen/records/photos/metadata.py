"""Metadata in the file of a picture: where, when, by whom and with what it was taken.

Nothing is decoded; the pieces of the file are listed. Sources, from memory, not read: PNG (W3C), chapters 5 and 11;
WebP's container (RIFF); ISO/IEC 14496-12, 8.11, with 23008-12, annex A, for HEIC and AVIF; TIFF 6.0, section 2. For
JPEG see `jpeg.py`.
"""

from __future__ import annotations

from collections.abc import Callable, Iterator

from recordgen.records.photos.jpeg import CODED, END, FRAMES, SCAN, NotAPicture, besides, segments
from recordgen.sentences import say

UNREADABLE = say("pieces that cannot be read")
MORE_BEHIND = say("something behind the picture")
# Enough to know a picture by.
FIRST_BYTES = 16

_PNG = b"\x89PNG\r\n\x1a\n"
_PNG_TEXTS = {b"tEXt", b"zTXt", b"iTXt"}
# The name of the program that wrote a picture tells nothing of a horse or a place. Judgement.
_PROGRAM = b"Software\0"
_WEBP = {b"EXIF": "EXIF", b"XMP ": "XMP"}
_HEIC = {b"Exif": "EXIF", b"mime": "XMP"}
_HEIC_BRANDS = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1", b"avif", b"avis"}
# What a picture needs, or what tells nothing of where it was taken.
_HARMLESS = {"a colour profile", "a small copy of itself"}

_Lister = Callable[[bytes], Iterator[str]]


def metadata_in(data: bytes) -> tuple[str, ...]:
    """Metadata of a file of any kind, in words, each once; nothing for what is no picture."""
    lister = _lister(data)
    return tuple(dict.fromkeys(_list_metadata(lister, data))) if lister else ()


def is_picture(begins: bytes) -> bool:
    """Tell whether a file that begins with these bytes is a picture. begins: `FIRST_BYTES` of it."""
    return _lister(begins) is not None


def _lister(data: bytes) -> _Lister | None:
    if data.startswith(b"\xff\xd8\xff"):
        return _of_jpeg
    if data.startswith(_PNG):
        return _of_png
    if data[:4] == b"RIFF" and data[8:12] == b"WEBP":
        return _of_webp
    if data[4:8] == b"ftyp" and data[8:12] in _HEIC_BRANDS:
        return _of_heic
    return _of_tiff if data[:4] in (b"II*\0", b"MM\0*") else None


def _list_metadata(lister: _Lister, data: bytes) -> Iterator[str]:
    try:
        yield from lister(data)
    except NotAPicture:
        yield UNREADABLE


def _of_jpeg(data: bytes) -> Iterator[str]:
    for marker, start, end in segments(data):
        if marker == END and end < len(data):
            yield MORE_BEHIND
        if marker not in (SCAN, CODED, END) and marker not in FRAMES:
            told = besides(marker, data[start + 4 : end])
            if told and told not in _HARMLESS:
                yield told


def _of_png(data: bytes) -> Iterator[str]:
    at = len(_PNG)
    while True:
        size, name = int.from_bytes(data[at : at + 4]), data[at + 4 : at + 8]
        content, at = data[at + 8 : at + 8 + size], at + 12 + size
        if at > len(data):
            raise NotAPicture(say("the picture is cut short"))
        if name == b"eXIf":
            yield "EXIF"
        if name in _PNG_TEXTS and not content.startswith(_PROGRAM):
            yield "XMP" if content.startswith(b"XML:com.adobe.xmp") else "a comment"
        if name == b"IEND":
            break
    if at < len(data):
        yield MORE_BEHIND


def _of_webp(data: bytes) -> Iterator[str]:
    at = 12
    while at < len(data):
        size = int.from_bytes(data[at + 4 : at + 8], "little")
        if data[at : at + 4] in _WEBP:
            yield _WEBP[data[at : at + 4]]
        at += 8 + size + size % 2


def _of_tiff(data: bytes) -> Iterator[str]:
    """EXIF is written as a TIFF file is, so that no TIFF file is without it."""
    yield "EXIF"


def _of_heic(data: bytes) -> Iterator[str]:
    for kind, content in _boxes(data):
        if kind == b"meta":
            for inner, items in _boxes(content[4:]):
                if inner == b"iinf":
                    yield from _items(items)


def _items(content: bytes) -> Iterator[str]:
    """Kinds of the items of a HEIC file; content: of the box that lists them."""
    for kind, item in _boxes(content[6 if content[:1] == b"\0" else 8 :]):
        at = 10 if item[:1] == b"\3" else 8
        if kind == b"infe" and item[at : at + 4] in _HEIC:
            yield _HEIC[item[at : at + 4]]


def _boxes(data: bytes) -> Iterator[tuple[bytes, bytes]]:
    """The boxes of a file, or within a box: their kinds and contents."""
    at = 0
    while at < len(data):
        size, kind, head = int.from_bytes(data[at : at + 4]), data[at + 4 : at + 8], 8
        if size == 1:
            size, head = int.from_bytes(data[at + 8 : at + 16]), 16
        end = at + size if size else len(data)
        if end > len(data) or end < at + head:
            raise NotAPicture(say("the picture is cut short"))
        yield kind, data[at + head : end]
        at = end

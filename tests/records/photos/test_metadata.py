"""Metadata in the file of a picture, with files that Pillow writes."""

from __future__ import annotations

import struct

import pytest
from PIL import Image, PngImagePlugin

from recordgen.records.photos.metadata import FIRST_BYTES, MORE_BEHIND, UNREADABLE, is_picture, metadata_in
from tests.support.photographs import chunk, drawn, file_of, with_place

KINDS = ("JPEG", "PNG", "WEBP")


def with_gps(kind: str) -> bytes:
    """A picture that tells where it was taken, and who made the camera."""
    exif = Image.Exif()
    exif[0x010F] = "Maker of cameras"
    exif.get_ifd(0x8825).update({1: "N", 2: (51.0, 28.0, 40.0), 3: "W", 4: (0.0, 0.0, 5.0)})
    return file_of(drawn(), kind, exif=exif)


def with_text(keyword: str, text: str) -> bytes:
    """A PNG file with a text in it."""
    told = PngImagePlugin.PngInfo()
    told.add_text(keyword, text)
    return file_of(drawn(), "PNG", pnginfo=told)


def box(kind: bytes, content: bytes) -> bytes:
    """A box of a HEIC file. Source, from memory, not read: ISO/IEC 14496-12, 4.2."""
    return struct.pack(">I", len(content) + 8) + kind + content


def heic(*items: bytes) -> bytes:
    """A HEIC file that lists items of these kinds and holds no picture. Source as above, 8.11.6."""
    entries = [box(b"infe", struct.pack(">IHH", 2 << 24, number, 0) + item) for number, item in enumerate(items)]
    listed = box(b"iinf", struct.pack(">IH", 0, len(items)) + b"".join(entries))
    return box(b"ftyp", b"heic\0\0\0\0mif1") + box(b"meta", bytes(4) + box(b"hdlr", bytes(24)) + listed)


@pytest.mark.parametrize("kind", KINDS)
def test_a_place_is_told_and_its_absence_too(kind: str) -> None:
    """The position that a telephone writes stands in EXIF; a picture alone has none."""
    assert metadata_in(with_gps(kind)) == ("EXIF",)
    assert metadata_in(file_of(drawn(), kind)) == ()


def test_a_telephones_picture_tells_all_of_it() -> None:
    """EXIF, XMP, IPTC and a comment, and nothing twice."""
    assert set(metadata_in(with_place())) == {"EXIF", "XMP", "IPTC", "a comment"}


def test_text_in_a_png_is_told_but_not_the_program_that_wrote_it() -> None:
    """A comment, XMP as editors write it, a program's name."""
    assert metadata_in(with_text("Comment", "at the yew")) == ("a comment",)
    assert metadata_in(with_text("XML:com.adobe.xmp", "<x/>")) == ("XMP",)
    assert metadata_in(with_text("Software", "An editor")) == ()


@pytest.mark.parametrize(
    ("items", "told"),
    [((b"hvc1", b"Exif"), ("EXIF",)), ((b"hvc1", b"mime"), ("XMP",)), ((b"hvc1", b"grid"), ())],
)
def test_a_heic_picture_is_looked_into(items: tuple[bytes, ...], told: tuple[str, ...]) -> None:
    """Its list of items names what it holds; no library for it is needed."""
    assert metadata_in(heic(*items)) == told


def test_a_picture_that_a_library_for_heic_wrote() -> None:
    """The same with a real one, where the library is there."""
    pytest.importorskip("pillow_heif").register_heif_opener()

    assert metadata_in(with_gps("HEIF")) == ("EXIF",)


def test_what_stands_behind_a_picture_is_told() -> None:
    """Such as the film of a moving photograph, with a place of its own."""
    assert metadata_in(file_of(drawn()) + b"film") == (MORE_BEHIND,)
    assert metadata_in(file_of(drawn(), "PNG") + chunk(b"eXIf", b"")) == (MORE_BEHIND,)


@pytest.mark.parametrize("kind", KINDS[:2])
def test_a_picture_cut_short_is_not_taken_for_plain(kind: str) -> None:
    """At whatever byte; nothing breaks."""
    raw = file_of(drawn(), kind)
    told = {metadata_in(raw[:end]) for end in range(FIRST_BYTES, len(raw), 97)}

    assert told == {(UNREADABLE,)}


def test_other_files_are_no_pictures() -> None:
    """Whatever their names say."""
    assert not is_picture(b"name: Bramble\n")
    assert metadata_in(b"%PDF-1.7") == ()
    assert metadata_in(file_of(drawn(), "TIFF")) == ("EXIF",)

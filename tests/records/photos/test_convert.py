"""A picture from a camera becomes upright, sRGB, small and plain."""

from __future__ import annotations

import datetime as dt
import io
import struct
import sys

import numpy as np
import pytest
from PIL import Image

from recordgen.problems import Trouble
from recordgen.records.photos.convert import day_taken, plain_photo, resized
from recordgen.records.photos.jpeg import headers, picture_alone
from tests.support.photographs import (
    CORNERS,
    IPTC,
    XMP,
    claiming,
    corners,
    drawn,
    file_of,
    opened,
    segment,
    with_place,
    with_segments,
)

NEAR = 8  # JPEG at this quality moves a plain colour by less
# Which side of what is seen the first row and the first column of the stored picture are.
# Source: CIPA DC-008 (Exif), tag Orientation.
SIDES = {
    1: ("top", "left"),
    2: ("top", "right"),
    3: ("bottom", "right"),
    4: ("bottom", "left"),
    5: ("left", "top"),
    6: ("right", "top"),
    7: ("right", "bottom"),
    8: ("left", "bottom"),
}
D50 = np.array([0.9642, 1.0, 0.8249])
WHITE = np.array([0.3127, 0.3290])
# Corners of the colour spaces by CIE x and y. From memory, not read: SMPTE RP 431-2, Adobe RGB (1998), IEC 61966-2-1.
SPACES = {
    "P3": [(0.680, 0.320), (0.265, 0.690), (0.150, 0.060)],
    "Adobe RGB": [(0.64, 0.33), (0.21, 0.71), (0.15, 0.06)],
}
SRGB = [(0.64, 0.33), (0.30, 0.60), (0.15, 0.06)]
GAMMA = 563 / 256
# Chromatic adaptation from one white to another. Source: ICC.1:2022, annex E (Bradford).
BRADFORD = np.array([[0.8951, 0.2664, -0.1614], [-0.7502, 1.7135, 0.0367], [0.0389, -0.0685, 1.0296]])


def stored(picture: Image.Image, orientation: int) -> Image.Image:
    """The picture as a camera held that way stores it."""
    row, column = SIDES[orientation]
    pixels = np.asarray(picture)
    if row in ("left", "right"):
        pixels = pixels.transpose(1, 0, 2)
    pixels = pixels[::-1] if row in ("bottom", "right") else pixels
    return Image.fromarray(np.ascontiguousarray(pixels[:, ::-1] if column in ("bottom", "right") else pixels))


def xyz(x: float, y: float) -> np.ndarray:
    """A colour's X, Y and Z at Y = 1."""
    return np.array([x / y, 1, (1 - x - y) / y])


def to_xyz(space: list[tuple[float, float]]) -> np.ndarray:
    """The matrix from a space's linear red, green and blue to X, Y and Z."""
    ends = np.column_stack([xyz(*corner) for corner in space])
    return ends * np.linalg.solve(ends, xyz(*WHITE))


def profile(space: list[tuple[float, float]]) -> bytes:
    """A colour profile of three colours and a gamma. Source: ICC.1:2022, sections 7 to 10."""
    adapt = np.linalg.inv(BRADFORD) @ np.diag((BRADFORD @ D50) / (BRADFORD @ xyz(*WHITE))) @ BRADFORD
    colours = (adapt @ to_xyz(space)).T
    fixed = [b"XYZ \0\0\0\0" + struct.pack(">3i", *(round(v * 65536) for v in one)) for one in (*colours, D50)]
    curve = b"curv\0\0\0\0\0\0\0\x01" + round(GAMMA * 256).to_bytes(2) + b"\0\0"
    tags = dict(zip((b"rXYZ", b"gXYZ", b"bXYZ", b"wtpt"), fixed, strict=True))
    tags |= dict.fromkeys((b"rTRC", b"gTRC", b"bTRC"), curve)
    tags |= {b"desc": b"desc\0\0\0\0\0\0\0\x02a\0" + bytes(78), b"cprt": b"text\0\0\0\0-\0\0\0"}
    table, data = len(tags).to_bytes(4), b""
    for name, content in tags.items():
        table += name + struct.pack(">II", 132 + 12 * len(tags) + len(data), len(content))
        data += content
    white = struct.pack(">3i", *(round(v * 65536) for v in D50))
    head = bytes(8) + b"\x02\x20\0\0mntrRGB XYZ " + bytes(12) + b"acsp" + bytes(28) + white + bytes(48)
    return (len(head) + len(table) + len(data)).to_bytes(4) + head[4:] + table + data


def in_srgb(colour: tuple[int, int, int], space: list[tuple[float, float]]) -> np.ndarray:
    """The sRGB values of a colour of a space. Source: IEC 61966-2-1 for the curve."""
    linear = np.linalg.solve(to_xyz(SRGB), to_xyz(space) @ (np.array(colour) / 255) ** GAMMA)
    return 255 * np.where(linear <= 0.0031308, 12.92 * linear, 1.055 * linear ** (1 / 2.4) - 0.055)


def test_nothing_is_left_of_what_a_telephone_writes() -> None:
    """Place, time, maker, text of each kind and the comment are gone, and the picture is the same."""
    raw = with_place()
    made = plain_photo(raw, "x")

    assert len(headers(io.BytesIO(raw)).carries) == 4
    assert (headers(io.BytesIO(made)).carries, dict(opened(made).getexif())) == ((), {})
    assert [word for word in (b"Exif", b"Maker", b"2026", b"xmpmeta", b"8BIM", b"yew") if word in made] == []
    assert np.abs(corners(opened(made)) - CORNERS).max() < NEAR


def test_what_stands_behind_the_picture_is_gone() -> None:
    """Such as the film that a telephone hangs on."""
    made = plain_photo(file_of(drawn()) + b"ftypmp42 a film with its place", "x")

    assert b"film" not in made
    assert made.endswith(b"\xff\xd9")


@pytest.mark.parametrize("orientation", SIDES)
def test_every_orientation_comes_out_upright(orientation: int) -> None:
    """However the camera was held, the red corner is at the top left."""
    exif = Image.Exif()
    exif[0x0112] = orientation
    made = opened(plain_photo(file_of(stored(drawn(), orientation), exif=exif), "x"))

    assert made.size == (320, 240)
    assert np.abs(corners(made) - CORNERS).max() < NEAR


@pytest.mark.parametrize("space", SPACES)
@pytest.mark.parametrize("colour", [(150, 120, 90), (180, 110, 100), (90, 140, 110)])
def test_colours_of_a_wider_space_come_out_in_srgb(space: str, colour: tuple[int, int, int]) -> None:
    """Near the values that the matrices give, and away from the numbers that were stored."""
    raw = file_of(Image.new("RGB", (64, 64), colour), "PNG", icc_profile=profile(SPACES[space]))
    found = np.array(opened(plain_photo(raw, "x")).getpixel((30, 30)))
    expected = in_srgb(colour, SPACES[space])

    assert np.abs(found - expected).max() <= 3
    assert np.abs(expected - colour).max() > 6


def test_a_broken_colour_profile_is_passed_over() -> None:
    """The numbers are taken as they are."""
    made = plain_photo(file_of(drawn(), icc_profile=b"no profile"), "x")

    assert np.abs(corners(opened(made)) - CORNERS).max() < NEAR


def test_the_same_picture_makes_the_same_bytes() -> None:
    """Nothing in the file comes from a clock or from chance."""
    raw = with_place(file_of(drawn(2000, 1500)))

    assert plain_photo(raw, "x") == plain_photo(raw, "another name")


@pytest.mark.parametrize(
    ("size", "expected"),
    [((3200, 2400), (1600, 1200)), ((1500, 3000), (800, 1600)), ((300, 200), (300, 200)), ((4000, 2), (1600, 1))],
)
def test_the_longer_side_is_at_most_1600(size: tuple[int, int], expected: tuple[int, int]) -> None:
    """A smaller picture stays as large as it is."""
    assert opened(plain_photo(file_of(drawn(*size)), "x")).size == expected


@pytest.mark.parametrize(
    ("kind", "mode"), [("PNG", "P"), ("PNG", "LA"), ("WEBP", "RGBA"), ("JPEG", "CMYK"), ("JPEG", "L")]
)
def test_other_kinds_come_in_as_jpeg(kind: str, mode: str) -> None:
    """In three colours, not progressive, and plain."""
    made = plain_photo(file_of(drawn().convert(mode), kind), "x")

    assert (opened(made).format, opened(made).mode, "progressive" in opened(made).info) == ("JPEG", "RGB", False)
    assert picture_alone(made) == made


def test_see_through_parts_become_white() -> None:
    """JPEG knows none."""
    made = plain_photo(file_of(Image.new("RGBA", (40, 40), (200, 0, 0, 0)), "PNG"), "x")

    assert opened(made).getpixel((20, 20)) == (255, 255, 255)


def test_sixteen_bits_become_eight() -> None:
    """A grey of three quarters stays one."""
    grey = Image.fromarray(np.full((40, 40), 0xC000, dtype="uint16"))

    assert opened(plain_photo(file_of(grey, "PNG"), "x")).getpixel((20, 20)) == pytest.approx((192, 192, 192), abs=2)


def test_of_several_pictures_in_a_telephones_file_the_first_is_taken() -> None:
    """Such a file holds a small copy or a map of depth behind it, and is no film."""
    raw = file_of(drawn(), "MPO", save_all=True, append_images=[Image.new("RGB", (320, 240))])
    made = plain_photo(raw, "x")

    assert opened(raw).format == "MPO"
    assert np.abs(corners(opened(made)) - CORNERS).max() < NEAR


FILM = {"save_all": True, "append_images": [Image.new("RGB", (320, 240))]}


@pytest.mark.parametrize(
    ("raw", "told"),
    [
        (b"", "is no picture that can be read"),
        (b"name: Bramble\n" * 99, "is no picture that can be read"),
        (file_of(drawn(), "GIF"), "is no picture that can be read"),
        (file_of(drawn())[:900], "is damaged or cut short"),
        (file_of(drawn(), "PNG")[:200], "is damaged or cut short"),
        (file_of(drawn(), "PNG", **FILM), "moves"),
        (file_of(drawn(), "WEBP", **FILM), "moves"),
        (claiming(9000, 9000), "has more than 80 million pixels"),
        (claiming(10_000, 10_000), "has more than 80 million pixels"),
        (claiming(60_000, 60_000), "has more than 80 million pixels"),
    ],
    ids=["empty", "text", "kind", "jpeg cut", "png cut", "png film", "webp film", "own limit", "warned", "bomb"],
)
def test_what_is_no_still_picture_is_refused(raw: bytes, told: str) -> None:
    """In a sentence that names the file."""
    with pytest.raises(Trouble) as trouble:
        plain_photo(raw, "'sole.jpg'")

    assert trouble.value.message.startswith(f"'sole.jpg' {told}")
    assert trouble.value.way_out


def test_heic_without_its_library_tells_how_to_get_it(monkeypatch: pytest.MonkeyPatch) -> None:
    """It is an extra, since few need it."""
    monkeypatch.setitem(sys.modules, "pillow_heif", None)
    with pytest.raises(Trouble, match="the library that reads those is not installed") as trouble:
        plain_photo(b"\0\0\0\x18ftypheic\0\0\0\0mif1heic", "x")

    assert "recordgen[heic]" in trouble.value.way_out


def test_heic_comes_in_where_its_library_is() -> None:
    """Upright, as the others."""
    heif = pytest.importorskip("pillow_heif")
    out = io.BytesIO()
    heif.from_pillow(drawn()).save(out)

    assert np.abs(corners(opened(plain_photo(out.getvalue(), "x"))) - CORNERS).max() < 2 * NEAR


def test_the_camera_tells_the_day() -> None:
    """Where it wrote one that reads as a day."""
    assert day_taken(with_place(), "x") == dt.date(2026, 10, 14)
    assert day_taken(file_of(drawn()), "x") is None


def test_a_resized_photograph_is_plain() -> None:
    """And has the size that was asked for."""
    made = resized(with_segments(file_of(drawn()), segment(0xE1, XMP), segment(0xED, IPTC)), (160, 120), "x")

    assert (opened(made).size, picture_alone(made) == made) == ((160, 120), True)

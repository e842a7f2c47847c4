"""A picture from a camera to a plain one: upright, in the colours of every screen, small, and nothing beside it."""

from __future__ import annotations

import contextlib
import datetime as dt
import io
import warnings
from collections.abc import Iterator
from contextlib import contextmanager
from importlib import import_module
from typing import cast

from PIL import ExifTags, Image, ImageCms, ImageOps, UnidentifiedImageError

from recordgen.problems import Trouble
from recordgen.sentences import say

LONGEST_SIDE = 1600
QUALITY = 82
MOST_PIXELS = 80_000_000
FORMATS = ("JPEG", "PNG", "WEBP")
# These may hold a film. A JPEG of several pictures is a phone's: its first is the photograph.
_MAY_MOVE = {"PNG", "WEBP"}
# The kinds of file that begin with the size and the word ftyp and hold a HEIC picture.
_HEIC = {b"heic", b"heix", b"heim", b"heis", b"hevc", b"hevx", b"mif1", b"msf1"}
_ANOTHER = say("Look whether it opens in a picture viewer, and take it over from the phone once more")


def plain_photo(raw: bytes, shown: str) -> bytes:
    """The picture in the bytes of a file as a plain JPEG: upright, sRGB, at most 1600 pixels a side, no metadata.

    shown: the file's name, for what is told. The same bytes and the same Pillow make the same picture.
    Raises Trouble where the file holds no still picture that can be read whole.
    """
    with _open(raw, shown) as picture:
        ImageOps.exif_transpose(picture, in_place=True)
        profile = picture.info.get("icc_profile")
        flat = _without_transparency(picture)
        flat.thumbnail((LONGEST_SIDE, LONGEST_SIDE), Image.Resampling.LANCZOS, reducing_gap=None)
        return _jpeg(_in_srgb(flat, profile))


def resized(raw: bytes, size: tuple[int, int], shown: str) -> bytes:
    """A plain photograph in another size, as a plain JPEG. size: width and height in pixels. Raises Trouble."""
    with _open(raw, shown) as picture:
        picture.load()
        return _jpeg(picture.convert("RGB").resize(size, Image.Resampling.LANCZOS))


def day_taken(raw: bytes, shown: str) -> dt.date | None:
    """The day on which the camera says the picture was taken; None where it does not say. Raises Trouble."""
    with _open(raw, shown) as picture:
        told = picture.getexif().get_ifd(ExifTags.IFD.Exif).get(ExifTags.Base.DateTimeOriginal)
        with contextlib.suppress(ValueError, TypeError):
            return dt.datetime.strptime(str(told)[:10], "%Y:%m:%d").date()
    return None


@contextmanager
def _open(raw: bytes, shown: str) -> Iterator[Image.Image]:
    """The picture in some bytes, its head read and its size looked at. Raises Trouble, also for what goes on inside."""
    _learn_heic(raw, shown)
    try:
        with warnings.catch_warnings():
            warnings.simplefilter("ignore")
            warnings.simplefilter("error", Image.DecompressionBombWarning)
            with Image.open(io.BytesIO(raw), formats=[*FORMATS, *_heif()]) as picture:
                _refuse_unfit(picture, shown)
                yield picture
    except Trouble:
        raise
    except (Image.DecompressionBombWarning, Image.DecompressionBombError):
        raise _too_many(shown) from None
    except UnidentifiedImageError:
        raise Trouble(
            say("{shown} is no picture that can be read", shown=shown), say("Pictures are JPEG, PNG, WebP or HEIC")
        ) from None
    except Exception as fault:
        # Decoders of files from anywhere raise errors of every kind; none of them is the project's own.
        raise Trouble(
            say("{shown} is damaged or cut short ({fault})", shown=shown, fault=str(fault)[:80]), _ANOTHER
        ) from None


def _refuse_unfit(picture: Image.Image, shown: str) -> None:
    if picture.width * picture.height > MOST_PIXELS:
        raise _too_many(shown)
    if picture.format in _MAY_MOVE and getattr(picture, "n_frames", 1) > 1:
        raise Trouble(say("{shown} moves", shown=shown), say("Take a still picture of it"))


def _too_many(shown: str) -> Trouble:
    return Trouble(
        say("{shown} has more than {most_pixels} million pixels", shown=shown, most_pixels=MOST_PIXELS // 1000000),
        say("Save it smaller first"),
    )


def _heif() -> list[str]:
    return [name for name in Image.OPEN if name == "HEIF"]


def _learn_heic(raw: bytes, shown: str) -> None:
    """Load the library for HEIC where the bytes are of that kind. Raises Trouble where it is not installed."""
    if raw[4:8] != b"ftyp" or raw[8:12] not in _HEIC:
        return
    try:
        heif = import_module("pillow_heif")
    except ImportError:
        message = say("{shown} is a HEIC picture, and the library that reads those is not installed", shown=shown)
        way_out = say("Install it: pip install 'recordgen[heic]', or let the phone save JPEG")
        raise Trouble(message, way_out) from None
    heif.register_heif_opener(thumbnails=False)


def _without_transparency(picture: Image.Image) -> Image.Image:
    """The picture without see-through parts, which become white, and without a palette."""
    if picture.mode == "P":
        picture = picture.convert("RGBA" if "transparency" in picture.info else "RGB")
    if not picture.has_transparency_data:
        return picture
    with_alpha = picture.convert("RGBA")
    white = Image.new("RGB", picture.size, "white")
    white.paste(with_alpha, mask=with_alpha.getchannel("A"))
    return white


def _in_srgb(picture: Image.Image, profile: bytes | None) -> Image.Image:
    """The picture in sRGB; where its own profile is missing or broken, its numbers are taken for sRGB as they are."""
    if profile:
        with contextlib.suppress(ImageCms.PyCMSError, OSError, ValueError):
            own = ImageCms.ImageCmsProfile(io.BytesIO(profile))
            relative = ImageCms.Intent.RELATIVE_COLORIMETRIC
            srgb = ImageCms.createProfile("sRGB")
            return cast(Image.Image, ImageCms.profileToProfile(picture, own, srgb, relative, outputMode="RGB"))
    if picture.mode.startswith("I"):
        picture = picture.point(lambda value: value / 256).convert("L")
    return picture.convert("RGB")


def _jpeg(picture: Image.Image) -> bytes:
    """The bytes of a baseline JPEG of the pixels alone: nothing that was told of the picture goes with them."""
    plain = Image.new("RGB", picture.size)
    plain.paste(picture)
    out = io.BytesIO()
    plain.save(out, "JPEG", quality=QUALITY, optimize=True, progressive=False, subsampling="4:2:0")
    return out.getvalue()

"""The photographs of a horse: their names and order, and what is wrong with those in the records."""

from __future__ import annotations

import datetime as dt
import io
import os
from pathlib import Path

import pytest
from PIL import Image

from recordgen.problems import Problem
from recordgen.records.load.practice import read_practice
from recordgen.records.models.names import FEET, MOMENTS, VIEWS
from recordgen.records.photos.jpeg import NotAPicture, headers, picture_alone
from recordgen.records.photos.names import Subject, parse_photo_name
from tests.support.photographs import EXIF, IPTC, PROFILE, XMP, drawn, file_of, segment, with_segments
from tests.support.practice_folders import TODAY, build, line_of, practice

FOLDER = "willowmere/bramble/photos"
NAME = "2026-10-14-left-fore-sole-before.jpg"
PLAIN = file_of(drawn(), optimize=True)


def problems(folder: Path, files: dict[str, bytes]) -> list[Problem]:
    """Problems of a practice whose one horse has these photographs."""
    return list(read_practice(build(folder, {f"{FOLDER}/{name}": raw for name, raw in files.items()}), TODAY)[1])


def test_a_name_tells_what_its_photograph_shows() -> None:
    """Every foot, view and moment, alone or as one of several."""
    subjects = [Subject(dt.date(2026, 10, 14), foot, view, when) for foot in FEET for view in VIEWS for when in MOMENTS]

    assert [parse_photo_name(one.file_name(12)) for one in subjects] == [(one, 12) for one in subjects]
    assert parse_photo_name(NAME) == (Subject(dt.date(2026, 10, 14), "left_fore", "sole", "before"), 1)
    assert parse_photo_name("2026-10-14-left-fore-sole.jpg") == (
        Subject(dt.date(2026, 10, 14), "left_fore", "sole", "found"),
        1,
    )


@pytest.mark.parametrize(
    "name",
    [
        "IMG_0412.jpg",
        "2026-10-14.jpg",
        "2026-10-14-left-fore.jpg",
        "2026-02-30-left-fore-sole.jpg",
        "2026-10-14-left-fore-top.jpg",
        "2026-10-14-near-fore-sole.jpg",
        "2026-10-14-left-fore-sole-before-1.jpg",
        "2026-10-14-left-fore-sole-before-100.jpg",
        "2026-10-14-left-fore-sole-before.JPG",
        "2026-10-14-left-fore-sole-before.png",
        "2026-10-14-left-fore-sole-before.jpg\n",
    ],
)
def test_other_names_tell_nothing(name: str) -> None:
    """One spelling, so that names sort and pages need no table."""
    assert parse_photo_name(name) is None


def test_a_horse_has_its_photographs_in_order(tmp_path: Path) -> None:
    """By day, foot, view, moment and number, with their sizes."""
    names = [
        "2026-10-13-right-hind-side.jpg",
        "2026-10-14-left-fore-sole-before.jpg",
        "2026-10-14-left-fore-sole-before-2.jpg",
        "2026-10-14-left-fore-sole-before-10.jpg",
        "2026-10-14-left-fore-sole-after.jpg",
        "2026-10-14-right-fore-side-found.jpg",
    ]
    photos = practice(tmp_path, {f"{FOLDER}/{name}": PLAIN for name in sorted(names)}).horses[0].photos

    assert [photo.file.name for photo in photos] == names
    assert {(photo.width, photo.height) for photo in photos} == {(320, 240)}


@pytest.mark.parametrize(
    ("more", "told"),
    [
        (segment(0xE1, EXIF), "EXIF"),
        (segment(0xE1, XMP), "XMP"),
        (segment(0xE2, PROFILE), "a colour profile"),
        (segment(0xE2, b"MPF\0more"), "more pictures"),
        (segment(0xED, IPTC), "IPTC"),
        (segment(0xFE, b"at the yew tree"), "a comment"),
        (segment(0xE0, b"JFXX\0\x10small"), "a small copy of itself"),
        (segment(0xE4, b"?"), "a segment of kind E4"),
        (segment(0xE1, EXIF + bytes(60_000)) + segment(0xFE, b"x"), "EXIF and a comment"),
    ],
    ids=["exif", "xmp", "profile", "more", "iptc", "comment", "small", "other", "large"],
)
def test_what_a_photograph_carries_is_an_error(tmp_path: Path, more: bytes, told: str) -> None:
    """With its file and the command that takes it out."""
    (problem,) = problems(tmp_path, {NAME: with_segments(PLAIN, more)})

    assert (problem.level, problem.place.path) == ("error", f"{tmp_path.name}/{FOLDER}/{NAME}")
    assert problem.message.startswith(f"the photograph carries {told}, which may tell")
    assert problem.way_out == f"Keep it plain: recordgen photo --clean {FOLDER}/{NAME}"


@pytest.mark.parametrize(
    ("name", "raw", "told"),
    [
        ("IMG_0412.jpg", PLAIN, "the name does not say which day, foot and view the photograph shows"),
        ("2026-12-02-left-fore-sole.jpg", PLAIN, "the date 2026-12-02 is in the future"),
        (NAME, b"x", "this is no JPEG picture"),
        (NAME, b"", "this is no JPEG picture"),
        (NAME, file_of(drawn(), "PNG"), "this is no JPEG picture"),
        (NAME, PLAIN[:300], "the picture is cut short, or something stands behind it in the file"),
        (NAME, PLAIN[:20], "the picture is cut short"),
        (NAME, PLAIN + b"a film", "the picture is cut short, or something stands behind it in the file"),
        (NAME, file_of(Image.new("RGB", (4001, 40))), "the photograph has more than 4000 pixels on a side"),
        (NAME, PLAIN + bytes(3_000_000), "the photograph is larger than 3 MB"),
        (NAME, PLAIN.replace(b"\xff\xc0", b"\xff\xc9", 1), "this is a kind of JPEG that no browser shows"),
    ],
    ids=["name", "future", "text", "empty", "png", "cut", "cut head", "film", "pixels", "bytes", "kind"],
)
def test_what_cannot_be_kept_is_an_error(tmp_path: Path, name: str, raw: bytes, told: str) -> None:
    """With its file and a way out."""
    (problem,) = problems(tmp_path, {name: raw})

    assert (problem.level, problem.place.path, problem.message) == ("error", f"{tmp_path.name}/{FOLDER}/{name}", told)
    assert problem.way_out


@pytest.mark.parametrize("progressive", [False, True])
def test_a_plain_photograph_is_passed(tmp_path: Path, progressive: bool) -> None:
    """Whoever made it."""
    assert problems(tmp_path, {NAME: file_of(drawn(), progressive=progressive)}) == []


def test_other_things_among_the_photographs_are_warned_of(tmp_path: Path) -> None:
    """Notes and folders; what systems leave behind is passed over."""
    found = problems(tmp_path, {"notes.txt": b"x", "old/a.jpg": b"x", ".DS_Store": b"x", "Thumbs.db": b"x"})

    assert [(one.level, one.place.path.rpartition("/")[2]) for one in found] == [
        ("warning", "notes.txt"),
        ("warning", "old"),
    ]


@pytest.mark.parametrize("folder", ["photos", "willowmere/photos"])
def test_photographs_outside_a_horses_folder_are_warned_of(tmp_path: Path, folder: str) -> None:
    """They are not shown, and not looked through."""
    (problem,) = read_practice(build(tmp_path, {f"{folder}/{NAME}": PLAIN}), TODAY)[1]

    assert line_of(problem) == (
        f"{tmp_path.name}/{folder}:1:1: warning: photographs are not read here. "
        "They lie in a horse's folder, in photos."
    )


def test_links_that_lead_out_are_refused(tmp_path: Path) -> None:
    """A photograph of another folder, and the whole folder of another's."""
    folder = build(tmp_path / "records", {f"{FOLDER}/{NAME}": PLAIN, "willowmere/otter/horse.yaml": "name: Otter\n"})
    (tmp_path / NAME).write_bytes(PLAIN)
    os.symlink(tmp_path / NAME, folder / FOLDER / NAME.replace("before", "after"))
    os.symlink(NAME, folder / FOLDER / NAME.replace("before", "found"))
    os.symlink(tmp_path, folder / "willowmere/otter/photos")
    _, found = read_practice(folder, TODAY)

    assert [(one.place.path, one.message) for one in found] == [
        (f"records/{FOLDER}/{NAME.replace('before', 'after')}", "this link leads out of the records"),
        ("records/willowmere/otter/photos", "this link leads out of the records"),
    ]


def test_of_a_plain_photograph_only_the_head_is_read() -> None:
    """A check of thousands stays quick."""

    class Counting(io.BytesIO):
        count = 0

        def read(self, size: int | None = -1) -> bytes:
            found = super().read(size)
            self.count += len(found)
            return found

    noise = Image.effect_noise((1600, 1200), 90).convert("RGB")
    file = Counting(file_of(noise))

    assert headers(file).width == 1600
    assert file.count < 5000 < len(file.getvalue())


def test_the_picture_alone_is_kept_bit_for_bit() -> None:
    """Whatever stands before, between and behind its scans."""
    for progressive in (False, True):
        plain = file_of(drawn(), progressive=progressive)
        last = plain.rindex(b"\xff\xda")
        dirty = plain[:last] + segment(0xFE, b"between") + plain[last:] + b"behind"
        dirty = with_segments(dirty, segment(0xE1, EXIF), segment(0xED, IPTC))

        assert picture_alone(dirty) == plain


@pytest.mark.parametrize("length", range(0, len(PLAIN), 37))
def test_a_file_cut_anywhere_is_told_and_breaks_nothing(length: int) -> None:
    """No other error comes out."""
    with pytest.raises(NotAPicture):
        picture_alone(PLAIN[:length])

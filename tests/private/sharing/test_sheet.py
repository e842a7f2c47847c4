"""The photographs that go with a horse's sheet."""

from __future__ import annotations

import base64
import datetime as dt
import io
from pathlib import Path

import pytest
from PIL import Image

from recordgen.hoof.naming import Naming
from recordgen.private.sharing.sheet import photographs
from recordgen.problems import Trouble
from recordgen.records.load.everything import read_whole
from recordgen.records.photos.files import Photo
from recordgen.records.photos.names import Subject
from tests.conftest import RECORDS, TODAY

DAY = dt.date(2026, 10, 14)


@pytest.fixture(scope="module")
def naming() -> Naming:
    """The words of the demo practice."""
    whole = read_whole(RECORDS, TODAY, "willowmere")
    return Naming.of(whole.practice.file, whole.reference.phrases)


def photo(folder: Path, size: tuple[int, int] = (1600, 1200), day: dt.date = DAY) -> Photo:
    """A photograph that says where it was taken."""
    subject = Subject(day, "left_fore", "sole", "before")
    told = Image.Exif()
    told[0x010E] = "in the yard at Willowmere"
    Image.new("RGB", size, "tan").save(folder / subject.file_name(), exif=told)
    return Photo(subject, 1, folder / subject.file_name(), *size)


def picture_in(address: str) -> bytes:
    """The picture in a data: address."""
    kind, _, inside = address.partition(";base64,")
    assert kind == "data:image/jpeg"
    return base64.b64decode(inside)


def test_only_the_chosen_days_go_with_it(tmp_path: Path, naming: Naming) -> None:
    """Each with its day and its words."""
    photos = [photo(tmp_path, day=dt.date(2026, 9, 2)), photo(tmp_path)]
    (found,) = photographs(photos, [DAY], naming)

    assert (found.day, found.words) == (DAY, "left fore, from below, before the trim, 14 October 2026")


def test_without_a_chosen_day_none_goes_with_it(tmp_path: Path, naming: Naming) -> None:
    """The sheet alone is the usual thing."""
    assert list(photographs([photo(tmp_path)], [], naming)) == []


@pytest.mark.parametrize(("size", "made"), [((1600, 1200), (1000, 750)), ((300, 900), (300, 900))])
def test_they_are_small_and_say_nothing_else(
    tmp_path: Path, naming: Naming, size: tuple[int, int], made: tuple[int, int]
) -> None:
    """At most 1000 pixels a side, and no word of what the camera or somebody wrote into the file."""
    kept = photo(tmp_path, size)
    (found,) = photographs([kept], [DAY], naming)
    inside = picture_in(found.address)

    assert b"in the yard" in kept.file.read_bytes()
    assert b"in the yard" not in inside
    assert Image.open(io.BytesIO(inside)).size == made


@pytest.mark.parametrize("days", [[], [DAY]])
def test_a_day_without_photographs_is_told(tmp_path: Path, naming: Naming, days: list[dt.date]) -> None:
    """With the days that have some."""
    with pytest.raises(Trouble, match="there is no photograph of 2026-11-18") as told:
        list(photographs([photo(tmp_path, day=day) for day in days], [dt.date(2026, 11, 18)], naming))

    assert ("of 2026-10-14" in told.value.way_out) == bool(days)

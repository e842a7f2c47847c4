"""The photographs of a horse that go with its sheet, small and with nothing in the file but the picture."""

from __future__ import annotations

import base64
from collections.abc import Iterator, Sequence
from datetime import date

from recordgen.days import listed
from recordgen.hoof.naming import Naming
from recordgen.hoof.sheet import SheetPicture
from recordgen.problems import Trouble
from recordgen.records.photo_reading import NotAPicture, picture_alone
from recordgen.records.photo_taking import resized
from recordgen.records.photos import Photo

# Enough to look closely on a phone or on paper; nine of them make about 1.3 MB.
LONGEST_SIDE = 1000


def photographs(photos: Sequence[Photo], days: Sequence[date], naming: Naming) -> Iterator[SheetPicture]:
    """The photographs of some days, in the order of the record, each with its words and its picture inside.

    Raises Trouble for a day without photographs, and for a file that cannot be read.
    """
    known = dict.fromkeys(photo.subject.day for photo in photos)
    for day in days:
        if day not in known:
            there = listed([str(one) for one in known])
            way_out = f"There are photographs of {there}" if there else "There are none; recordgen photo adds some"
            raise Trouble(f"there is no photograph of {day}", way_out)
    for photo in photos:
        if photo.subject.day in days:
            yield _pictured(photo, naming)


def _pictured(photo: Photo, naming: Naming) -> SheetPicture:
    words = naming.phrase(
        "photo_alt",
        foot=naming.foot(photo.subject.foot),
        view=naming.phrase(f"photo_view_{photo.subject.view}"),
        moment=naming.phrase(f"photo_moment_{photo.subject.moment}"),
        day=naming.day(photo.subject.day),
    )
    return SheetPicture(photo.subject.day, words, f"data:image/jpeg;base64,{base64.b64encode(_small(photo)).decode()}")


def _small(photo: Photo) -> bytes:
    try:
        stored = picture_alone(photo.file.read_bytes())
    except (OSError, NotAPicture) as why:
        raise Trouble(f"{photo.file} cannot be read ({why})", "Run recordgen check") from None
    share = LONGEST_SIDE / max(photo.width, photo.height)
    if share >= 1:
        return stored
    return resized(stored, (max(1, round(photo.width * share)), max(1, round(photo.height * share))), photo.file.name)

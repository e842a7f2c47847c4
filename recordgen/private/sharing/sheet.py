"""One horse's sheet for the vet and its photographs, with nothing in them of any other horse."""

from __future__ import annotations

import base64
import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from datetime import date

from recordgen.cache.entries import user_cache
from recordgen.hoof.context import Context
from recordgen.hoof.export.sheet import SheetPicture, sheet_of
from recordgen.hoof.export.sheet_json import edition_of
from recordgen.hoof.naming import Naming
from recordgen.hoof.summary import summarise
from recordgen.problems import Trouble
from recordgen.records.load.everything import Whole
from recordgen.records.models.practice import HorseRecord
from recordgen.records.photos.convert import resized
from recordgen.records.photos.files import Photo
from recordgen.records.photos.jpeg import NotAPicture, picture_alone
from recordgen.sentences import listed, say
from recordgen.site.amendments import bare_amendments
from recordgen.site.build_context import BuildContext
from recordgen.site.sheet import sheet_alone


@dataclass(frozen=True)
class HorseSheet:
    """A whole HTML document that needs no other file, and the short name of all that it says."""

    html: str
    edition: str


def horse_sheet(
    whole: Whole,
    horse: HorseRecord,
    ways: Context,
    today: dt.date,
    pictures: Sequence[SheetPicture] = (),
    why: str | None = None,
) -> HorseSheet:
    """The sheet of one horse as of a day.

    pictures: photographs and tracings to show, each with a data: address. why: why it is sent. Raises Trouble where a
    template of the practice's own cannot be filled in.
    """
    stable = next(one.stable for one in whole.practice.stables if one.slug == horse.stable)
    summary = summarise(horse, ways, today)
    sheet = sheet_of(summary, stable, ways, bare_amendments(whole, summary, ways.naming), pictures, why)
    context = BuildContext(whole.practice.folder, ways, today, user_cache())
    return HorseSheet(sheet_alone(sheet, context), edition_of(sheet))


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
            way_out = (
                say("There are photographs of {there}", there=there)
                if there
                else say("There are none; recordgen photo adds some")
            )
            raise Trouble(say("there is no photograph of {day}", day=day), way_out)
    for photo in photos:
        if photo.subject.day in days:
            yield _sheet_picture(photo, naming)


def _sheet_picture(photo: Photo, naming: Naming) -> SheetPicture:
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
        raise Trouble(
            say("{file} cannot be read ({why})", file=photo.file, why=why), say("Run recordgen check")
        ) from None
    share = LONGEST_SIDE / max(photo.width, photo.height)
    if share >= 1:
        return stored
    return resized(stored, (max(1, round(photo.width * share)), max(1, round(photo.height * share))), photo.file.name)

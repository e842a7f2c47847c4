"""The photographs of a horse: their names, their order, and what is wrong with those in the records.

They lie in `<stable>/<horse>/photos/`, named by day, foot, view and moment: `2026-10-14-left-fore-sole-before.jpg`; a
second one of the same is `2026-10-14-left-fore-sole-before-2.jpg`.
"""

from __future__ import annotations

import datetime as dt
import os
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path

from recordgen.problems import Place, warning
from recordgen.records.load.folders import LEFT_BEHIND, PICTURES, Walk
from recordgen.records.models.visit import Visit
from recordgen.records.photos.jpeg import Headers, NotAPicture, headers
from recordgen.records.photos.names import Subject, parse_photo_name
from recordgen.sentences import listed, say

PHOTOS = "photos"
# More than a page needs; a photograph added here has at most 1600 pixels and some hundred thousand bytes.
MOST_PIXELS_A_SIDE = 4000
MOST_BYTES = 3_000_000


@dataclass(frozen=True)
class Photo:
    """One photograph in the records: what it shows, the number among those that show the same, file, size in pixels."""

    subject: Subject
    number: int
    file: Path
    width: int
    height: int


def read_photos(walk: Walk, horse: Path, today: dt.date) -> tuple[Photo, ...]:
    """The photographs in a horse's folder, in order; what is wrong with them is kept in the walk's problems.

    horse: its folder. today: no photograph is of a later day. Of each file only the head is read.
    """
    folder = horse / PHOTOS
    if not os.path.isdir(folder) or walk.leads_out(folder):
        return ()
    found = [photo for path in walk.entries(folder) for photo in _photo(walk, path, today)]
    return tuple(sorted(found, key=lambda photo: (photo.subject.place, photo.number)))


def warn_without_visit(walk: Walk, photos: Sequence[Photo], visits: Sequence[Visit]) -> None:
    """Tell of the photographs of a day without a visit, and of a foot that the visits of its day do not name.

    visits: those of the same horse. A visit that names no foot yet is one that was only begun.
    """
    for photo in photos:
        day, foot = photo.subject.day, photo.subject.foot
        feet = [set(visit.feet) for visit in visits if visit.date == day]
        place = Place(walk.shown(photo.file))
        if not feet:
            message = say("there is no visit on {day}, so this photograph belongs to none", day=day)
            walk.problems.add(
                warning(place, "photo-without-visit", message, say("Write the visit, or correct the day in its name"))
            )
        elif all(feet) and foot not in set().union(*feet):
            message = say(
                "it shows the {foot}, of which the visit of {day} says nothing", foot=foot.replace("_", " "), day=day
            )
            walk.problems.add(
                warning(place, "photo-foot-not-recorded", message, say("Look whether it is the right foot"))
            )


def _photo(walk: Walk, path: Path, today: dt.date) -> Iterator[Photo]:
    if LEFT_BEHIND.fullmatch(path.name) or walk.leads_out(path):
        return
    if not os.path.isfile(path) or path.suffix.lower() not in PICTURES:
        walk.problems.add(
            warning(
                Place(walk.shown(path)),
                "photo-not-read",
                say("this is no photograph and is not read"),
                say("Move it elsewhere"),
            )
        )
        return
    told = _subject(walk, path, today)
    looked = _headers(walk, path)
    if told and looked:
        yield Photo(*told, path, looked.width, looked.height)


def _subject(walk: Walk, path: Path, today: dt.date) -> tuple[Subject, int] | None:
    told = parse_photo_name(path.name)
    if told is None:
        way_out = say("Name it like 2026-10-14-left-fore-sole-before.jpg")
        walk.tell(
            path, "photo-name", say("the name does not say which day, foot and view the photograph shows"), way_out
        )
    elif told[0].day > today:
        walk.tell(
            path,
            "photo-date-future",
            say("the date {day} is in the future", day=told[0].day),
            say("Correct the date in its name"),
        )
    return told


def _headers(walk: Walk, path: Path) -> Headers | None:
    """Facts in the head of a file; None, and a problem, where it is no photograph that can be kept."""
    clean = say("Keep it plain: recordgen photo --clean {file}", file=path.relative_to(walk.root).as_posix())
    try:
        with path.open("rb") as file:
            if os.fstat(file.fileno()).st_size > MOST_BYTES:
                walk.tell(
                    path,
                    "photo-too-large",
                    say("the photograph is larger than {most_bytes} MB", most_bytes=MOST_BYTES // 1000000),
                    clean,
                )
                return None
            found = headers(file)
    except OSError:
        walk.tell(path, "file-not-opened", say("the file cannot be opened"), say("Look whether you may open it"))
        return None
    except NotAPicture as why:
        walk.tell(path, "photo-damaged", why.args[0], say("Take it out and add the picture anew: recordgen photo"))
        return None
    if found.carries:
        message = say(
            "the photograph carries {carries}, which may tell where, when and by whom it was taken",
            carries=listed(found.carries),
        )
        walk.tell(path, "photo-tells-where", message, clean)
    if max(found.width, found.height) > MOST_PIXELS_A_SIDE:
        walk.tell(
            path,
            "photo-too-many-pixels",
            say(
                "the photograph has more than {most_pixels_a_side} pixels on a side",
                most_pixels_a_side=MOST_PIXELS_A_SIDE,
            ),
            clean,
        )
    return found

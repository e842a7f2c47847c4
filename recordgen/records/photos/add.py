"""Adding photographs to a horse's records, and cleaning those that lie there. The original is never touched."""

from __future__ import annotations

import datetime as dt
import io
import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from recordgen.files import write_new, write_whole, writing
from recordgen.nearest import nearest
from recordgen.problems import Trouble, quoted
from recordgen.records.load.folders import SLUG
from recordgen.records.models.names import Foot, Moment, View
from recordgen.records.photos.convert import day_taken, plain_photo
from recordgen.records.photos.files import MOST_BYTES, MOST_PIXELS_A_SIDE, PHOTOS
from recordgen.records.photos.jpeg import NotAPicture, headers, picture_alone
from recordgen.records.photos.names import Subject, parse_photo_name
from recordgen.sentences import Said, say

LARGEST_FILE_BYTES = 100_000_000
MOST_ALIKE = 99
NOT_ADDED = say("The photograph was not added")


@dataclass(frozen=True)
class OnTheLine:
    """Facts given when adding photographs; None where the name of the file or the camera tells."""

    day: dt.date | None = None
    foot: Foot | None = None
    view: View | None = None
    moment: Moment | None = None


def horse_folder(records: Path, which: str) -> Path:
    """The folder of a horse named as stable/horse. Raises Trouble where there is none."""
    stable, _, horse = which.partition("/")
    folder = records / stable / horse
    if SLUG.fullmatch(stable) and SLUG.fullmatch(horse) and (folder / "horse.yaml").is_file():
        return folder
    raise Trouble(say("there is no horse {which}", which=quoted(which)), _horse_meant(records, stable, horse))


def _horse_meant(records: Path, stable: str, horse: str) -> Said:
    """The way out: the nearest horse of the nearest stable, or the horses to choose from."""
    here = sorted(path.parent for path in records.glob("*/*/horse.yaml"))
    meant = nearest(stable, {path.parent.name for path in here})
    there = [path for path in here if path.parent.name == meant]
    if near := nearest(horse, [path.name for path in there]):
        return say("Did you mean {name}?", name=f"{meant}/{near}")
    names = ", ".join(path.relative_to(records).as_posix() for path in (there or here)[:20])
    return say("The horses there are: {names}", names=names or say("none"))


def add_photo(records: Path, horse: Path, file: Path, said: OnTheLine, today: dt.date) -> tuple[Path, bool]:
    """Add one picture to a horse's photographs: its new file, and False where it was there already.

    records: the practice's folder. horse: the horse's folder in it. file: a picture from anywhere.
    today: no photograph is of a later day. Raises Trouble where it cannot be added.
    """
    raw, shown = _original(file), quoted(file.name)
    subject = _subject(file, raw, said, today)
    return keep_photo(records, horse, subject, plain_photo(raw, shown))


def keep_photo(records: Path, horse: Path, subject: Subject, made: bytes) -> tuple[Path, bool]:
    """Keep a plain photograph under the next name that is free: its file, and False where it was there already.

    records: the practice's folder. horse: the horse's folder in it. Raises Trouble where it cannot be kept.
    """
    folder = horse / PHOTOS
    if not Path(os.path.realpath(folder)).is_relative_to(os.path.realpath(records)):
        raise Trouble(
            say("{folder} leads out of the records", folder=folder),
            say("Make a folder of its own in the place of the link"),
        )
    for number in range(1, MOST_ALIKE + 1):
        path = folder / subject.file_name(number)
        with writing(path, NOT_ADDED):
            folder.mkdir(exist_ok=True)
            if write_new(path, made):
                return path, True
        if path.is_file() and path.read_bytes() == made:
            return path, False
    raise _too_many_alike()


def next_name(horse: Path, subject: Subject, made: bytes, others: Mapping[str, bytes]) -> str:
    """The name under which `keep_photo` would keep a plain photograph, beside others that are about to be kept.

    horse: the horse's folder. others: by their names. Raises Trouble where no name is free.
    """
    for number in range(1, MOST_ALIKE + 1):
        name = subject.file_name(number)
        path = horse / PHOTOS / name
        there = others.get(name) or (path.read_bytes() if path.is_file() else None)
        if there == made or (there is None and not os.path.lexists(path)):
            return name
    raise _too_many_alike()


def _too_many_alike() -> Trouble:
    return Trouble(
        say("there are {most_alike} photographs of this already", most_alike=MOST_ALIKE), say("Take some out first")
    )


def clean_photo(records: Path, file: Path) -> tuple[Path, bool]:
    """Make a photograph in the records plain, in its place: its file, and False where it was plain already.

    file: as seen from here, or from the practice's folder. Raises Trouble where it is none.
    """
    path = file if os.path.lexists(file) else records / file
    if not Path(os.path.realpath(path)).is_relative_to(os.path.realpath(records)):
        raise Trouble(
            say("{path} lies outside the records", path=path), say("Add it instead: recordgen photo STABLE/HORSE FILE")
        )
    if path.suffix.lower() not in (".jpg", ".jpeg"):
        raise Trouble(
            say("{name} is not named as a JPEG", name=quoted(path.name)),
            say("Add it anew: recordgen photo STABLE/HORSE FILE"),
        )
    raw = _original(path)
    if _is_plain(raw):
        return path, False
    made = plain_photo(raw, quoted(path.name))
    with writing(path, say("The photograph stays as it was")):
        write_whole(path, made)
    return path, True


def _original(file: Path) -> bytes:
    shown = quoted(file.name)
    if os.path.islink(file):
        folder = os.path.realpath(file.parent)
        if not Path(os.path.realpath(file)).is_relative_to(folder):
            raise Trouble(
                say("{shown} is a link that leads out of its folder", shown=shown), say("Name the picture itself")
            )
    if os.path.isdir(file):
        raise Trouble(say("{name} is a folder", name=quoted(file.absolute().name)), say("Name the pictures in it"))
    if not os.path.isfile(file):
        raise Trouble(
            say("there is no file {file}", file=quoted(str(file), 200)), say("Look at its name and its folder")
        )
    if file.stat().st_size > LARGEST_FILE_BYTES:
        raise Trouble(
            say(
                "{shown} is larger than {largest_file_bytes} MB",
                shown=shown,
                largest_file_bytes=LARGEST_FILE_BYTES // 1000000,
            ),
            say("Save it smaller first"),
        )
    try:
        return file.read_bytes()
    except OSError:
        raise Trouble(say("{shown} cannot be opened", shown=shown), say("Look whether you may open it")) from None


def _subject(file: Path, raw: bytes, said: OnTheLine, today: dt.date) -> Subject:
    """The subject of a picture: as was said, else as its name tells, else on the day the camera wrote, else today."""
    told = parse_photo_name(file.with_suffix(".jpg").name)
    by_name = told[0] if told else None
    foot, view = said.foot or (by_name and by_name.foot), said.view or (by_name and by_name.view)
    if not foot or not view:
        raise Trouble(
            say("{file} does not tell the foot and the view", file=quoted(file.name)),
            say("Say them with --foot and --view"),
        )
    day = said.day or (by_name.day if by_name else day_taken(raw, quoted(file.name))) or today
    if day > today:
        raise Trouble(
            say("the date {day} of {file} is in the future", day=day, file=quoted(file.name)),
            say("Say the day with --date"),
        )
    return Subject(day, foot, view, said.moment or (by_name.moment if by_name else "found"))


def _is_plain(raw: bytes) -> bool:
    try:
        found = headers(io.BytesIO(raw))
        small = len(raw) <= MOST_BYTES and max(found.width, found.height) <= MOST_PIXELS_A_SIDE
        return small and picture_alone(raw) == raw
    except NotAPicture:
        return False

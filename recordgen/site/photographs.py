"""The photographs of a horse's page: before and after side by side, and their files in two sizes.

`album` arranges what a page shows; `PhotoFiles` holds the files that go with it. Neither looks at a picture until its
bytes are asked for, since a practice has more of them than a computer has memory.
"""

from __future__ import annotations

import hashlib
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import groupby
from pathlib import Path

import PIL

from recordgen.cache import spelling
from recordgen.cache.entries import Cache
from recordgen.problems import Trouble
from recordgen.records.models.names import Foot, Moment, View
from recordgen.records.photos.convert import QUALITY, resized
from recordgen.records.photos.files import Photo
from recordgen.records.photos.jpeg import NotAPicture, picture_alone
from recordgen.records.photos.names import Subject
from recordgen.sentences import say

# Half the width of a phone at three pixels a point; what a page loads first.
SMALL_WIDTH = 560
# So many days with photographs are shown, the newest first, and the first of all to compare with.
MOST_DAYS = 8
KIND = "photographs"


@dataclass(frozen=True)
class PhotoCopy:
    """One photograph in one size: its path in the site, its address as seen from the page, and its size in pixels."""

    path: str
    address: str
    file: Path
    width: int
    height: int
    is_stored: bool


@dataclass(frozen=True)
class ShownPhoto:
    """One photograph on a page, in its sizes, the smallest first."""

    subject: Subject
    copies: tuple[PhotoCopy, ...]

    @property
    def small(self) -> PhotoCopy:
        """The contents of the page."""
        return self.copies[0]

    @property
    def large(self) -> PhotoCopy:
        """The place that opens when it is touched."""
        return self.copies[-1]

    @property
    def srcset(self) -> str:
        """The sizes a browser may choose from."""
        return ", ".join(f"{copy.address} {copy.width}w" for copy in self.copies)


@dataclass(frozen=True)
class BeforeAfter:
    """The same foot from the same side before and after a trim."""

    foot: Foot
    view: View
    before: ShownPhoto
    after: ShownPhoto


@dataclass(frozen=True)
class PhotoDay:
    """The photographs of one day: pairs, and those that have no counterpart."""

    day: date
    pairs: tuple[BeforeAfter, ...]
    singles: tuple[ShownPhoto, ...]

    @property
    def shown(self) -> tuple[ShownPhoto, ...]:
        """All photographs of the day."""
        return (*(one for pair in self.pairs for one in (pair.before, pair.after)), *self.singles)


@dataclass(frozen=True)
class Album:
    """The days shown on a horse's page: the latest day first; how many days are left out."""

    days: tuple[PhotoDay, ...] = ()
    days_left_out: int = 0

    @property
    def shown(self) -> tuple[ShownPhoto, ...]:
        """All photographs of the page."""
        return tuple(one for day in self.days for one in day.shown)


def album(photos: Sequence[Photo], page: str, most_days: int = MOST_DAYS) -> Album:
    """The photographs of a horse as its page shows them; empty where there are none.

    photos: as the record holds them, in order. page: the page's uri, such as horses/bramble.md; the files lie in a
    folder beside it, horses/bramble/, and their names tell day, foot, view and moment.
    """
    by_day = {day: list(held) for day, held in groupby(photos, key=lambda photo: photo.subject.day)}
    newest = sorted(by_day, reverse=True)
    wanted = list(dict.fromkeys([*newest[:most_days], *newest[-1:]]))
    folder = page.removesuffix(".md")
    return Album(tuple(_day(day, by_day[day], folder) for day in wanted), len(newest) - len(wanted))


def _day(day: date, photos: Iterable[Photo], folder: str) -> PhotoDay:
    pairs, singles = [], []
    for _, held in groupby(photos, key=lambda photo: (photo.subject.foot, photo.subject.view)):
        by_moment: dict[Moment, list[ShownPhoto]] = {}
        for photo in held:
            alike = by_moment.setdefault(photo.subject.moment, [])
            alike.append(_show(photo, len(alike) + 1, folder))
        before, after = by_moment.get("before", []), by_moment.get("after", [])
        both = min(len(before), len(after))
        pairs += [
            BeforeAfter(one.subject.foot, one.subject.view, one, other)
            for one, other in zip(before, after, strict=False)
        ]
        singles += [*by_moment.get("found", []), *before[both:], *after[both:]]
    return PhotoDay(day, tuple(pairs), tuple(singles))


def _show(photo: Photo, number: int, folder: str) -> ShownPhoto:
    name = photo.subject.file_name(number)
    large = _copy(photo, folder, name, photo.width)
    if photo.width <= SMALL_WIDTH:
        return ShownPhoto(photo.subject, (large,))
    return ShownPhoto(photo.subject, (_copy(photo, folder, name.replace(".jpg", "-small.jpg"), SMALL_WIDTH), large))


def _copy(photo: Photo, folder: str, name: str, width: int) -> PhotoCopy:
    height = max(1, round(photo.height * width / photo.width))
    address = f"{folder.rpartition('/')[2]}/{name}"
    return PhotoCopy(f"{folder}/{name}", address, photo.file, width, height, width == photo.width)


class PhotoFiles(Mapping[str, bytes]):
    """The files of a site by their paths; a photograph is read, or made and kept, each time it is asked for."""

    def __init__(self, albums: Iterable[Album], kept: Cache | None, others: Mapping[str, bytes] | None = None) -> None:
        """The photographs of some albums, and the other files of the site.

        kept: the cache of small ones, if any.
        """
        self._others = dict(others or {})
        self._copies = {copy.path: copy for one in albums for shown in one.shown for copy in shown.copies}
        self._kept = kept or Cache(None)

    def __len__(self) -> int:
        return len(self._others) + len(self._copies)

    def __iter__(self) -> Iterator[str]:
        yield from self._others
        yield from self._copies

    def __getitem__(self, path: str) -> bytes:
        """The bytes of a file. Raises Trouble where the stored photograph is gone or cannot be read."""
        if path in self._others:
            return self._others[path]
        copy = self._copies[path]
        try:
            stored = picture_alone(copy.file.read_bytes())
        except (OSError, NotAPicture) as why:
            raise Trouble(
                say("{file} cannot be read ({why})", file=copy.file, why=why), say("Run recordgen check")
            ) from None
        return stored if copy.is_stored else self._small(copy, stored)

    def _small(self, copy: PhotoCopy, stored: bytes) -> bytes:
        key = key_of(stored, copy)
        made = self._kept.get(KIND, key)
        if made is None:
            made = resized(stored, (copy.width, copy.height), copy.file.name)
            self._kept.put(KIND, key, made)
        return made


def key_of(stored: bytes, copy: PhotoCopy) -> str:
    """The name a small photograph is kept under: a hash of the stored one, its size, and of what makes it."""
    content = hashlib.sha256(stored).hexdigest()
    return spelling.key_of(content, copy.width, copy.height, QUALITY, PIL.__version__)

"""The photographs of an incoming visit, and its tracings, which name theirs by the id that the phone gave it.

In the records a tracing names its photograph's file and that file's checksum. Both are known before anything is
written, since the next free name is; so the visit's text tells them from the first.
"""

from __future__ import annotations

import datetime as dt
import hashlib
from collections.abc import Iterable, Mapping
from dataclasses import dataclass, field
from pathlib import Path
from typing import Any

from pydantic import ValidationError

from recordgen.problems import Problem, Problems, Trouble, warning
from recordgen.records.models.names import MOMENTS, VIEWS, foot_named
from recordgen.records.models.visit import Visit
from recordgen.records.photos.add import next_name
from recordgen.records.photos.convert import plain_photo
from recordgen.records.photos.files import PHOTOS
from recordgen.records.photos.names import Subject
from recordgen.records.receive.incoming import IncomingPhoto, IncomingVisit
from recordgen.records.write.tracing import with_tracing
from recordgen.records.yaml.tree import document
from recordgen.sentences import say

CHANGED = say("the photograph was changed on the phone since it was traced")
LOOK = say("The tracing is kept; look whether its points still fit")


@dataclass(frozen=True)
class Picture:
    """A photograph that is here, or about to be.

    name: of its file. sum: the SHA-256 of that file. sent: of the bytes the phone sent, None where it sent none this
    time. subject, made: what is to be written; None where the file is here already.
    """

    id: str
    name: str
    sum: str
    sent: str | None
    subject: Subject | None = None
    made: bytes = field(default=b"", repr=False)


def pictures_of(
    visit: IncomingVisit, horse: Path, day: dt.date, known: Mapping[str, str], problems: Problems
) -> dict[str, Picture]:
    """The photographs of a visit by their ids, those that are here and those to be written; what is none is told.

    horse: its folder. day: of the visit. known: the file of each photograph that came before, by its id.
    """
    sent = {photo.id: _sum(photo.picture) for photo in visit.photos}
    here = {
        id_: Picture(id_, name, _sum((horse / PHOTOS / name).read_bytes()), sent.get(id_))
        for id_, name in known.items()
        if (horse / PHOTOS / name).is_file()
    }
    return here | new_pictures(visit, horse, day, known, problems)


def new_pictures(
    visit: IncomingVisit, horse: Path, day: dt.date, known: Mapping[str, str], problems: Problems
) -> dict[str, Picture]:
    """Those to be written alone; all else as for `pictures_of`."""
    found: dict[str, Picture] = {}
    planned: dict[str, bytes] = {}
    for photo in visit.photos:
        if photo.id in known:
            continue
        try:
            subject, made = _subject(photo, day), plain_photo(photo.picture, say("the photograph"))
            name = next_name(horse, subject, made, planned)
        except Trouble as trouble:
            problems.add(Problem(photo.place, "photo-not-received", trouble.message, trouble.way_out))
            continue
        planned[name] = made
        found[photo.id] = Picture(photo.id, name, _sum(made), _sum(photo.picture), subject, made)
    return found


def _sum(content: bytes) -> str:
    return hashlib.sha256(content).hexdigest()


def _subject(photo: IncomingPhoto, day: dt.date) -> Subject:
    """Find what a photograph shows. Raises Trouble where it does not tell it in words that are known."""
    foot = foot_named(photo.foot)
    view = next((one for one in VIEWS if one == photo.view), None)
    moment = next((one for one in MOMENTS if one == photo.moment), None)
    if foot is None or view is None or moment is None:
        message = say("the photograph does not tell its foot, view and moment in words that are known here")
        raise Trouble(
            message, say("It stays in the file that was received; add it from the phone's album: recordgen photo")
        )
    return Subject(day, foot, view, moment)


def with_pictures(visit: IncomingVisit, pictures: Mapping[str, Picture], problems: Problems) -> dict[str, Any]:
    """The record of a visit whose tracings name files in the place of ids.

    Without its photograph a tracing keeps the checksum alone, by which it is found again when that comes later. One
    whose photograph is not what was traced keeps the checksum of what was, so that `check` goes on telling it.
    """

    def with_name(tracing: Any) -> Any:
        id_ = tracing.get("file") if isinstance(tracing, Mapping) else None
        if not isinstance(id_, str) or "." in id_:
            return tracing
        picture, traced = pictures.get(id_), tracing.get("sha256")
        if picture is None:
            return {key: value for key, value in tracing.items() if key != "file"}
        if traced and picture.sent and traced != picture.sent:
            problems.add(
                warning(
                    visit.place,
                    "tracing-photo-changed",
                    say("{picture}: {message}", picture=picture.name, message=CHANGED),
                    LOOK,
                )
            )
            return {**tracing, "file": picture.name}
        return {**tracing, "file": picture.name, "sha256": picture.sum}

    return _with_tracings(visit.record, with_name)


def _with_tracings(record: Mapping[str, Any], named: Any) -> dict[str, Any]:
    """A record with each tracing of its feet turned into another; what is in another form stays as it is."""
    feet = record.get("feet")
    if not isinstance(feet, Mapping):
        return dict(record)
    return {**record, "feet": {name: _foot(foot, named) for name, foot in feet.items()}}


def _foot(foot: Any, named: Any) -> Any:
    tracings = foot.get("tracings") if isinstance(foot, Mapping) else None
    return {**foot, "tracings": [named(one) for one in tracings]} if isinstance(tracings, list) else foot


def with_late_pictures(before: bytes, shown: str, pictures: Iterable[Picture]) -> bytes:
    """The file of a visit whose tracings of photographs that came later name these now; nothing else changes.

    before: what the file holds. Where it is no visit, or a tracing stands in a form that cannot be changed alone, it
    stays as it is, byte for byte.
    """
    late = {picture.sent: picture for picture in pictures}
    try:
        text = before.decode()
        visit = Visit.model_validate(document(shown, before).values)
        for foot, found in visit.feet.items():
            for number, tracing in enumerate(found.tracings):
                if tracing.file is None and (picture := late.get(tracing.sha256)):
                    linked = tracing.model_copy(update={"file": picture.name, "sha256": picture.sum})
                    text = with_tracing(text, foot, linked, shown, instead_of=number)
    except (UnicodeDecodeError, ValidationError, Trouble):
        return before
    return text.encode()

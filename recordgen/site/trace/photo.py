"""A photograph that is about to be traced: of which foot and visit it is, and how it was traced before."""

from __future__ import annotations

import hashlib
import io
import os
from dataclasses import dataclass
from pathlib import Path

from recordgen.problems import Trouble, quoted
from recordgen.records.models.lines.points import Size
from recordgen.records.models.names import Foot
from recordgen.records.models.tracing import TracedMoment, TracedView, Tracing
from recordgen.records.models.visit import Visit
from recordgen.records.photos.files import PHOTOS
from recordgen.records.photos.jpeg import NotAPicture, headers
from recordgen.records.photos.names import Subject, parse_photo_name
from recordgen.records.yaml.read import read_partly
from recordgen.sentences import say, spoken_day

TRACED_VIEWS: dict[str, TracedView] = {"side": "side", "front": "front", "sole": "sole"}
ADD_IT = say("Take it in first: recordgen photo STABLE/HORSE FILE")


@dataclass(frozen=True)
class PhotoToTrace:
    """A photograph in the records and what is told of it beside its name.

    visit: the file that the tracing goes into. shown: its path as people see it. earlier: how often the foot's tracings
    of this very photograph stand in the visit, each by its number there.
    """

    file: Path
    raw: bytes
    visit: Path
    shown: str
    subject: Subject
    view: TracedView
    moment: TracedMoment
    size: Size
    earlier: tuple[tuple[int, Tracing], ...]

    @property
    def foot(self) -> Foot:
        """The foot."""
        return self.subject.foot

    @property
    def sha256(self) -> str:
        """The checksum of the file."""
        return hashlib.sha256(self.raw).hexdigest()


def photo_to_trace(records: Path, photo: Path, moment: TracedMoment | None = None) -> PhotoToTrace:
    """Find out what a photograph shows, by its name and place in the records.

    photo: as seen from here, or from the practice's folder. moment: before or after the trim, where its name does not
    tell; else it is taken as found, which is before. Raises Trouble where it cannot be traced.
    """
    path = photo if os.path.lexists(photo) else records / photo
    shown = quoted(path.name)
    if not path.is_file():
        raise Trouble(
            say("there is no photograph {photo}", photo=quoted(str(photo), 200)), say("Look at its name and its folder")
        )
    subject = _subject(records, path)
    view = TRACED_VIEWS.get(subject.view)
    if view is None:
        raise Trouble(
            say("{shown} shows the whole foot", shown=shown), say("Trace one from the side, the front or below")
        )
    when: TracedMoment = moment or ("after" if subject.moment == "after" else "before")
    visit = path.parent.parent / f"{subject.day.isoformat()}.yaml"
    horse = f"{visit.parent.parent.name}/{visit.parent.name}"
    if not visit.is_file():
        begin = say("Begin it: recordgen visit {horse} --date {day}", horse=horse, day=subject.day)
        raise Trouble(say("there is no visit of {day} for the tracing", day=spoken_day(subject.day)), begin)
    raw = path.read_bytes()
    told = f"{horse}/{visit.name}"
    return PhotoToTrace(
        path, raw, visit, told, subject, view, when, _size(raw, shown), _earlier(visit, told, path, subject)
    )


def _subject(records: Path, path: Path) -> Subject:
    """The subject by the name of the file. Raises Trouble for a photograph that is not one of the records."""
    home = Path(os.path.realpath(path))
    inside = home.is_relative_to(os.path.realpath(records)) and home.parent.name == PHOTOS
    told = parse_photo_name(path.name)
    if not inside:
        raise Trouble(
            say("{name} does not lie in a horse's folder {photos}", name=quoted(path.name), photos=PHOTOS), ADD_IT
        )
    if told is None:
        raise Trouble(
            say("the name {name} does not tell the day, the foot and the view", name=quoted(path.name)), ADD_IT
        )
    return told[0]


def _size(raw: bytes, shown: str) -> Size:
    try:
        found = headers(io.BytesIO(raw))
    except NotAPicture as why:
        raise Trouble(say("{photo}: {why}", photo=shown, why=why), ADD_IT) from None
    return Size(found.width, found.height)


def _earlier(visit: Path, shown: str, photo: Path, subject: Subject) -> tuple[tuple[int, Tracing], ...]:
    written, _ = read_partly(visit, shown, Visit)
    foot = written.record.feet.get(subject.foot) if written else None
    return tuple((number, one) for number, one in enumerate(foot.tracings if foot else ()) if one.file == photo.name)

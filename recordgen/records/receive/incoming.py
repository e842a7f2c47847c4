"""Visits and photographs on their way into the records, whatever form they came in."""

from __future__ import annotations

import datetime as dt
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from recordgen.problems import Place, Problems


@dataclass(frozen=True)
class IncomingPhoto:
    """A photograph of a foot. id: its own for life. place: where it stands in the file."""

    id: str
    foot: str
    view: str
    moment: str
    picture: bytes = field(repr=False)
    place: Place


@dataclass(frozen=True)
class IncomingVisit:
    """One visit of one horse.

    id: its own for life. rev: higher each time it was changed after it was handed over. horse: as stable/horse, or
    stable/? where the horse is in no list. record: the keys of a visit's file with numbers, text, yes and no; `?` is a
    value that was seen and not measured. source: the sheet and row it comes out of; empty where it was written down at
    the horse.
    """

    id: str
    rev: int
    horse: str
    name: str
    day: dt.date
    record: Mapping[str, Any]
    place: Place
    photos: tuple[IncomingPhoto, ...] = ()
    source: str = ""

    @property
    def key(self) -> str:
        """Tell which visit this is, and which of its states, such as k7q2mfa3b.1."""
        return f"{self.id}.{self.rev}"


@dataclass(frozen=True)
class Incoming:
    """The content of one file.

    id: of the file. listed: the day on which its list of horses was made. practice: the name of the practice that made
    it, where nothing but the name tells. whole: whether every part of it was read.
    """

    id: str
    visits: tuple[IncomingVisit, ...]
    problems: Problems
    listed: dt.date | None = None
    practice: str = ""
    whole: bool = True

"""Whom a horse's record was shared with: the log `shared.yaml` beside `horse.yaml`, an entry each time."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator
from typing import Annotated, Literal

from pydantic import AfterValidator

from recordgen.problems import Problem, quoted
from recordgen.records.fields import Day, Record, Text, refusal, several, told
from recordgen.records.reading import Written

SHARED_FILE = "shared.yaml"
SharedForm = Literal["html", "pdf"]

_EDITION = re.compile("[0-9a-f]{8,64}")


def _edition(text: str) -> str:
    if not _EDITION.fullmatch(text):
        raise refusal(f"{quoted(text)} is not an edition", "Write it as the head of the sheet tells it")
    return text


Edition = Annotated[Text, AfterValidator(_edition)]


class Shared(Record):
    """One time that the record was handed over."""

    date: Day = told("the day", ...)
    to: Text = told("who got it", ...)
    edition: Edition = told("which edition of the sheet it was, as its head tells", ...)
    until: Day | None = told("the day after which they were asked to delete it")
    what: tuple[SharedForm, ...] = told("the kinds of file: html, pdf", ...)


class SharedFile(Record):
    """Whom a horse's record was shared with."""

    shared: tuple[Shared, ...] = several("each time it was handed over, oldest first")


def shared_problems(log: Written[SharedFile], today: dt.date) -> Iterator[Problem]:
    """What a log's days cannot be. today: nothing was handed over later."""
    for index, entry in enumerate(log.record.shared):
        if entry.date > today:
            place = log.place("shared", index, "date")
            yield Problem(place, f"the date {entry.date} is in the future", "Correct the date")
        if entry.until and entry.until < entry.date:
            message = f"until {entry.until} is before the day it was handed over ({entry.date})"
            yield Problem(log.place("shared", index, "until"), message, "Correct one of the two")

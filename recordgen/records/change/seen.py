"""Warnings that somebody saw and leaves, noted in the file they are about, with the day and the reason."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from pathlib import Path, PurePosixPath
from typing import Any

from recordgen.nearest import did_you_mean
from recordgen.problems import Problem, Problems, SeenWarning, Trouble, message_of, quoted
from recordgen.records.change.change import Change
from recordgen.records.change.correct import plain_reason
from recordgen.records.checks.seen import FITS_NOTHING, place_of_entry
from recordgen.records.layout import home_of
from recordgen.records.yaml.edit import with_item
from recordgen.records.yaml.tree import Document, document
from recordgen.sentences import Said, counted, listed, say

_HOLDING = ("practice", "stable", "horse", "visit")


@dataclass(frozen=True)
class Seeing:
    """The warnings of one code that are meant. file: that holds the entry. at: the place of one of several."""

    records: Path
    file: Path
    code: str
    at: str | None = None

    @property
    def shown(self) -> str:
        """The file as problems name it."""
        return f"{self.records.resolve().name}/{self.file.relative_to(self.records).as_posix()}"


def leave(asked: Seeing, problems: Problems, why: str, today: dt.date, every: bool) -> Change:
    """A change that lets warnings stand from now on.

    problems: all that are found of the practice. every: all warnings of this code, where they are several. Raises
    Trouble where there is none, or it is not clear which.
    """
    raw, reason = asked.file.read_bytes(), plain_reason(why)
    found = document(asked.shown, raw)
    if asked.code == FITS_NOTHING:
        raise Trouble(
            say("{fits_nothing} tells of a note like this one", fits_nothing=FITS_NOTHING),
            say("Take out the entry that it stands at"),
        )
    meant = _meant(asked, problems, found)
    if len(meant) > 1 and not every:
        places = listed([_place(found, one) for one in meant])
        message = say(
            "{warnings} {code} stand there: {places}",
            warnings=counted(len(meant), "warning"),
            code=asked.code,
            places=places,
        )
        raise Trouble(message, say("Say one of them with --at, or --all"))
    old = _at_rest(problems, asked)
    for problem in meant:
        instead = next((entry for entry in old if entry.is_about(problem)), None)
        old = [entry for entry in old if entry is not instead]
        entry = _entry(found, problem, problems, reason, today)
        raw = with_item(raw, "seen", entry, str(asked.file), instead.number if instead else None)
    return Change(
        asked.records,
        f"{reason}\n\n{counted(len(meant), 'warning')} {asked.code} seen and left in {asked.shown}",
        tuple(_lines_told(asked, found, meant, reason)),
        "recordgen check",
        files={asked.file: raw},
        may_wait=True,
    )


def _lines_told(asked: Seeing, found: Document, meant: Sequence[Problem], why: str) -> Iterator[Said]:
    for one in meant:
        line = say("line {line}", line=one.place.line)
        yield say(
            "{place}: {message}",
            place=line if one.place.path == found.path else _place(found, one),
            message=one.message,
        )
    yield say("{file} notes it as seen and left: {why}", file=asked.file, why=why)
    yield say("It is told again as soon as it says anything else, such as another value.")


def _meant(asked: Seeing, problems: Problems, found: Document) -> list[Problem]:
    """The open warnings of the code, which the file holds the entries of. Raises Trouble where there is none."""
    here = [one for one in problems.open if _holder(asked.records, one.place.path) == asked.shown]
    place = place_of_entry(found, asked.at) if asked.at else None
    meant = [one for one in here if one.code == asked.code and one.level == "warning" and place in (None, one.place)]
    if meant:
        return meant
    if any(one.code == asked.code and one.level == "error" for one in here):
        raise Trouble(
            say("{code} is an error there, and an error cannot be left", code=asked.code),
            say("Mend what recordgen check lists"),
        )
    if any(one.code == asked.code and entry.place.path == asked.shown for one, entry in problems.left):
        raise Trouble(
            say("the warning {code} was seen and left already", code=asked.code), say("See all: recordgen check --seen")
        )
    codes = sorted({one.code for one in here if one.level == "warning"})
    if problems.errors:
        there = say("Mend the errors that recordgen check lists first; not everything is looked at before")
    elif codes:
        there = say("Told of {file} now: {codes}", file=asked.file, codes=listed(codes))
    else:
        there = say("Nothing is told of {file} now", file=asked.file)
    told = {"code": quoted(asked.code), "file": asked.file}
    message = say("no warning {code} stands in {file}", **told)
    if asked.at:
        message = say("no warning {code} stands at {place} in {file}", place=asked.at, **told)
    raise Trouble(message, did_you_mean(asked.code, codes, there))


def _holder(records: Path, path: str) -> str:
    """The record that holds the entries about a file: itself, or that of the horse, the stable or the practice."""
    name, _, inside = path.partition("/")
    home = home_of(PurePosixPath(inside or "."))
    if home and home.part in _HOLDING:
        return path
    stable, *rest = PurePosixPath(inside).parts or ("",)
    for file in ([f"{stable}/{rest[0]}/horse.yaml"] if rest else []) + [f"{stable}/stable.yaml"]:
        if (records / file).is_file():
            return f"{name}/{file}"
    return f"{name}/practice.yaml"


def _entry(found: Document, problem: Problem, problems: Problems, why: str, today: dt.date) -> dict[str, Any]:
    """One entry as it is typed; its place alone where another warning says the same."""
    same = [one for one in problems if (one.code, message_of(one)) == (problem.code, message_of(problem))]
    elsewhere = problem.place.path != found.path
    at = {"at": _place(found, problem)} if elsewhere or [one.place.path for one in same].count(found.path) > 1 else {}
    return {"warning": problem.code, **at, "was": message_of(problem), "on": today, "why": why}


def _place(found: Document, problem: Problem) -> str:
    """The place of a problem as the file names it: by its keys, or as a file beside this one."""
    if problem.place.path != found.path:
        return problem.place.path.removeprefix(f"{PurePosixPath(found.path).parent}/")
    return ".".join(map(str, found.steps_at(problem.place)))


def _at_rest(problems: Problems, asked: Seeing) -> list[SeenWarning]:
    """The entries of the file that let nothing stand any more, so that new ones may take their place."""
    at_work = {entry for _, entry in problems.left}
    return [entry for entry in problems.seen if entry not in at_work and entry.place.path == asked.shown]

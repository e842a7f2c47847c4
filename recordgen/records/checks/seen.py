"""Warnings that were seen and may stand: what the records say of them, held against what is found now."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import PurePosixPath

from recordgen.nearest import did_you_mean
from recordgen.problems import Place, Problem, Problems, SeenWarning, Step, message_of, quoted, warning
from recordgen.records.models.horse import Horse
from recordgen.records.models.reference import Reference
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import SeenEntry, Stable
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.read import Written
from recordgen.records.yaml.tree import Document
from recordgen.records.yaml.write import on_one_line
from recordgen.sentences import Said, say

# What can be in a file that holds entries.
Holding = Visit | Horse | Stable | PracticeFile
# It tells of an entry, so no entry lets it stand.
FITS_NOTHING = "seen-fits-nothing"


def note_seen(
    written: Written[Visit] | Written[Horse] | Written[Stable] | Written[PracticeFile],
    problems: Problems,
    today: dt.date,
    reference: Reference,
    earliest: dt.date | None = None,
) -> None:
    """Keep the entries of a file among the problems, with what is wrong about them.

    today: nothing was seen later. reference: the codes there are. earliest: nothing was seen before that day.
    """
    if not written.record.seen:
        return
    found = written.document()
    for number, entry in enumerate(written.record.seen):
        if entry.warning in reference.problems and entry.warning != FITS_NOTHING:
            problems.seen.append(_entry(found, number, entry))
        problems.extend(_wrong(found, number, entry, today, reference, earliest))


def _entry(found: Document, number: int, entry: SeenEntry) -> SeenWarning:
    about = place_of_entry(found, entry.at)
    return SeenWarning(
        found.place(("seen", number)), number, about, entry.warning, entry.was or "", entry.on, entry.why
    )


def place_of_entry(found: Document, at: str | None) -> Place:
    """The place that the `at` of an entry names in its file, or the file beside it; any place where it names none."""
    if not at:
        return Place(found.path)
    steps = steps_of(at)
    return found.place(steps) if found.wrote(steps) else Place((PurePosixPath(found.path).parent / at).as_posix())


def steps_of(at: str) -> tuple[Step, ...]:
    """The steps of a place such as feet.left_fore.tracings.0, whose items count from 0."""
    return tuple(int(step) if step.isdigit() else step for step in at.split("."))


def _wrong(
    found: Document, number: int, entry: SeenEntry, today: dt.date, reference: Reference, earliest: dt.date | None
) -> Iterator[Problem]:
    day = found.place(("seen", number, "on"))
    if entry.on > today:
        yield Problem(
            day, "entry-date-future", say("the date {on} is in the future", on=entry.on), say("Correct the date")
        )
    if earliest and entry.on < earliest:
        message = say("the warning was seen on {on}, before the visit of {earliest}", on=entry.on, earliest=earliest)
        yield Problem(day, "seen-before-visit", message, say("Correct the date"))
    if entry.warning not in reference.problems or entry.warning == FITS_NOTHING:
        message = say("there is no warning {warning}", warning=quoted(entry.warning))
        way_out = did_you_mean(
            entry.warning, reference.problems, say("Write the code at the end of the warning's line")
        )
        yield warning(found.place(("seen", number, "warning")), "seen-fits-nothing", message, way_out)


def seen_in_vain(problems: Problems) -> Iterator[Problem]:
    """A warning for each entry that lets nothing stand, with what it lacks.

    problems: all that are found of a whole practice; of a part of it, some entries fit nothing yet.
    """
    at_work = {entry for _, entry in problems.left}
    for entry in problems.seen:
        if entry not in at_work:
            yield warning(entry.place, "seen-fits-nothing", *_why(entry, problems))


def _why(entry: SeenWarning, problems: Problems) -> tuple[Said, Said]:
    near = [problem for problem in problems if entry.is_about(problem)]
    fits = [problem for problem in near if entry.fits(problem)]
    if not near:
        return say("no warning {code} stands here any more", code=entry.code), say("Take this entry out")
    if all(problem.level == "error" for problem in near):
        return say("{code} is an error here, and an error cannot be left", code=entry.code), say(
            "Mend it, and take this entry out"
        )
    if len(fits) == 1:
        return say("another entry lets the same warning {code} stand", code=entry.code), say("Take one of the two out")
    if fits:
        message = say(
            "{count} warnings {code} say the same here, and an entry lets one of them stand",
            count=len(fits),
            code=entry.code,
        )
        return message, say("Say which by at:, or write one entry for each: recordgen seen does it")
    if not entry.was:
        told = next(message_of(problem) for problem in near if problem.level == "warning")
        return say("this entry does not tell what was seen"), say("Write was: {was}", was=on_one_line(told))
    message = say("the warning {code} says something else than when it was seen on {on}", code=entry.code, on=entry.on)
    return message, say("Look again; then let recordgen seen write it anew, or take this entry out")

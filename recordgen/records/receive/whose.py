"""Tell which horse and which day a visit is of: as it says where that can be so, else asked, never guessed."""

from __future__ import annotations

import datetime as dt
import difflib
from collections.abc import Iterator
from dataclasses import dataclass, field
from pathlib import Path

from recordgen.problems import is_visible, quoted
from recordgen.records.checks.duplicates import is_same
from recordgen.records.load.folders import NOT_FREE, SLUG, slug_of
from recordgen.records.models.fields import FIRST_YEAR
from recordgen.records.models.horse import Horse
from recordgen.records.models.stable import Stable
from recordgen.records.receive.incoming import IncomingVisit
from recordgen.records.receive.questions import Answers, Phrase, Question
from recordgen.records.yaml.read import read_partly
from recordgen.sentences import Said, say, spoken_day

LEAVE_OUT = "leave out"
NEW = "new"
TAKE = "take it in"
MOST_OFFERED = 12


@dataclass(frozen=True)
class Horses:
    """The horses of a practice by stable/horse, and the names of its stables by their folders."""

    horses: dict[str, Horse] = field(default_factory=dict)
    stables: dict[str, str] = field(default_factory=dict)

    @classmethod
    def read(cls, records: Path) -> Horses:
        """Those in a folder of records; what cannot be read is not there, and nothing is told of it."""
        found = cls()
        for file in sorted(records.glob("*/stable.yaml")):
            stable, _ = read_partly(file, file.name, Stable)
            if SLUG.fullmatch(file.parent.name) and stable:
                found.stables[file.parent.name] = stable.record.name
        for file in sorted(records.glob("*/*/horse.yaml")):
            horse, _ = read_partly(file, file.name, Horse)
            if horse and file.parent.parent.name in found.stables and SLUG.fullmatch(file.parent.name):
                found.horses[f"{file.parent.parent.name}/{file.parent.name}"] = horse.record
        return found

    def in_words(self, which: str) -> str:
        """A horse in words: Bramble at Willowmere, horse, born 2015."""
        horse = self.horses[which]
        stable = self.stables[which.partition("/")[0]]
        left = f", left on {spoken_day(horse.left.date)}" if horse.left else ""
        return f"{horse.name} at {stable}, {horse.kind}{f', born {horse.born}' if horse.born else ''}{left}"


@dataclass(frozen=True)
class VisitOwner:
    """Whose visit it is. new_name: of a horse whose file is to be made; which: None where the visit is left out."""

    which: str | None
    new_name: str = ""


def describe_visit(visit: IncomingVisit, horses: Horses, which: str | None = None) -> str:
    """A visit in words: Bramble at Willowmere, 27 November 2026."""
    which = which or visit.horse
    horse, stable = horses.horses.get(which), which.partition("/")[0]
    name = horse.name if horse else visit.name or which
    return f"{name} at {horses.stables.get(stable, stable)}, {spoken_day(visit.day)}"


def find_horse(
    visit: IncomingVisit, file: str, horses: Horses, answers: Answers, phrase: Phrase
) -> VisitOwner | Question:
    """Whose visit it is, or the question that must be answered first. file: the id of what it came in."""
    horse = horses.horses.get(visit.horse)
    if horse is None:
        return _ask_whose(visit, file, horses, answers, phrase)
    if horse.left is None or visit.day <= horse.left.date:
        return VisitOwner(visit.horse)
    elsewhere = [which for which, one in horses.horses.items() if one is not horse and is_same(one, horse)]
    choices = {TAKE: phrase("take_left", name=horse.name)}
    choices |= {which: horses.in_words(which) for which in elsewhere} | {LEAVE_OUT: phrase("leave_out")}
    asks = phrase("asks_left", name=horse.name, day=spoken_day(horse.left.date))
    question = Question(f"{visit.id} left", describe_visit(visit, horses), asks, choices)
    match answers.of(question):
        case None:
            return question
        case answer if answer == LEAVE_OUT:
            return VisitOwner(None)
        case answer:
            return VisitOwner(visit.horse if answer == TAKE else answer)


def one_line(name: str) -> str:
    """A name as a file can hold it: on one line, without signs that do not show."""
    return " ".join("".join(sign if is_visible(sign) else " " for sign in name).split())


def question_of_horse(visit: IncomingVisit, file: str) -> str:
    """The id of the question which horse a visit is of; the same for all visits of one unknown horse in a file."""
    return f"{file} horse {visit.horse} {visit.name}".strip()


def _ask_whose(
    visit: IncomingVisit, file: str, horses: Horses, answers: Answers, phrase: Phrase
) -> VisitOwner | Question:
    stable = visit.horse.partition("/")[0]
    choices = {which: horses.in_words(which) for which in _alike(visit, horses)}
    if stable in horses.stables:
        choices[NEW] = phrase("new_horse", name=visit.name or visit.horse, stable=horses.stables[stable])
    choices[LEAVE_OUT] = phrase("leave_out")
    known = phrase("stable_known") if stable in horses.stables else phrase("stable_unknown", stable=quoted(stable))
    asks = phrase("asks_horse", horse=quoted(visit.horse), name=visit.name or visit.horse, stable=known)
    typed = phrase("typed_horse")
    question = Question(
        question_of_horse(visit, file),
        describe_visit(visit, horses),
        asks,
        choices,
        typed,
        lambda text: _fits(text, horses),
    )
    match answers.of(question):
        case None:
            return question
        case answer if answer == LEAVE_OUT:
            return VisitOwner(None)
        case answer if answer == NEW:
            name = one_line(visit.name) or visit.horse.partition("/")[2]
            return VisitOwner(f"{stable}/{_free_slug(stable, name, horses)}", name)
        case answer:
            return VisitOwner(answer)


def _fits(text: str, horses: Horses) -> Said | None:
    return None if text in horses.horses else say("there is no horse {horse}", horse=quoted(text))


def _alike(visit: IncomingVisit, horses: Horses) -> list[str]:
    """The horses it may be: of the same folder or name anywhere, of a similar name at that stable, then all others."""
    stable, _, slug = visit.horse.partition("/")
    names = {which: horse.name.lower() for which, horse in horses.horses.items()}

    def unlikeness(which: str) -> tuple[bool, bool, float]:
        same = which.partition("/")[2] == slug or names[which] == visit.name.lower()
        near = difflib.SequenceMatcher(None, names[which], (visit.name or slug).lower()).ratio()
        return not same, which.partition("/")[0] != stable, -near

    return sorted(names, key=unlikeness)[:MOST_OFFERED]


def _free_slug(stable: str, name: str, horses: Horses) -> str:
    taken = {which.partition("/")[2] for which in horses.horses if which.partition("/")[0] == stable}
    slug = slug_of(name) or "horse"
    names = _numbered_slugs(slug)
    return next(one for one in names if one not in taken | NOT_FREE)


def _numbered_slugs(slug: str) -> Iterator[str]:
    yield slug
    number = 2
    while True:
        yield f"{slug}-{number}"
        number += 1


def find_day(
    visit: IncomingVisit, listed: dt.date | None, today: dt.date, horses: Horses, answers: Answers, phrase: Phrase
) -> dt.date | Question | None:
    """The day of a visit, the question that must be answered first, or None where the visit is left out.

    listed: the day on which the list of horses was made, before which no visit can be. today: none is later.
    """
    choices: dict[str, str] = {}
    if visit.day > today:
        asks = phrase("asks_day_later", day=spoken_day(visit.day), today=spoken_day(today))
    elif visit.day.year < FIRST_YEAR:
        asks = phrase("asks_day_too_early", day=spoken_day(visit.day))
    elif listed and visit.day < listed <= today:
        asks = phrase("asks_day_earlier", day=spoken_day(visit.day), listed=spoken_day(listed))
        choices = {visit.day.isoformat(): phrase("day_stands")}
    else:
        return visit.day
    choices |= {today.isoformat(): phrase("day_today"), LEAVE_OUT: phrase("leave_out")}
    question = Question(
        f"{visit.id} day",
        describe_visit(visit, horses),
        asks,
        choices,
        phrase("typed_day"),
        lambda text: _day_fault(text, today),
    )
    answer = answers.of(question)
    if answer is None:
        return question
    return None if answer == LEAVE_OUT else dt.date.fromisoformat(answer)


def _day_fault(text: str, today: dt.date) -> Said | None:
    try:
        day = dt.datetime.strptime(text, "%Y-%m-%d").date()
    except ValueError:
        return say("{text} is not a day; write it like {today}", text=quoted(text), today=today)
    if day.year < FIRST_YEAR:
        return say("{day} is too long ago", day=day)
    return say("{day} is in the future", day=day) if day > today else None

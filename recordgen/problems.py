"""Everything that can be wrong with a record, as values of one shape: gathered, sorted by place, printed once."""

from __future__ import annotations

import datetime as dt
import json
import unicodedata
from collections.abc import Iterable, Iterator
from dataclasses import dataclass, field
from typing import Literal

from recordgen.sentences import NOTHING, Said, counted, listed, say, say_counted, sentences

Level = Literal["error", "warning"]
# One step on the way to a value in a file: a key, or the number of an item from 0.
Step = str | int


@dataclass(frozen=True, order=True)
class Place:
    """A spot in a file: path as people see it, line and column counted from 1; 0 where the whole file is meant."""

    path: str
    line: int = 0
    column: int = 0

    def __str__(self) -> str:
        return f"{self.path}:{max(1, self.line)}:{max(1, self.column)}"


@dataclass(frozen=True, order=True)
class Problem:
    """One thing wrong: where, its code, what, and the way out, as sentences without a closing full stop.

    code: a few plain words with hyphens that stay the same however the sentence is put; the table of problems among the
    templates explains each.
    """

    place: Place
    code: str = field(compare=False)
    message: Said
    way_out: Said = NOTHING
    level: Level = "error"

    @property
    def line(self) -> Said:
        """The problem as one line for a terminal: `path:line:column: level: message. Way out. [code]`."""
        about = {"place": str(self.place).translate(_LINE_ENDS), "code": self.code}
        told = sentences(self.message, self.way_out)
        if self.level == "error":
            return say("{place}: error: {told} [{code}]", told=told, **about)
        return say("{place}: warning: {told} [{code}]", told=told, **about)

    def as_line(self) -> str:
        """The same in English, with every sign visible."""
        return visible(self.line)

    def as_json(self) -> dict[str, str | int]:
        """The problem as a mapping with path, line, column, level, code, message and way_out."""
        return {
            "path": self.place.path,
            "line": max(1, self.place.line),
            "column": max(1, self.place.column),
            "level": self.level,
            "code": self.code,
            "message": self.message,
            "way_out": self.way_out,
        }


@dataclass(frozen=True)
class SeenWarning:
    """A warning that was seen and may stand, as an entry among the records tells it.

    place: of the entry; number: among those of its file, from 0. about: where the warning stands, line 0 for any place
    of the file. was: what it said. on, why: when it was seen, and why it may stand.
    """

    place: Place
    number: int
    about: Place
    code: str
    was: str
    on: dt.date
    why: str

    def is_about(self, problem: Problem) -> bool:
        """Tell whether a problem has its code and its place, whatever it says."""
        here = problem.place if self.about.line else Place(problem.place.path)
        return problem.code == self.code and here == self.about

    def fits(self, problem: Problem) -> bool:
        """Tell whether a problem is a warning that says what it said then; an error fits no entry."""
        return problem.level == "warning" and self.is_about(problem) and message_of(problem) == visible_line(self.was)


def message_of(problem: Problem) -> str:
    """The message of a problem as an entry holds it: on one line, with every sign visible."""
    return visible_line(problem.message)


def visible_line(text: str) -> str:
    """Text on one line, with every sign visible."""
    return visible(" ".join(text.split()))


@dataclass
class Problems:
    """The problems of one run, iterated in order of place, each once. seen: the entries about warnings that may stand.

    An entry lets one warning stand; where it fits several of them, it lets none.
    """

    found: list[Problem] = field(default_factory=list)
    seen: list[SeenWarning] = field(default_factory=list)

    def add(self, problem: Problem) -> None:
        """Keep one problem."""
        self.found.append(problem)

    def extend(self, problems: Iterable[Problem]) -> None:
        """Keep several problems."""
        self.found.extend(problems)

    def __iter__(self) -> Iterator[Problem]:
        return iter(sorted(set(self.found)))

    @property
    def errors(self) -> list[Problem]:
        """The problems that stop a build, sorted by place."""
        return [problem for problem in self if problem.level == "error"]

    @property
    def warnings(self) -> list[Problem]:
        """The problems that are unlikely rather than impossible and were not seen before, sorted by place."""
        return [problem for problem in self.open if problem.level == "warning"]

    @property
    def open(self) -> list[Problem]:
        """The problems less the warnings that were seen and may stand, sorted by place."""
        left = {problem for problem, _ in self.left}
        return [problem for problem in self if problem not in left]

    @property
    def left(self) -> list[tuple[Problem, SeenWarning]]:
        """The warnings that were seen and may stand, each with its entry, sorted by place."""
        every = list(self) if self.seen else []
        fitting = ((entry, [problem for problem in every if entry.fits(problem)]) for entry in self.seen)
        return sorted({fits[0]: entry for entry, fits in fitting if len(fits) == 1}.items())

    def counted(self) -> Said:
        """Count them in words: `2 errors and 1 warning in 2 files, 3 seen before`; `no problems` for none."""
        shown, left = self.open, len(self.left)
        errors = sum(problem.level == "error" for problem in shown)
        kinds = ((errors, counted(errors, "error")), (len(shown) - errors, counted(len(shown) - errors, "warning")))
        told = listed([told for number, told in kinds if number])
        files = len({problem.place.path for problem in shown})
        here = say_counted("{told} in {count} file", "{told} in {count} files", files, told=told)
        here = here if shown else say("no problems")
        return say("{problems}, {left} seen before", problems=here, left=left) if left else here


def warning(place: Place, code: str, message: Said, way_out: Said) -> Problem:
    """A problem that is unlikely rather than impossible, and stops nothing."""
    return Problem(place, code, message, way_out, "warning")


# Signs that count as letters or marks and show nothing. Source: Unicode, property Default_Ignorable_Code_Point, less
# the signs of the categories Cc and Cf and what only picks a form of the sign before. From memory, not read.
SHOW_NOTHING = "\u034f\u115f\u1160\u17b4\u17b5\u3164\uffa0"
# In the name of a file.
_LINE_ENDS = str.maketrans({"\n": "\\n", "\t": "\\t"})


def is_visible(sign: str) -> bool:
    """Tell whether a sign shows as itself: no control, no turn of direction, no line's end, nothing without a width."""
    return (sign.isprintable() or unicodedata.category(sign) == "Zs") and sign not in SHOW_NOTHING


def visible(text: str) -> str:
    """Text with every sign that does not show as itself spelled out, as JSON does: \\u001b, \\u202e; lines stay lines.

    What JSON holds in quotes stays the same value.
    """
    return "".join(sign if is_visible(sign) or sign in "\n\t" else json.dumps(sign)[1:-1] for sign in text)


def as_typed(text: str, longest: int = 40) -> str:
    """Text as it was typed, on one line and no longer than a message can bear; hidden signs spelled out."""
    line = visible("".join(" " if sign.isspace() else sign for sign in text[: longest + 1]))
    return line if len(text) <= longest else f"{line[:longest].rstrip()}…"


def quoted(text: str, longest: int = 40) -> str:
    """Text as `as_typed` gives it, in quotes."""
    return f"'{as_typed(text, longest)}'"


class Trouble(Exception):
    """Something a command cannot go on with: what is wrong and the way out, as sentences without a full stop."""

    def __init__(self, message: Said, way_out: Said = NOTHING) -> None:
        super().__init__(message)
        self.message = message
        self.way_out = way_out

"""The log of a repository: each entry with what it did to every file."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from itertools import takewhile
from pathlib import Path

from recordgen.git.run import run, text

# An entry's own name, those before it, when it was kept, when it was written, seconds, the message's first line.
_FIELDS = ("%H", "%P", "%cI", "%aI", "%ct", "%s")
# So many files may be compared for being a renamed one in one entry; git's own limit, said so that no setting moves it.
_MOST_COMPARED = 1000
LONGEST_REASON = 200


@dataclass(frozen=True)
class Touch:
    """The change of one file by an entry.

    before: its name before, by parent; olds: its content before, by parent. after, new: name and content since.
    All are None where there was no file. alike: how much of the content stayed, in per cent.
    """

    before: tuple[str | None, ...]
    olds: tuple[str | None, ...]
    after: str | None
    new: str | None
    alike: int = 100


@dataclass(frozen=True)
class LogEntry:
    """One entry of the log.

    day: the day it was kept, where its computer stood; written: the day it names itself; None where no day can be read.
    within: the innermost folder that holds all files it touched, with a slash behind it; empty for the top.
    """

    id: str
    parents: tuple[str, ...]
    day: dt.date | None
    written: dt.date | None
    seconds: int
    reason: str
    touches: tuple[Touch, ...]
    within: str


def log(folder: Path) -> list[LogEntry]:
    """All entries that led to the present one, each before the ones it follows. Raises GitTrouble."""
    found = run(
        *(folder, "log", "--topo-order", "-z", "--raw", "--no-abbrev", "--no-color", "--no-show-signature"),
        *("-M", f"-l{_MOST_COMPARED}", "-c", "--combined-all-paths", f"--format={'%x00'.join(_FIELDS)}", "HEAD", "--"),
    )
    return list(_entries(iter(text(found).split("\0"))))


def _entries(tokens: Iterator[str]) -> Iterator[LogEntry]:
    head = next(tokens, "")
    while head:
        parents, kept, written, seconds, reason = (next(tokens) for _ in _FIELDS[1:])
        touches = []
        entry, head = head, ""
        for token in tokens:
            begun = token.lstrip("\n")
            if begun.startswith(":"):
                touches.append(_touch(begun, tokens))
            elif begun:
                head = begun
                break
        names = [name for touch in touches for name in (*touch.before, touch.after) if name]
        yield LogEntry(
            *(entry, tuple(parents.split()), _day(kept), _day(written), int(seconds or 0), _reason(reason)),
            *(tuple(touches), _innermost_folder(names)),
        )


def _touch(told: str, tokens: Iterator[str]) -> Touch:
    count = len(told) - len(told.lstrip(":"))
    words = told[count:].split(" ")
    status = words[-1]
    *olds, new = (None if set(word) == {"0"} else word for word in words[count + 1 : -1])
    names = [next(tokens) for _ in range(count + 1 if count > 1 or status[0] in "RC" else 1)]
    before = tuple(name if old else None for name, old in zip(names, olds, strict=False))
    alike = int(status[1:]) if count == 1 and status[0] == "R" and status[1:].isdigit() else 100
    if status[0] == "C" and count == 1:
        before, olds = (None,), [None]
    return Touch(before, tuple(olds), names[-1] if new else None, new, alike)


def _day(told: str) -> dt.date | None:
    try:
        return dt.date.fromisoformat(told[:10])
    except ValueError:
        return None


def _reason(told: str) -> str:
    line = told.encode("utf-8", "surrogateescape").decode("utf-8", "replace")
    line = "".join(sign if sign.isprintable() else " " for sign in line).strip()
    return line if len(line) <= LONGEST_REASON else f"{line[:LONGEST_REASON].rstrip()}…"


def _innermost_folder(names: Sequence[str]) -> str:
    """The innermost folder of several files: what the first and the last of them in order share, all share."""
    first, last = min(names, default="").split("/"), max(names, default="").split("/")
    shared = takewhile(lambda pair: pair[0] == pair[1], zip(first[:-1], last[:-1], strict=False))
    return "".join(f"{one}/" for one, _ in shared)

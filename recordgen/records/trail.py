"""The trail of one visit: when it was first kept in git, and what was changed in it since."""

from __future__ import annotations

import datetime as dt
from dataclasses import dataclass, replace
from typing import Literal

from recordgen.records.trail_words import Part

# kept: as in git; amended: changed since; new: not in git yet; left out: git is told not to look at it.
State = Literal["kept", "amended", "new", "left out"]
# filled in: a file that was only begun; unreadable, readable again: its form, whatever changed.
Kind = Literal["changed", "filled in", "taken out", "put back", "unreadable", "readable again"]


@dataclass(frozen=True)
class Change:
    """One entry that changed a visit: its day (None where it has none), its reason, and the values it changed.

    reason: the first line of its message. for_all: whether a stable's own people may read that reason: the entry
    touched files of this stable alone, and nothing private. entry: git's name of it.
    """

    entry: str
    day: dt.date | None
    kind: Kind
    reason: str
    parts: tuple[Part, ...] = ()
    for_all: bool = False


@dataclass(frozen=True)
class VisitTrail:
    """What git knows of one visit.

    first: the day it was first kept; None where it was not, or where no day can be read. or_before: whether it may have
    been kept before, since the history on this computer is cut off. changes: oldest first. doubts: what is not sure,
    in sentences without a full stop.
    """

    first: dt.date | None
    or_before: bool
    state: State
    changes: tuple[Change, ...] = ()
    doubts: tuple[str, ...] = ()

    @property
    def committed(self) -> bool:
        """Whether git keeps the file as it is now."""
        return self.state == "kept"

    def for_stable(self) -> VisitTrail:
        """The trail as a stable's own people may see it: nothing private, no earlier wording, no reason with others."""
        changes = (_for_stable(change) for change in self.changes)
        return replace(self, changes=tuple(change for change in changes if change))


def _for_stable(change: Change) -> Change | None:
    parts = tuple(_without_wording(part) for part in change.parts if not part.private)
    if change.parts and not parts:
        return None
    return replace(change, parts=parts, reason=change.reason if change.for_all else "")


def _without_wording(part: Part) -> Part:
    if not part.worded:
        return part
    before, after = (None if value is None else "" for value in (part.before, part.after))
    return replace(part, before=before, after=after)

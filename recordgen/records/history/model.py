"""The trail of one visit: when it was first kept in git, and what was changed in it since, in words."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Sequence
from dataclasses import dataclass, replace
from typing import Any, Literal

from recordgen.language.quantities import Quantities
from recordgen.language.spoken import language_of
from recordgen.problems import Step
from recordgen.records.history.versions import Difference, count_points
from recordgen.records.models.annotations import annotation_at, choices, extra, field_at
from recordgen.records.models.names import FEET, ZONES
from recordgen.records.models.reference import Reference
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.visit import Visit
from recordgen.units import UNITS

# kept: as in git; amended: changed since; new: not in git yet; left out: git is told not to look at it.
State = Literal["kept", "amended", "new", "left out"]
# filled in: a file that was only begun; unreadable, readable again: its form, whatever changed.
Kind = Literal["changed", "filled in", "taken out", "put back", "unreadable", "readable again"]


@dataclass(frozen=True)
class Amendment:
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
    """The trail of one visit in git.

    first: the day it was first kept; None where it was not, or where no day can be read. or_before: whether it may have
    been kept before, since the history on this computer is cut off. changes: oldest first. doubts: what is not sure,
    in sentences without a full stop.
    """

    first: dt.date | None
    or_before: bool
    state: State
    changes: tuple[Amendment, ...] = ()
    doubts: tuple[str, ...] = ()

    @property
    def committed(self) -> bool:
        """Tell whether git keeps the file as it is now."""
        return self.state == "kept"

    def for_stable(self) -> VisitTrail:
        """The trail as a stable's own people may see it: nothing private, no earlier wording, no reason with others."""
        changes = (_for_stable(change) for change in self.changes)
        return replace(self, changes=tuple(change for change in changes if change))


def _for_stable(change: Amendment) -> Amendment | None:
    parts = tuple(_without_wording(part) for part in change.parts if not part.private)
    if change.parts and not parts:
        return None
    return replace(change, parts=parts, reason=change.reason if change.for_all else "")


def _without_wording(part: Part) -> Part:
    if not part.worded:
        return part
    before, after = (None if value is None else "" for value in (part.before, part.after))
    return replace(part, before=before, after=after)


PRIVATE = "private_note"


@dataclass(frozen=True)
class Part:
    """One value that changed: what it is, what it was, what it became; None where there was none.

    private: whether it is for the trimmer alone. worded: whether it is free text, whose earlier wording may have been
    taken out on purpose.
    """

    what: str
    before: str | None
    after: str | None
    private: bool = False
    worded: bool = False


class Words:
    """Puts differences of visits into the words of the tables and of the practice."""

    def __init__(self, practice: PracticeFile, reference: Reference) -> None:
        self.phrases = reference.phrases
        self.language = language_of(practice.language)
        self.written = Quantities(self.language, UNITS[practice.units])
        self.foot = "foot_near_" if practice.feet == "near and off" else "foot_"
        self.measures = {words.path: words.name for words in reference.measures.values() if words.path}

    def part(self, one: Difference) -> Part:
        """A difference in words."""
        before, after = (None if value is None else self._value(one.steps, value) for value in (one.before, one.after))
        worded = not list(choices(annotation_at(Visit, one.steps))) and isinstance(one.before or one.after, str)
        return Part(self._what(one.steps), before, after, PRIVATE in one.steps, worded)

    def phrase(self, key: str, **facts: str) -> str:
        """A phrase of the trail with its facts filled in."""
        return self.phrases[f"trail_{key}"].format(**facts)

    def _what(self, steps: Sequence[Step]) -> str:
        if steps[0] == "feet" and len(steps) > 2:
            return ", ".join([self.phrases[f"{self.foot}{steps[1]}"], *self._of_foot(steps[2:])])
        return ", ".join(map(self._step, steps))

    def _of_foot(self, steps: Sequence[Step]) -> Iterator[str]:
        moment = [str(step) for step in steps if step in ("before", "after")]
        zone = [str(step) for step in steps if step in ZONES]
        path = ".".join("@" if step in moment else "*" if step in zone else str(step) for step in steps)
        name = self.measures.get(path)
        if name and zone:
            yield self.phrases["measure_at"].format(measure=name, place=self._step(zone[0]))
        elif name:
            yield from (name, *map(self._step, moment))
        else:
            yield from map(self._step, steps)

    def _step(self, step: Step) -> str:
        if isinstance(step, int):
            return self.phrase("number", number=str(step + 1))
        if step in ZONES:
            return self.phrases[f"place_{step.replace(' ', '_')}"]
        return self.phrases.get(f"trail_field_{step}") or step.replace("_", " ")

    def _number(self, value: float, unit: str) -> str:
        """A number with its unit, a length in the unit of the practice."""
        if unit in ("mm", "cm") and self.written.units.inches:
            return self.written.length(value * (10 if unit == "cm" else 1))
        return f"{self.language.figures(f'{value:.10g}')}{'°' if unit == 'degrees' else f' {unit}' if unit else ''}"

    def _value(self, steps: Sequence[Step], value: Any) -> str:
        points = count_points(value)
        if points:
            return self.phrase("points", count=str(points)) if points > 1 else self.phrase("point")
        if isinstance(value, bool):
            return self.phrase("yes" if value else "no")
        if isinstance(value, dt.date):
            return self.language.day(value)
        if isinstance(value, int | float):
            return self._number(value, extra(field_at(Visit, steps)).get("unit", ""))
        if value in FEET:
            return self.phrases[f"{self.foot}{value}"]
        told = " ".join(str(value).split())
        return self.phrases.get(f"value_{told.replace(',', '').replace(' ', '_')}", told)

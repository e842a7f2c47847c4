"""What an entry in git says: a line of a diary, with stable, days and horses."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from typing import Literal

from recordgen.days import listed, spoken_day
from recordgen.git.changes import KindOfChange

LONGEST_LINE = 72
About = Literal["stable", "practice", "care notes", "templates", "files", "photographs", "sharing"]


@dataclass(frozen=True)
class Other:
    """A change that is no new visit: of a visit (horse and day), of a horse, or of what `about` says.

    was: the folder or file that it was before, where it moved.
    """

    kind: KindOfChange | Literal["moved"] = "amended"
    horse: str = ""
    day: dt.date | None = None
    about: About = "stable"
    was: str = ""

    def told(self) -> str:
        """The change in words: `Bramble's visit of 14 October 2026 amended`."""
        kind = f"{self.kind} from {self.was}" if self.was else self.kind
        if self.kind == "moved" and not self.horse:
            return kind
        if self.horse and self.day:
            return f"{self.horse}'s visit of {spoken_day(self.day)} {kind}"
        if self.about == "photographs":
            return f"photographs of {self.horse} {kind}"
        if self.about == "sharing":
            return f"whom {self.horse}'s record was shared with {kind}"
        if self.horse:
            return f"{self.horse}'s details amended" if self.kind == "amended" else f"{self.horse} {kind}"
        return _OF_MANY[self.about].format(kind=kind)


_OF_MANY: dict[About, str] = {
    "stable": "details of the stable {kind}",
    "practice": "details of the practice {kind}",
    "care notes": "care notes {kind}",
    "templates": "own words and pages {kind}",
    "files": "other files {kind}",
}


def message(stable_name: str, visits: Iterable[tuple[str, dt.date]], others: Iterable[Other] = ()) -> str:
    """What was done at a stable, as one line; where that grows long, a short line and the long one below it.

    visits: horse's name and day of each new visit. others: what else changed, in order.
    """
    by_day: dict[dt.date, list[str]] = {}
    for horse, day in sorted(visits, key=lambda visit: (visit[1], visit[0].lower())):
        by_day.setdefault(day, []).append(horse)
    more = list(dict.fromkeys(other.told() for other in others))
    line = _line(stable_name, by_day, more)
    return line if len(line) <= LONGEST_LINE else f"{_short(stable_name, by_day, len(more))}\n\n{line}"


def _line(stable_name: str, by_day: dict[dt.date, list[str]], more: Sequence[str]) -> str:
    if len(by_day) == 1:
        ((day, horses),) = by_day.items()
        return f"{stable_name}, {spoken_day(day)}: {'; '.join([f'{listed(horses)} seen', *more])}"
    days = [f"{listed(horses)} seen on {spoken_day(day)}" for day, horses in by_day.items()]
    return f"{stable_name}: {'; '.join([*days, *more]) or 'nothing changed'}"


def _short(stable_name: str, by_day: dict[dt.date, list[str]], more: int) -> str:
    days = listed(list(dict.fromkeys(spoken_day(day) for day in (min(by_day), max(by_day))))) if by_day else ""
    between = days.replace(" and ", " to ")
    visits = sum(map(len, by_day.values()))
    told = [
        f"{count} {word}{'' if count == 1 else 's'}"
        for count, word in ((visits, "visit"), (more, "other change"))
        if count
    ]
    return f"{stable_name}{', ' if between else ''}{between}: {listed(told)}"

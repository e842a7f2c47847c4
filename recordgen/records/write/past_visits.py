"""The visits before a day, asked for what was last written, to stand beside the lines of a new visit."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from recordgen.records.models.care_in_force import care_in_force
from recordgen.records.models.foot import WallZone
from recordgen.records.models.names import Foot
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.reference import CareWords
from recordgen.records.models.visit import Care, Next, Visit

HALF_A_YEAR = dt.timedelta(days=183)


@dataclass(frozen=True)
class Last:
    """The last reading for one line: before and after the trim, or once, and on which day."""

    day: dt.date
    before: Any = None
    after: Any = None
    found: Any = None


class PastVisits:
    """The visits before a day, asked for what was last written."""

    def __init__(self, horse: HorseRecord, day: dt.date, library: Mapping[str, CareWords]) -> None:
        """The visits of a horse before a day; library: the care notes by name."""
        self.day = day
        self.library = library
        self.visits = [visit for visit in horse.visits if visit.date < day]

    @property
    def latest(self) -> Visit | None:
        """The latest visit, if there is any."""
        return self.visits[-1] if self.visits else None

    def measure(self, foot: Foot, *steps: str) -> Last | None:
        """The last measure of a foot, before and after the trim of one visit."""
        for visit in reversed(self.visits):
            before, after = (_at(visit, "feet", foot, moment, *steps) for moment in ("before", "after"))
            if before is not None or after is not None:
                return Last(visit.date, before, after)
        return None

    def finding(self, foot: Foot, *steps: str) -> Last | None:
        """Findings of a foot at the last visit, as found."""
        return next(self._last_values("feet", foot, *steps), None)

    def zones(self, foot: Foot) -> list[tuple[str, Last]]:
        """The zones of the wall at the latest visit to name any, each with what was found; none after half a year."""
        wall = next(self._last_values("feet", foot, "wall"), None)
        if wall is None or self.day - wall.day > HALF_A_YEAR:
            return []
        return [(zone, Last(wall.day, found=_zone_words(found))) for zone, found in wall.found.items()]

    def _last_values(self, *steps: str) -> Iterator[Last]:
        for visit in reversed(self.visits):
            value = _at(visit, *steps)
            if value is not None and value != {}:
                yield Last(visit.date, found=value)

    @property
    def care(self) -> tuple[Care, ...]:
        """The care notes in force: those given last, but for those ended since."""
        return tuple(one.note for one in care_in_force(self.visits, self.library))

    @property
    def next(self) -> Next | None:
        """The word of the latest visit on the next."""
        return self.latest.next if self.latest else None


def _at(value: Any, *steps: str) -> Any:
    for step in steps:
        value = value.get(step) if isinstance(value, dict) else getattr(value, step, None)
        if value is None:
            return None
    return value


def _zone_words(found: WallZone) -> list[tuple[str, Any]]:
    """Findings of a zone of the wall by name; of a gap or a crack its length."""
    values = ((name, getattr(found, name)) for name in type(found).model_fields)
    return [(name, getattr(value, "length", value)) for name, value in values if value is not None]

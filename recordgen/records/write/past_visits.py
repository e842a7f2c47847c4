"""The visits before a day, asked for what was last written, to stand beside the lines of a new visit."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator, Mapping
from dataclasses import dataclass, replace
from typing import Any

from recordgen.records.models.annotations import extra, field_at
from recordgen.records.models.care_in_force import care_in_force
from recordgen.records.models.foot import FootVisit, WallZone
from recordgen.records.models.names import Foot
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.reference import CareWords
from recordgen.records.models.visit import Care, Next, Visit
from recordgen.units import METRIC, Units, typed_length

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

    def __init__(
        self, horse: HorseRecord, day: dt.date, library: Mapping[str, CareWords], units: Units = METRIC
    ) -> None:
        """The visits of a horse before a day; library: the care notes by name. units: those in which lengths stand."""
        self.day = day
        self.units = units
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
                return Last(visit.date, *(self.shown(one, "before", *steps) for one in (before, after)))
        return None

    def finding(self, foot: Foot, *steps: str) -> Last | None:
        """Findings of a foot at the last visit, as found."""
        last = next(self._last_values("feet", foot, *steps), None)
        return replace(last, found=self.shown(last.found, *steps)) if last else None

    def shown(self, value: Any, *steps: str) -> Any:
        """A value, or all within it, as a trimmer types it: inches with their unit. steps: to it in a foot."""
        if isinstance(value, dict):
            return {name: self.shown(inner, *steps, name) for name, inner in value.items()}
        is_length = isinstance(value, float) and extra(field_at(FootVisit, steps)).get("unit") == "mm"
        return typed_length(value) if is_length and self.units.inches else value

    def zones(self, foot: Foot) -> list[tuple[str, Last]]:
        """The zones of the wall at the latest visit to name any, each with what was found; none after half a year."""
        wall = next(self._last_values("feet", foot, "wall"), None)
        if wall is None or self.day - wall.day > HALF_A_YEAR:
            return []
        return [(zone, Last(wall.day, found=self._zone_words(zone, found))) for zone, found in wall.found.items()]

    def _zone_words(self, zone: str, found: WallZone) -> list[tuple[str, Any]]:
        """Findings of a zone of the wall by name; of a gap or a crack its length."""
        held = {name: value for name in type(found).model_fields if (value := getattr(found, name)) is not None}
        return [
            (name, self.shown(value.length, "wall", zone, name, "length"))
            if hasattr(value, "length")
            else (name, self.shown(value, "wall", zone, name))
            for name, value in held.items()
        ]

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

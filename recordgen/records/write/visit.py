"""The text of a new visit, ready to fill in by hand, with what was found last time beside each line."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from pathlib import Path
from types import MappingProxyType
from typing import Any

from recordgen.days import spoken_day
from recordgen.files import write_new, writing
from recordgen.nearest import did_you_mean
from recordgen.problems import Trouble, quoted
from recordgen.records.models.care_in_force import care_in_force
from recordgen.records.models.foot import WallZone
from recordgen.records.models.names import FEET, Foot, typed_foot
from recordgen.records.models.practice import HorseRecord, StableRecord
from recordgen.records.models.reference import CareWords
from recordgen.records.models.visit import Care, Next, StillOpen, Visit, endings
from recordgen.records.write.templates import rendered

HALF_A_YEAR = dt.timedelta(days=183)
NO_NOTES: Mapping[str, CareWords] = MappingProxyType({})
VISIT_SCHEMA = Path(".schemas") / "visit.json"


@dataclass(frozen=True)
class Last:
    """The last reading for one line: before and after the trim, or once, and on which day."""

    day: dt.date
    before: Any = None
    after: Any = None
    found: Any = None


class _PastVisits:
    """The visits before a day, asked for what was last written."""

    def __init__(self, horse: HorseRecord, day: dt.date, library: Mapping[str, CareWords]) -> None:
        self.day = day
        self.library = library
        self.visits = [visit for visit in horse.visits if visit.date < day]

    @property
    def latest(self) -> Visit | None:
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
        return next(self._found("feet", foot, *steps), None)

    def zones(self, foot: Foot) -> list[tuple[str, Last]]:
        """The zones of the wall at the latest visit to name any, each with what was found; none after half a year."""
        wall = next(self._found("feet", foot, "wall"), None)
        if wall is None or self.day - wall.day > HALF_A_YEAR:
            return []
        return [(zone, Last(wall.day, found=_zone_words(found))) for zone, found in wall.found.items()]

    def _found(self, *steps: str) -> Iterator[Last]:
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


def skeleton(
    horse: HorseRecord,
    day: dt.date,
    near_and_off: bool = False,
    schema: str | None = None,
    own: Path | None = None,
    library: Mapping[str, CareWords] = NO_NOTES,
    still_open: Sequence[StillOpen] = (),
) -> str:
    """The text of a new visit file: usual lines left empty, what was found last time as comments beside them.

    near_and_off: feet are named near_fore and off_fore rather than left_fore and right_fore.
    schema: where the editor's schema lies, as seen from the file. own: a practice's folder with its own templates.
    library: the care notes by name. still_open: the open cautions, each with a line ready that ends it.
    """
    feet = [(typed_foot(foot, near_and_off), foot) for foot in FEET]
    over = endings(still_open, near_and_off)
    return rendered(
        "visit.yaml.jinja",
        own,
        horse=horse.horse,
        day=day,
        feet=feet,
        past=_PastVisits(horse, day, library),
        schema=schema,
        over_by_a_word=over[False],
        over_by_a_vet=over[True],
    )


def start_visits(
    stable: StableRecord,
    folder: Path,
    day: dt.date,
    horse: str | None = None,
    near_and_off: bool = False,
    own: Path | None = None,
    library: Mapping[str, CareWords] = NO_NOTES,
    still_open: Callable[[HorseRecord], Sequence[StillOpen]] = lambda record: (),
) -> list[tuple[Path, bool]]:
    """Writes `<horse>/<day>.yaml` for each horse that has not left, and never over a file that is there.

    folder: the stable's folder. horse: the folder's name of one horse alone. still_open: tells a horse's open cautions;
    the others are as in `skeleton`. Comes out: each file, and whether it was
    written now.
    Raises Trouble where there is no such horse, where it has left, or where a file cannot be written.
    """
    schema = "../../" + VISIT_SCHEMA.as_posix() if (folder.parent / VISIT_SCHEMA).is_file() else None
    started = []
    for record in _wanted(stable, horse, day):
        path = folder / record.slug / f"{day.isoformat()}.yaml"
        text = skeleton(record, day, near_and_off, schema, own, library, still_open(record))
        started.append((path, _write_new(path, text)))
    return started


def _wanted(stable: StableRecord, horse: str | None, day: dt.date) -> list[HorseRecord]:
    here = [record for record in stable.horses if not _left(record, day)]
    if horse is None:
        if not here:
            way_out = f"Begin one: recordgen begin {stable.slug}/bramble"
            raise Trouble(
                f"there is no horse at {stable.stable.name}{' any more' if stable.horses else ' yet'}", way_out
            )
        return here
    named = [record for record in stable.horses if record.slug == horse]
    if not named:
        names = [record.slug for record in here]
        way_out = did_you_mean(horse, names, f"The horses there are: {', '.join(names) or 'none yet'}")
        raise Trouble(f"there is no horse {quoted(horse)} at {stable.stable.name}", way_out)
    if left := _left(named[0], day):
        raise Trouble(f"{named[0].horse.name} left on {spoken_day(left)}", "Take left out of its horse.yaml first")
    return named


def _left(record: HorseRecord, day: dt.date) -> dt.date | None:
    left = record.horse.left
    return left.date if left and left.date <= day else None


def _write_new(path: Path, text: str) -> bool:
    with writing(path, "The files before it stay as they are"):
        return write_new(path, text)

"""The text of a new visit, ready to fill in by hand, with what was found last time beside each line."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Mapping, Sequence
from pathlib import Path
from types import MappingProxyType

from recordgen.files import write_new, writing
from recordgen.nearest import did_you_mean
from recordgen.problems import Trouble, quoted
from recordgen.records.models.names import FEET, typed_foot
from recordgen.records.models.practice import HorseRecord, StableRecord
from recordgen.records.models.reference import CareWords
from recordgen.records.models.visit import StillOpen, endings
from recordgen.records.write.past_visits import PastVisits
from recordgen.records.write.short_foot import short_foot
from recordgen.records.write.templates import render_template
from recordgen.sentences import say, spoken_day
from recordgen.units import METRIC, Units

NO_NOTES: Mapping[str, CareWords] = MappingProxyType({})
VISIT_SCHEMA = Path(".schemas") / "visit.json"


def skeleton(
    horse: HorseRecord,
    day: dt.date,
    near_and_off: bool = False,
    schema: str | None = None,
    own: Path | None = None,
    library: Mapping[str, CareWords] = NO_NOTES,
    still_open: Sequence[StillOpen] = (),
    short: bool = False,
    units: Units = METRIC,
) -> str:
    """The text of a new visit file: usual lines left empty, what was found last time as comments beside them.

    short: one line a foot, with what this horse had before and nothing else.
    near_and_off: feet are named near_fore and off_fore rather than left_fore and right_fore.
    schema: where the editor's schema lies, as seen from the file. own: a practice's folder with its own templates.
    library: the care notes by name. still_open: the open cautions, each with a line ready that ends it. units: those in
    which lengths are typed.
    """
    feet = [(typed_foot(foot, near_and_off), foot) for foot in FEET]
    over = endings(still_open, near_and_off)
    return render_template(
        "visit_short.yaml.jinja" if short else "visit.yaml.jinja",
        own,
        horse=horse.horse,
        day=day,
        feet=feet,
        past=PastVisits(horse, day, library, units),
        short_foot=short_foot,
        schema=schema,
        inches=units.inches,
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
    short: bool = False,
    units: Units = METRIC,
) -> list[tuple[Path, bool]]:
    """Writes `<horse>/<day>.yaml` for each horse that has not left, and never over a file that is there.

    folder: the stable's folder. horse: the folder's name of one horse alone. still_open: tells a horse's open cautions;
    the others are as in `skeleton`. Comes out: each file, and whether it was
    written now.
    Raises Trouble where there is no such horse, where it has left, or where a file cannot be written.
    """
    schema = "../../" + VISIT_SCHEMA.as_posix() if (folder.parent / VISIT_SCHEMA).is_file() else None
    started = []
    for record in _choose_horses(stable, horse, day):
        path = folder / record.slug / f"{day.isoformat()}.yaml"
        text = skeleton(record, day, near_and_off, schema, own, library, still_open(record), short, units)
        started.append((path, _write_new(path, text)))
    return started


def _choose_horses(stable: StableRecord, horse: str | None, day: dt.date) -> list[HorseRecord]:
    here = [record for record in stable.horses if not _day_left(record, day)]
    if horse is None:
        if not here:
            way_out = say("Begin one: recordgen begin {stable}/bramble", stable=stable.slug)
            if stable.horses:
                raise Trouble(say("there is no horse at {stable} any more", stable=stable.stable.name), way_out)
            raise Trouble(say("there is no horse at {stable} yet", stable=stable.stable.name), way_out)
        return here
    named = [record for record in stable.horses if record.slug == horse]
    if not named:
        names = [record.slug for record in here]
        there = say("The horses there are: {names}", names=", ".join(names))
        raise Trouble(
            say("there is no horse {horse} at {stable}", horse=quoted(horse), stable=stable.stable.name),
            did_you_mean(horse, names, there),
        )
    if left := _day_left(named[0], day):
        raise Trouble(
            say("{horse} left on {day}", horse=named[0].horse.name, day=spoken_day(left)),
            say("Take left out of its horse.yaml first"),
        )
    return named


def _day_left(record: HorseRecord, day: dt.date) -> dt.date | None:
    left = record.horse.left
    return left.date if left and left.date <= day else None


def _write_new(path: Path, text: str) -> bool:
    with writing(path, say("The files before it stay as they are")):
        return write_new(path, text)

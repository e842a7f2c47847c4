"""Comments that somebody wrote by hand into a visit's file that was only begun, and not those of the skeleton."""

from __future__ import annotations

import datetime as dt
import re
from collections.abc import Iterator, Mapping
from pathlib import Path

from recordgen.records.load.folders import VISIT_FILE
from recordgen.records.models.horse import Horse
from recordgen.records.models.practice import HorseRecord
from recordgen.records.models.reference import CareWords
from recordgen.records.models.visit import Visit
from recordgen.records.receive.compare import there_on
from recordgen.records.write.visit import VISIT_SCHEMA, skeleton
from recordgen.records.yaml.read import read_partly
from recordgen.units import METRIC, Units

_COMMENT = re.compile(r"(?:^|\s)#\s?(.*)")


def written_by_hand(
    folder: Path, day: dt.date, near_and_off: bool, library: Mapping[str, CareWords], units: Units = METRIC
) -> list[str]:
    """The comments in a horse's begun file of a day that were not begun with it, without their `#`.

    folder: of the horse. near_and_off: how feet are named. library: the care notes by name. units: of lengths.
    """
    blank = next((one for one in there_on(folder, day) if one.is_blank), None)
    horse = _horse(folder) if blank else None
    if blank is None or horse is None:
        return []
    schema = "../../" + VISIT_SCHEMA.as_posix()
    own = folder.parent.parent
    forms = (
        skeleton(horse, day, near_and_off, schema, own, library, short=short, units=units) for short in (False, True)
    )
    usual = {comment for form in forms for comment in _comments(form)}
    return [comment for comment in _comments(blank.text) if comment not in usual]


def _comments(text: str) -> Iterator[str]:
    for line in text.splitlines():
        found = _COMMENT.search(line)
        if found and found[1].strip():
            yield found[1].strip()


def _horse(folder: Path) -> HorseRecord | None:
    horse, _ = read_partly(folder / "horse.yaml", "horse.yaml", Horse)
    files = sorted(path for path in folder.iterdir() if VISIT_FILE.fullmatch(path.name))
    visits = [written.record for file in files if (written := read_partly(file, file.name, Visit)[0])]
    filled = tuple(sorted((one for one in visits if not one.is_blank), key=lambda visit: visit.date))
    return HorseRecord(folder.name, folder.parent.name, horse.record, filled) if horse else None

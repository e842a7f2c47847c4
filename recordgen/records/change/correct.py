"""A visit that was kept is corrected, with the reason for it."""

from __future__ import annotations

from collections.abc import Mapping
from pathlib import Path

from recordgen.days import days_meant
from recordgen.git.changes import kinds_of_change
from recordgen.git.repository import list_contents
from recordgen.problems import Trouble, quoted
from recordgen.records.change.change import Change
from recordgen.records.change.subject import OneRecord, horse_of, stable_of
from recordgen.records.load.folders import VISIT_FILE
from recordgen.records.models.horse import Horse
from recordgen.records.yaml.edit import with_other
from recordgen.sentences import OR, listed, say

LONGEST_REASON = 100


def correct_visit(records: Path, which: str, day: str, why: str, values: Mapping[str, str]) -> Change:
    """A correction of a visit, kept with its reason, which the pages show beside it.

    day: as its file is named, such as 2026-10-14 or 2026-10-14-b. values: the new text of single values by their way,
    such as feet.left_fore.before.toe_length; where there are none, the file was corrected by hand and is kept so.
    Raises Trouble where there is no such visit, or nothing to correct.
    """
    horse = horse_of(records, which)
    home = stable_of(records, horse.folder.parent.name)
    file = visit_file(horse, day)
    why = plain_reason(why)
    raw = file.read_bytes()
    for way, value in values.items():
        raw = with_other(raw, way.split("."), value, str(file))
    if values and raw == file.read_bytes():
        raise Trouble(say("the visit says so already"), say("Nothing is to be corrected"))
    if not values:
        _require_changed(records, file)
    told = [say("{way} becomes {value}", way=way, value=value) for way, value in values.items()] or [
        say("{file} is kept as it lies now", file=file)
    ]
    return Change(
        records,
        f"{why}\n\n{home.record.name}: {horse.record.name}'s visit of {day} corrected",
        (say("{horse}'s visit of {day} is corrected: {why}", horse=horse.record.name, day=day, why=why), *told),
        "recordgen build",
        files={file: raw},
        by_hand=not values,
    )


def visit_file(horse: OneRecord[Horse], day: str) -> Path:
    """The file of a horse's visit. day: as it is named. Raises Trouble where there is none."""
    file = horse.folder / f"{day}.yaml"
    if VISIT_FILE.fullmatch(file.name) and file.is_file():
        return file
    meant = [one.isoformat() for one in days_meant(day)]
    if meant and meant != [day]:
        raise Trouble(
            say("{day} does not name a visit", day=quoted(day)),
            say("Write the day as its file: {meant}", meant=listed(meant, OR)),
        )
    days = sorted(path.stem for path in horse.folder.iterdir() if VISIT_FILE.fullmatch(path.name))
    way_out = (
        say("The last ones are {days}", days=", ".join(days[-3:]))
        if days
        else say("{horse} has none yet", horse=horse.record.name)
    )
    raise Trouble(say("{horse} has no visit {day}", horse=horse.record.name, day=quoted(day)), way_out)


def plain_reason(why: str) -> str:
    """A reason on one line. Raises Trouble where it is empty or long."""
    plain = " ".join(why.split())
    if not plain or len(plain) > LONGEST_REASON:
        raise Trouble(
            say("a reason has 1 to {longest_reason} letters", longest_reason=LONGEST_REASON),
            say('Say it shortly, such as "misread the rule"'),
        )
    return plain


def _require_changed(records: Path, file: Path) -> None:
    """Raises Trouble where nothing was corrected by hand since git kept the visit, or git never did."""
    if file.relative_to(records).as_posix() not in list_contents(records):
        raise Trouble(say("this visit is not in git yet"), say("Change its file as you like, then: recordgen commit"))
    if file not in kinds_of_change(records):
        way_out = say("Correct {file} first, or name the value: --set feet.left_fore.before.toe_length=82", file=file)
        raise Trouble(say("the visit is as git keeps it"), way_out)

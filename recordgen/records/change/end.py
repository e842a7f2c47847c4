"""A record ends (died, sold, left), or is taken up again."""

from __future__ import annotations

import datetime as dt
from collections.abc import Iterator
from pathlib import Path

from recordgen.problems import Trouble
from recordgen.records.change.change import Change
from recordgen.records.change.subject import OneRecord, horse_of, stable_of
from recordgen.records.load.folders import VISIT_FILE
from recordgen.records.models.horse import Horse
from recordgen.records.models.stable import Left
from recordgen.records.models.visit import Visit
from recordgen.records.yaml.edit import with_value, without_key
from recordgen.records.yaml.read import read_partly
from recordgen.sentences import Said, counted, say, say_counted, spoken_day


def _reason(why: str) -> str:
    """The reason on one line. Raises Trouble for an empty one."""
    plain = " ".join(why.split())
    if not plain:
        raise Trouble(say("a reason is empty"), say("Say why it ends, such as died, sold or left"))
    return plain


def end_horse(records: Path, which: str, day: dt.date, why: str) -> Change:
    """A horse's record ends on a day. Raises Trouble where it ended before, or where a later visit is there."""
    horse = horse_of(records, which)
    home = stable_of(records, horse.folder.parent.name)
    why = _reason(why)
    _refuse_ended(horse.record.name, horse.record.left)
    _refuse_later_visit(horse, day)
    return Change(
        records,
        f"{home.record.name}: the record of {horse.record.name} ends, {why}",
        (
            say("the record of {horse} ends on {day}: {why}", horse=horse.record.name, day=spoken_day(day), why=why),
            _STAYS,
        ),
        say("recordgen build (recordgen resume {which} takes it up again)", which=which),
        files={horse.file: with_value(horse.raw, "left", {"date": day, "why": why}, str(horse.file))},
    )


_STAYS = say("everything that was written stays, and nothing more is planned")


def end_stable(records: Path, stable: str, day: dt.date, why: str) -> Change:
    """A stable is visited no more from a day on, and the records of its horses end with it. Raises Trouble."""
    home = stable_of(records, stable)
    why = _reason(why)
    _refuse_ended(home.record.name, home.record.left)
    left = {"date": day, "why": why}
    files = {home.file: with_value(home.raw, "left", left, str(home.file))}
    here = [horse for horse in _horses(records, home.folder) if horse.record.left is None]
    for horse in here:
        _refuse_later_visit(horse, day)
        files[horse.file] = with_value(horse.raw, "left", left, str(horse.file))
    return Change(
        records,
        f"{home.record.name}: visited no more, {why}",
        (
            say(
                "{stable} is visited no more from {day} on: {why}",
                stable=home.record.name,
                day=spoken_day(day),
                why=why,
            ),
            _that_end_too(len(here)),
            _STAYS,
        ),
        say("recordgen build (recordgen resume {which} takes it up again)", which=stable),
        files=files,
    )


def _that_end_too(horses: int) -> Said:
    if not horses:
        return say("no horse is there any more")
    return say_counted("the record of {count} horse ends with it", "the records of {count} horses end with it", horses)


def resume_horse(records: Path, which: str) -> Change:
    """A horse's record is taken up again. Raises Trouble where it never ended."""
    horse = horse_of(records, which)
    home = stable_of(records, horse.folder.parent.name)
    _require_ended(horse.record.name, horse.record.left)
    return Change(
        records,
        f"{home.record.name}: the record of {horse.record.name} taken up again",
        (say("the record of {horse} at {stable} is taken up again", horse=horse.record.name, stable=home.record.name),),
        f"recordgen visit {which}",
        files={horse.file: without_key(horse.raw, "left", str(horse.file))},
    )


def resume_stable(records: Path, stable: str) -> Change:
    """A stable is visited again, and the records that ended with it are taken up. Raises Trouble."""
    home = stable_of(records, stable)
    _require_ended(home.record.name, home.record.left)
    back = [horse for horse in _horses(records, home.folder) if horse.record.left == home.record.left]
    raws = {home.file: home.raw} | {horse.file: horse.raw for horse in back}
    files = {file: without_key(raw, "left", str(file)) for file, raw in raws.items()}
    return Change(
        records,
        f"{home.record.name}: visited again",
        (say("{stable} is visited again, with {horses}", stable=home.record.name, horses=counted(len(back), "horse")),),
        f"recordgen visit {stable}",
        files=files,
    )


def _horses(records: Path, folder: Path) -> Iterator[OneRecord[Horse]]:
    for file in sorted(folder.glob("*/horse.yaml")):
        yield horse_of(records, f"{folder.name}/{file.parent.name}")


def _refuse_ended(name: str, left: Left | None) -> None:
    if left:
        raise Trouble(
            say("{name} ended on {date} already", name=name, date=spoken_day(left.date)),
            say("Correct the day in its file, or resume it"),
        )


def _require_ended(name: str, left: Left | None) -> None:
    if left is None:
        raise Trouble(say("{name} never ended", name=name), say("Nothing is to be done"))


def _refuse_later_visit(horse: OneRecord[Horse], day: dt.date) -> None:
    """Raises Trouble where a visit that holds something is later than the end."""
    for path in sorted(horse.folder.iterdir(), reverse=True):
        written = read_partly(path, path.name, Visit)[0] if VISIT_FILE.fullmatch(path.name) else None
        if written and not written.record.is_blank:
            if written.record.date > day:
                message = say(
                    "{horse} was visited on {date}, after that day",
                    horse=horse.record.name,
                    date=spoken_day(written.record.date),
                )
                raise Trouble(message, say("Give a later day with --date"))
            return

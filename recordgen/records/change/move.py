"""A horse moves to another stable, with its past or without."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

from recordgen.problems import Trouble
from recordgen.records.change.change import Change
from recordgen.records.change.subject import OneRecord, free_folder, horse_of, stable_of
from recordgen.records.models.horse import Horse
from recordgen.records.models.stable import Stable
from recordgen.records.yaml.edit import with_value, without_key
from recordgen.sentences import say

# Parts that belong to a horse's record at one stable and goes to no other reader with it.
_STAYS = ("left", "consent", "private_note", "seen")


def move_horse(records: Path, which: str, stable: str, slug: str | None = None) -> Change:
    """A horse's folder goes to another stable, with all its visits. Raises Trouble."""
    horse, home, there, folder = _ways(records, which, stable, slug)
    files = {folder / "horse.yaml": without_key(horse.raw, "left", str(horse.file))} if horse.record.left else {}
    return Change(
        records,
        f"{there.record.name}: {horse.record.name} moved from {home.slug}/{horse.slug}",
        (
            say(
                "{horse} moves from {home} to {there}",
                horse=horse.record.name,
                home=home.record.name,
                there=there.record.name,
            ),
            say("{old} becomes {new}", old=horse.folder, new=folder),
            say(
                "Whoever reads the site of {stable} will read all its visits. If they shall not, say --without-past: "
                "the record here ends, and a new one begins there.",
                stable=there.record.name,
            ),
        ),
        f"recordgen summary {there.slug}/{folder.name}",
        ((horse.folder, folder),),
        files,
    )


def move_without_past(records: Path, which: str, stable: str, day: dt.date, slug: str | None = None) -> Change:
    """A horse's record ends here on a day and a new one begins there, without what was written. Raises Trouble."""
    horse, home, there, folder = _ways(records, which, stable, slug)
    if horse.record.left:
        raise Trouble(
            say("the record of {horse} ended on {date}", horse=horse.record.name, date=horse.record.left.date),
            say("Look at it first"),
        )
    shown = str(horse.file)
    begun = horse.raw
    for key in _STAYS:
        begun = without_key(begun, key, shown)
    ended = with_value(horse.raw, "left", {"date": day, "why": f"moved to {there.record.name}"}, shown)
    return Change(
        records,
        f"{there.record.name}: {horse.record.name} begun anew, from {home.slug}",
        (
            say(
                "the record of {horse} at {home} ends on {day}, and stays there",
                horse=horse.record.name,
                home=home.record.name,
                day=day,
            ),
            say(
                "{file}  a new one at {there}, without earlier visits",
                file=folder / "horse.yaml",
                there=there.record.name,
            ),
        ),
        f"recordgen visit {there.slug}/{folder.name}",
        files={horse.file: ended, folder / "horse.yaml": begun},
    )


def _ways(
    records: Path, which: str, stable: str, slug: str | None
) -> tuple[OneRecord[Horse], OneRecord[Stable], OneRecord[Stable], Path]:
    horse, there = horse_of(records, which), stable_of(records, stable)
    home = stable_of(records, horse.folder.parent.name)
    if home.slug == there.slug:
        raise Trouble(
            say("{horse} is at {home} already", horse=horse.record.name, home=home.record.name),
            say("Name another stable"),
        )
    return horse, home, there, free_folder(there.folder, horse.record.name, slug or horse.slug)

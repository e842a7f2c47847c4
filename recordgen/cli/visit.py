"""recordgen visit."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable, Sequence
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.options import DayType, exit_on_trouble, records_option
from recordgen.cli.places import HorseOrStable
from recordgen.cli.terminal import echo
from recordgen.sentences import say

if TYPE_CHECKING:
    from recordgen.records.load.everything import Whole
    from recordgen.records.models.practice import HorseRecord
    from recordgen.records.models.visit import StillOpen


@click.command("visit")
@click.argument("which", metavar="STABLE[/HORSE]", type=HorseOrStable())
@records_option
@click.option("--horse", help="Begin this horse's file alone.")
@click.option("--date", "day", type=DayType(), default=lambda: dt.date.today(), help="Day of the visit; else today.")
@click.option("--short", is_flag=True, help="One line a foot, with what this horse had before and nothing else.")
def command(which: str, records: Path, horse: str | None, day: dt.date, short: bool) -> None:
    """Begin the visit files of a stable or of one horse, with the last values as comments beside the empty lines.

    \b
        recordgen visit willowmere
        recordgen visit willowmere --short
        recordgen visit willowmere/bramble --date 2026-11-25

    A file that is there already is never touched.
    """
    stable, _, named = which.partition("/")
    horse = named or horse
    if day > dt.date.today():
        raise click.UsageError(
            say("{day} is still to come. Begin a visit on its day: records of later days are refused.", day=day)
        )
    with exit_on_trouble():
        from recordgen.records.load.everything import read_whole
        from recordgen.records.load.named import folder_of_horse
        from recordgen.records.write.visit import start_visits
        from recordgen.units import UNITS

        whole = read_whole(records, max(day, dt.date.today()), stable)
        practice, notes, still_open = whole.practice, whole.reference.care, _still_open(whole, day)
        near_and_off, units = practice.file.feet == "near and off", UNITS[practice.file.units]
        folder, here = records / stable, practice.stables[0]
        one = horse and folder_of_horse(records, stable, horse)
        begun = start_visits(here, folder, day, one, near_and_off, records, notes, still_open, short, units)
        for path, written in begun:
            done = say("begun") if written else say("was there already and stays as it is")
            echo(say("{file}  {done}", file=path, done=done))


def _still_open(whole: Whole, day: dt.date) -> Callable[[HorseRecord], Sequence[StillOpen]]:
    """Tells what of a horse is open after its visits before a day."""
    from recordgen.hoof.cautions.typed_names import still_open
    from recordgen.hoof.context import Context

    ways = Context.of(whole.practice.file, whole.reference, whole.repeated)
    return lambda record: still_open(record.horse, [visit for visit in record.visits if visit.date < day], ways, day)

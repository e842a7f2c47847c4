"""recordgen visit"""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.options import DayType, records_option, told_plainly


@click.command("visit")
@click.argument("stable")
@records_option
@click.option("--horse", help="Begin this horse's file alone (the name of its folder).")
@click.option("--date", "day", type=DayType(), default=lambda: dt.date.today(), help="Day of the visit; else today.")
def command(stable: str, records: Path, horse: str | None, day: dt.date) -> None:
    """Begin the visit files of a stable, with the last values as comments beside the empty lines.

    \b
        recordgen visit willowmere
        recordgen visit willowmere --horse bramble --date 2026-11-25

    A file that is there already is never touched.
    """
    with told_plainly():
        from recordgen.records.starting import start_visits
        from recordgen.records.whole import read_whole

        whole = read_whole(records, max(day, dt.date.today()), stable)
        practice, notes = whole.practice, whole.reference.care
        near_and_off = practice.file.feet == "near and off"
        folder = records / stable
        for path, written in start_visits(practice.stables[0], folder, day, horse, near_and_off, records, notes):
            click.echo(f"{path}  {'begun' if written else 'was there already and stays as it is'}")

"""recordgen end."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.changing import carry_out, dry_run_option
from recordgen.cli.options import DayType, exit_on_trouble, records_option, today_option
from recordgen.cli.places import HorseOrStable


@click.command("end")
@click.argument("which", metavar="STABLE[/HORSE]", type=HorseOrStable())
@records_option
@today_option
@click.option("--why", required=True, metavar="WORD", help="died, sold, left, or in your own words.")
@click.option("--date", "day", type=DayType(), help="The day; else today.")
@dry_run_option
def command(which: str, records: Path, today: dt.date, why: str, day: dt.date | None, dry_run: bool) -> None:
    """End the record of a horse that died, was sold or left, or of a stable that is visited no more.

    \b
        recordgen end willowmere/bramble --why died --date 2026-11-20
        recordgen end "Hazel Bottom" --why left --dry-run

    Everything that was written stays, and its pages tell kindly that it ended. Nothing more is planned.
    """
    with exit_on_trouble():
        from recordgen.records.change.end import end_horse, end_stable

        planned = (end_horse if "/" in which else end_stable)(records, which, day or today, why)
        carry_out(planned, today, dry_run)

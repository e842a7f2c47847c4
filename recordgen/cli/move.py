"""recordgen move."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.changing import carry_out, dry_run_option, folder_option
from recordgen.cli.options import DayType, exit_on_trouble, records_option, today_option
from recordgen.cli.places import StableName, horse_argument
from recordgen.sentences import say


@click.command("move")
@horse_argument
@click.argument("stable", type=StableName())
@records_option
@today_option
@click.option("--without-past", is_flag=True, help="End the record here, and begin a new one there.")
@click.option("--date", "day", type=DayType(), help="With --without-past: its last day here; else today.")
@folder_option
@dry_run_option
def command(
    which: str,
    stable: str,
    records: Path,
    today: dt.date,
    without_past: bool,
    day: dt.date | None,
    folder: str | None,
    dry_run: bool,
) -> None:
    """Move a horse to another stable, with all that was written of it.

    \b
        recordgen move willowmere/bramble "Hazel Bottom" --dry-run
        recordgen move willowmere/bramble hazel-bottom --without-past

    Whoever reads the new stable's site reads its visits from then on. Where a new owner shall not see them, the record
    ends here and a new one begins there.
    """
    if day and not without_past:
        raise click.UsageError(say("--date goes with --without-past alone."))
    with exit_on_trouble():
        from recordgen.records.change.move import move_horse, move_without_past

        if without_past:
            planned = move_without_past(records, which, stable, day or today, folder)
        else:
            planned = move_horse(records, which, stable, folder)
        carry_out(planned, today, dry_run)

"""recordgen rename."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.changing import carry_out, dry_run_option, folder_option
from recordgen.cli.options import exit_on_trouble, records_option, today_option
from recordgen.cli.places import HorseOrStable
from recordgen.cli.terminal import echo


@click.command("rename")
@click.argument("which", metavar="STABLE[/HORSE]", type=HorseOrStable())
@click.argument("name")
@records_option
@today_option
@folder_option
@dry_run_option
def command(which: str, name: str, records: Path, today: dt.date, folder: str | None, dry_run: bool) -> None:
    """Give a stable or a horse another name, and its folder with it.

    \b
        recordgen rename willowmere/bramble "Old Bramble"
        recordgen rename willowmere "Willow Mere Yard" --dry-run

    Its history, its pages' addresses and the words of its readers stay.
    """
    with exit_on_trouble():
        from recordgen.records.change.rename import rename_horse, rename_stable

        planned = (rename_horse if "/" in which else rename_stable)(records, which, name, folder)
        carry_out(planned, today, dry_run)
        if not dry_run:
            _tell_keys(records)


def _tell_keys(records: Path) -> None:
    """Names the step that is left where keys lie under the name before."""
    from recordgen.private.keystore.moved_keys import keys_to_bring

    for problem in keys_to_bring(records):
        echo(f"{problem.way_out}")

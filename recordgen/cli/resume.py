"""recordgen resume."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.changing import carry_out, dry_run_option
from recordgen.cli.options import exit_on_trouble, records_option, today_option
from recordgen.cli.places import HorseOrStable


@click.command("resume")
@click.argument("which", metavar="STABLE[/HORSE]", type=HorseOrStable())
@records_option
@today_option
@dry_run_option
def command(which: str, records: Path, today: dt.date, dry_run: bool) -> None:
    """Take up again the record of a horse or a stable that ended.

    \b
        recordgen resume willowmere/bramble
        recordgen resume "Hazel Bottom" --dry-run

    The horses whose records ended with their stable are taken up with it.
    """
    with exit_on_trouble():
        from recordgen.records.change.end import resume_horse, resume_stable

        carry_out((resume_horse if "/" in which else resume_stable)(records, which), today, dry_run)

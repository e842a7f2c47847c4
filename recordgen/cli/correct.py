"""recordgen correct."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.changing import carry_out, dry_run_option
from recordgen.cli.options import exit_on_trouble, records_option, today_option
from recordgen.cli.places import horse_argument
from recordgen.sentences import say


@click.command("correct")
@horse_argument
@click.argument("visit", metavar="DAY")
@records_option
@today_option
@click.option("--because", "why", required=True, metavar="REASON", help="Why; shown beside the visit.")
@click.option("--set", "values", metavar="PLACE=VALUE", multiple=True, help="The right value; may be said again.")
@dry_run_option
def command(
    which: str, visit: str, records: Path, today: dt.date, why: str, values: tuple[str, ...], dry_run: bool
) -> None:
    """Correct a visit that was kept, with the reason.

    \b
        recordgen correct bramble 2026-11-04 --because "misread the rule" --set feet.LF.before.toe_length=82
        recordgen correct bramble 2026-11-04 --because "it was the right fore"

    Without --set it keeps what you corrected in the file by hand. What stood there before stays in git, and the pages
    show that it was corrected, when and why.
    """
    pairs = [value.partition("=") for value in values]
    if any(not sign or not place for place, sign, _ in pairs):
        raise click.UsageError(say("Write --set PLACE=VALUE, such as feet.LF.before.toe_length=82."))
    with exit_on_trouble():
        from recordgen.records.change.correct import correct_visit

        planned = correct_visit(records, which, visit, why, {place: value for place, _, value in pairs})
        carry_out(planned, today, dry_run)

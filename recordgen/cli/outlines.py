"""recordgen outlines."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.changing import carry_out, dry_run_option
from recordgen.cli.options import exit_on_trouble, records_option, today_option
from recordgen.cli.terminal import echo
from recordgen.sentences import say


@click.command("outlines")
@records_option
@today_option
@dry_run_option
def command(records: Path, today: dt.date, dry_run: bool) -> None:
    """Make your own table of usual outlines of a sole, once 50 soles are traced.

    \b
        recordgen outlines

    Between taps a line runs as outlines usually do; the table says how. Soles traced before stay as they were drawn,
    since each names its table.
    """
    with exit_on_trouble():
        from recordgen.hoof.tracing.own_outlines import FEWEST, own_outlines, traced_soles
        from recordgen.records.change.outlines import keep_outlines
        from recordgen.records.load.everything import read_whole
        from recordgen.sentences import counted

        practice = read_whole(records, today).practice
        soles = [sole for horse in practice.horses for sole in traced_soles(horse.visits)]
        if dry_run and len(soles) < FEWEST:
            echo(
                say(
                    "{soles} so far; from {fewest} on you can make a table of your own.",
                    soles=counted(len(soles), "traced sole"),
                    fewest=FEWEST,
                )
            )
            return
        carry_out(keep_outlines(records, own_outlines(soles), len(soles), today), today, dry_run)

"""recordgen undo."""

from __future__ import annotations

from pathlib import Path

import click

from recordgen.cli.changing import dry_run_option
from recordgen.cli.options import exit_on_trouble, records_option
from recordgen.cli.terminal import echo
from recordgen.sentences import say


@click.command("undo")
@records_option
@dry_run_option
def command(records: Path, dry_run: bool) -> None:
    """Take back the last change that git kept, by an entry of its own.

    \b
        recordgen undo --dry-run
        recordgen undo

    Nothing is rewritten: both entries stay. Once more does the change again.
    """
    with exit_on_trouble():
        from recordgen.records.change.undo import plan_undo, undo

        planned = plan_undo(records)
        for file in planned.files:
            echo(file)
        if not dry_run:
            undo(planned)
        echo(
            (say("Would take back: {last}", last=planned.last))
            if dry_run
            else say("Took back: {last}", last=planned.last)
        )
        echo(say("Nothing was changed.") if dry_run else say("Next: recordgen check (recordgen undo does it again)"))

"""recordgen commit."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.options import exit_on_trouble, print_warnings, records_option, today_option
from recordgen.cli.terminal import echo
from recordgen.sentences import say


@click.command("commit")
@records_option
@today_option
@click.option("--dry-run", is_flag=True, help="Print the entries and make none.")
def command(records: Path, today: dt.date, dry_run: bool) -> None:
    """Check the records, then keep what changed in git: one entry for each stable, like a line of a diary.

    \b
        recordgen commit
        recordgen commit --dry-run

    While anything is wrong, nothing is kept. What is no record, such as an original photograph or a sheet, is named and
    never added.
    """
    with exit_on_trouble():
        from recordgen.git.changes import kinds_of_change
        from recordgen.git.keep import commit
        from recordgen.records.history.moves import moves
        from recordgen.records.load.everything import read_whole
        from recordgen.records.write.commits import entries

        whole = read_whole(records, today, files=True)
        print_warnings(list(whole.warnings), whole.seen_before)
        changed = kinds_of_change(records)
        made = entries(whole.practice, changed, moves(records, changed))
        for entry in made:
            if not dry_run:
                commit(records, entry.paths, entry.says)
            echo(entry.says)
    if not made:
        echo(say("Nothing has changed since the last entry."))

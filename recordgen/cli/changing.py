"""Tells a planned change, makes it, and names what comes next: shared by the commands that change records."""

from __future__ import annotations

import datetime as dt
from collections.abc import Callable
from typing import TYPE_CHECKING, Any

import click

from recordgen.cli.terminal import echo
from recordgen.sentences import say

if TYPE_CHECKING:
    from recordgen.records.change.change import Change

_MADE = {
    "kept": say("Kept in git; recordgen undo takes it back."),
    "waits": say("Written; recordgen commit keeps it with what is new there."),
    "without git": say("Done. These records are in no git repository."),
}
dry_run_option = click.option("--dry-run", is_flag=True, help="Tell what would be done, and do nothing.")
folder_option: Callable[[Any], Any] = click.option(
    "--folder", metavar="NAME", help="The folder's own name; else it is made from the name."
)


def carry_out(change: Change, today: dt.date, dry_run: bool) -> None:
    """Tell a change and make it, unless it is only to be told."""
    from recordgen.records.change.change import make

    if dry_run:
        change.look_over()
        _tell(change)
        echo(say("Nothing was changed."))
        return
    made = make(change, today)
    _tell(change)
    echo(_MADE[made])
    echo(say("Next: {then}", then=change.then))


def _tell(change: Change) -> None:
    for line in change.told:
        echo(line)

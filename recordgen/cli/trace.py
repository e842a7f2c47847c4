"""recordgen trace."""

from __future__ import annotations

import sys
import webbrowser
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.options import exit_on_trouble, records_option
from recordgen.cli.terminal import echo
from recordgen.sentences import say

if TYPE_CHECKING:
    from recordgen.records.models.tracing import TracedMoment


@click.command("trace")
@click.argument("photo", type=click.Path(path_type=Path))
@records_option
@click.option(
    "--moment", type=click.Choice(["before", "after"]), help="The trim's, where the picture's name tells none."
)
@click.option("--port", type=click.IntRange(0, 65535), default=8002, show_default=True, help="Port on this machine.")
def command(photo: Path, records: Path, moment: TracedMoment | None, port: int) -> None:
    """Trace a photograph of a foot by a few taps or clicks, and write it into its visit.

    \b
        recordgen trace willowmere/bramble/photos/2026-06-03-right-hind-sole-after.jpg

    The screen opens on this machine alone. What you tapped is kept in the browser until it is written, also where you
    close it in the middle. Nothing else in the visit is touched.
    """
    with exit_on_trouble():
        from recordgen.site.trace.screen import trace_photo

        written = trace_photo(records, photo, moment, port, _tell)
        echo(
            say("{written}  the tracing was written", written=written)
            if written
            else say("Nothing was written; the browser keeps the points.")
        )


def _tell(address: str) -> None:
    echo(say("Open {address} in a browser; end with Ctrl+C.", address=address))
    if sys.stdout.isatty():
        webbrowser.open(address)

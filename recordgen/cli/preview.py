"""recordgen preview."""

from __future__ import annotations

import datetime as dt
from pathlib import Path
from typing import TYPE_CHECKING

import click

from recordgen.cli.options import DayType, exit_on_trouble, explain_taken_port, records_option
from recordgen.cli.places import StableName
from recordgen.cli.terminal import echo
from recordgen.sentences import say

if TYPE_CHECKING:
    from recordgen.site.model import Site


@click.command("preview")
@click.argument("stable", required=False, type=StableName())
@records_option
@click.option("--today", type=DayType(), help="Show the pages as of this day; else of the day of each rebuild.")
@click.option("--port", type=click.IntRange(1, 65535), default=8000, show_default=True, help="Port on this machine.")
def command(stable: str | None, records: Path, today: dt.date | None, port: int) -> None:
    """Show a site in a browser on this machine, rebuilt whenever a record changes.

    \b
        recordgen preview
        recordgen preview willowmere

    Without a stable it shows the trimmer's own site. Nobody else on the network can open it.
    """
    from recordgen.site.build import render_one_site
    from recordgen.site.engine import serve_site

    def make_again() -> Site | None:
        try:
            with exit_on_trouble():
                return render_one_site(records, today or dt.date.today(), stable)
        except click.exceptions.Exit:
            return None

    with exit_on_trouble():
        first = render_one_site(records, today or dt.date.today(), stable)
        echo(say("Open http://127.0.0.1:{port}/ in a browser; end with Ctrl+C.", port=port))
        with explain_taken_port(port):
            serve_site(first, make_again, records, port)

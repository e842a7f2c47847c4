"""recordgen field."""

from __future__ import annotations

import datetime as dt
from pathlib import Path

import click

from recordgen.cli.options import exit_on_trouble, explain_taken_port, records_option, today_option
from recordgen.cli.places import StableName
from recordgen.cli.terminal import echo
from recordgen.sentences import say


@click.command("field")
@click.argument("stables", nargs=-1, type=StableName())
@records_option
@today_option
@click.option("--out", type=click.Path(path_type=Path), default=Path("sites"), help="Folder for the sites.")
@click.option("--serve", is_flag=True, help="Show it on this machine, to try it; end with Ctrl+C.")
@click.option("--port", type=click.IntRange(1, 65535), default=8001, show_default=True, help="Port on this machine.")
def command(stables: tuple[str, ...], records: Path, today: dt.date, out: Path, serve: bool, port: int) -> None:
    """Make the page for the phone, on which a visit is written down beside the horse.

    \b
        recordgen field
        recordgen field willowmere tithe-barn --serve

    It holds the horses with their last values and open cautions, works without a signal, and hands its notes over as a
    file for recordgen receive. Like any site of yours it is not sealed until it is published.
    """
    with exit_on_trouble():
        from recordgen.private.keystore.field_key import field_key
        from recordgen.private.sharing.output_folder import refuse_sites
        from recordgen.site.field.build import build_field, serve_field

        refuse_sites(out, records)
        folder = build_field(records, today, stables, out, field_key(records).public)
        echo(say("{folder}  the field page", folder=folder / "index.html"))
        if serve:
            echo(say("Open http://127.0.0.1:{port}/ in a browser; end with Ctrl+C.", port=port))
            with explain_taken_port(port):
                serve_field(folder, port)
        else:
            echo(say("Put it on your phone: recordgen publish field-notes. Or try it here: recordgen field --serve"))

"""The text as printed, with every sign that does not show as itself spelled out."""

from __future__ import annotations

import click

from recordgen.problems import visible


def echo(text: object = "", err: bool = False, nl: bool = True) -> None:
    """Print a text. Signs that would move the cursor, turn the line round or show nothing are spelled out.

    err: to the channel for errors. nl: with the end of a line. Every command prints with this alone.
    """
    click.echo(visible(str(text)), err=err, nl=nl)

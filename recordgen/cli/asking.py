"""Questions and secrets on a terminal."""

from __future__ import annotations

import sys

import click

from recordgen.cli.terminal import echo


def must_be_askable(yes: bool) -> None:
    """Ends with exit code 2 where nobody said yes beforehand and nobody can be asked."""
    if not yes and not sys.stdin.isatty():
        raise click.UsageError("Nobody can be asked here. Look at a terminal first, or say --yes.")


def show_once(told: str, secret: str) -> None:
    """Print what is never printed again, on a line of its own."""
    echo(f"\n{told}\n\n    {secret}\n")

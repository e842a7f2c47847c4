"""Questions and secrets on a terminal."""

from __future__ import annotations

import sys
from typing import Any

import click

from recordgen.cli.language import in_our_words
from recordgen.cli.terminal import Waiting, echo
from recordgen.sentences import say


def must_be_askable(yes: bool) -> None:
    """Ends with exit code 2 where nobody said yes beforehand and nobody can be asked."""
    if not yes and not can_ask():
        raise click.UsageError(say("Nobody can be asked here. Look at a terminal first, or say --yes."))


def can_ask() -> bool:
    """Tell whether somebody sits at a terminal and can be asked."""
    return sys.stdin.isatty()


def ask(words: str, **more: Any) -> str:
    """The answer to a question on the terminal. more: as click.prompt takes it."""
    Waiting.end()
    return str(click.prompt(in_our_words(words), **more))


def agrees(words: str) -> bool:
    """Tell whether the answer to a question on the terminal is yes."""
    Waiting.end()
    return click.confirm(in_our_words(words))


def show_once(told: str, secret: str) -> None:
    """Print what is never printed again, on a line of its own."""
    echo(f"\n{told}\n\n    {secret}\n")

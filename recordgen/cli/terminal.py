"""The text as printed, with every sign that does not show as itself spelled out."""

from __future__ import annotations

import os
import shutil
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager

import click

from recordgen.problems import visible

# Longer than this nobody should wait without a word.
PATIENCE_SECONDS = 1.0


def echo(text: object = "", err: bool = False, nl: bool = True, colour: str | None = None) -> None:
    """Print a text. Signs that would move the cursor, turn the line round or show nothing are spelled out.

    err: to the channel for errors. nl: with the end of a line. colour: such as red, where colour may be used. Every
    command prints with this alone.
    """
    Waiting.wipe()
    shown = visible(str(text))
    click.echo(click.style(shown, fg=colour) if colour and has_colour(err) else shown, err=err, nl=nl)


def width() -> int | None:
    """How many signs a line holds on this terminal; None where it goes to a file or another program."""
    return shutil.get_terminal_size().columns if sys.stdout.isatty() else None


def has_colour(err: bool = False) -> bool:
    """Whether colour may be used: on a terminal, unless NO_COLOR is set.

    Source: no-color.org. From memory, not read.
    """
    channel = sys.stderr if err else sys.stdout
    return channel.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


@contextmanager
def waiting_told(patience_seconds: float = PATIENCE_SECONDS) -> Iterator[None]:
    """Tells on a terminal how long a command has been at work, from a second on, until it prints something."""
    if not (sys.stderr.isatty() and sys.stdout.isatty()) or Waiting.now:
        yield
        return
    Waiting.now = Waiting(patience_seconds)
    Waiting.now.start()
    try:
        yield
    finally:
        Waiting.wipe()


class Waiting(threading.Thread):
    """Writes the seconds into one line, which is wiped before anything else is printed."""

    now: Waiting | None = None

    def __init__(self, patience_seconds: float) -> None:
        super().__init__(daemon=True)
        self.patience_seconds = patience_seconds
        self.over = threading.Event()
        self.line = ""

    def run(self) -> None:
        """Write the line anew each second until it is over."""
        begun = time.monotonic()
        while not self.over.wait(self.patience_seconds):
            self.line = f"At work for {time.monotonic() - begun:.0f} s …"
            sys.stderr.write(f"\r{self.line}")
            sys.stderr.flush()

    @classmethod
    def wipe(cls) -> None:
        """Take the line away, and write no more."""
        found, cls.now = cls.now, None
        if found:
            found.over.set()
            if found.is_alive():
                found.join()
            if found.line:
                sys.stderr.write(f"\r{' ' * len(found.line)}\r")
                sys.stderr.flush()

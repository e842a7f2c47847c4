"""The text as printed, with every sign that does not show as itself spelled out."""

from __future__ import annotations

import os
import shutil
import sys
import threading
import time
from collections.abc import Iterator
from contextlib import contextmanager
from typing import TYPE_CHECKING

import click

from recordgen.cli.language import in_our_words
from recordgen.problems import visible
from recordgen.progress import listened
from recordgen.sentences import say, standing_alone
from recordgen.workers import STILL

if TYPE_CHECKING:
    from click._termui_impl import ProgressBar

# Longer than this nobody should wait without a word.
PATIENCE_SECONDS = 1.0
# The line empty, and the cursor to be seen, which a line of progress hides. Source: ECMA-48, EL; VT510, DECTCEM.
WIPED = "\r\x1b[K\x1b[?25h"


def echo(text: object = "", err: bool = False, nl: bool = True, colour: str | None = None) -> None:
    """Print a text; a sentence in the practice's language, with a capital letter, since it stands alone.

    Signs that would move the cursor, turn the line round or show nothing are spelled out.

    err: to the channel for errors. nl: with the end of a line. colour: such as red, where colour may be used. Every
    command prints with this alone.
    """
    Waiting.wipe()
    shown = visible(standing_alone(text, in_our_words(text)))
    click.echo(click.style(shown, fg=colour) if colour and has_colour(err) else shown, err=err, nl=nl)


def width() -> int | None:
    """Tell how many signs a line holds on this terminal; None where it goes to a file or another program."""
    return shutil.get_terminal_size().columns if sys.stdout.isatty() else None


def has_colour(err: bool = False) -> bool:
    """Tell whether colour may be used: on a terminal, unless NO_COLOR is set.

    Source: no-color.org. From memory, not read.
    """
    channel = sys.stderr if err else sys.stdout
    return channel.isatty() and not os.environ.get("NO_COLOR") and os.environ.get("TERM") != "dumb"


@contextmanager
def show_waiting(patience_seconds: float = PATIENCE_SECONDS) -> Iterator[None]:
    """Tells on a terminal, from a second on, how far a command has come, or at least how long it has been at work."""
    if not (sys.stderr.isatty() and sys.stdout.isatty()) or Waiting.now:
        yield
        return
    waiting = Waiting.now = Waiting(patience_seconds)
    waiting.start()
    try:
        with listened(waiting.hear):
            yield
    finally:
        Waiting.end()


class Waiting(threading.Thread):
    """Writes one line each second, which is wiped before anything else is printed."""

    now: Waiting | None = None
    # Held while the line is drawn, and while this process is forked: no copy of it begins in the midst of a line.
    drawing = threading.Lock()

    def __init__(self, patience_seconds: float) -> None:
        super().__init__(daemon=True)
        self.patience_seconds = patience_seconds
        self.begun, self.process = time.monotonic(), os.getpid()
        self.over = threading.Event()
        self.bar: ProgressBar[int] | None = None
        self.shown = False

    def start(self) -> None:
        """Begin to wait; in the way of no fork."""
        STILL.add(self)
        super().start()

    def run(self) -> None:
        """Write the line anew each second until it is over."""
        while not self.over.wait(self.patience_seconds):
            with self.drawing:
                if not self.over.is_set():
                    self._draw()

    def hear(self, stage: str, done: int, of: int) -> None:
        """A stage has come so far, as the line tells from now on. Builders in processes of their own are not heard."""
        if os.getpid() != self.process:
            return
        with self.drawing:
            if self.bar is None or (self.bar.label, self.bar.length) != (stage, of):
                self._wipe()
                self.bar = _bar(stage, of)
            self.bar.make_step(done - self.bar.pos)

    def _draw(self) -> None:
        if self.bar:
            self.bar.render_progress()
        else:
            seconds = f"{time.monotonic() - self.begun:.0f}"
            sys.stderr.write(f"\r{in_our_words(say('At work for {seconds} s …', seconds=seconds))}")
            sys.stderr.flush()
        self.shown = True

    def _wipe(self) -> None:
        if self.shown:
            sys.stderr.write(WIPED)
            sys.stderr.flush()
        self.shown = False

    @classmethod
    def wipe(cls) -> None:
        """Take the line away, until it is time to write it again."""
        if cls.now:
            with cls.now.drawing:
                cls.now._wipe()
                cls.now.bar = None

    @classmethod
    def end(cls) -> None:
        """Take the line away, and write no more."""
        cls.wipe()
        found, cls.now = cls.now, None
        if found:
            found.over.set()
            if found.is_alive():
                found.join()
            STILL.discard(found)


if hasattr(os, "register_at_fork"):
    os.register_at_fork(
        before=Waiting.drawing.acquire,
        after_in_parent=Waiting.drawing.release,
        after_in_child=Waiting.drawing.release,
    )


def _bar(stage: str, of: int) -> ProgressBar[int]:
    """A line that tells the stage, how many are done of all, and the time that is left."""
    bar: ProgressBar[int] = click.progressbar(
        length=of,
        label=in_our_words(stage),
        show_pos=True,
        bar_template="%(label)s  [%(bar)s]  %(info)s",
        width=20,
        file=sys.stderr,
        item_show_func=lambda _: in_our_words(say("left")) if bar.eta_known and not bar.finished else None,
    )
    return bar

"""New words and links are shown before they are kept, so that a window closed too early loses nobody."""

from __future__ import annotations

import os
import pty
import re
import signal
import subprocess
import sys
from pathlib import Path
from typing import Any

import click
import pytest

from recordgen.files import fingerprints
from recordgen.private.sealing.unseal import unseal
from tests.support.commands import run
from tests.support.publishing import WORDS, Desk

SECRET = re.compile(rf"{WORDS.pattern}|#k=", re.MULTILINE)
# A closed pipe ends a program as its signal would.
EXIT = {"closed pipe": 141, "closed terminal": 1}
GONE = {"closed pipe": BrokenPipeError(32, "Broken pipe"), "closed terminal": OSError(5, "Input/output error")}


def kept(desk: Desk) -> dict[str, str]:
    """All that is kept and all that is served, but for locks."""
    folders = [folder for folder in (desk.keys, desk.public) if folder.exists()]
    found = {f"{folder.name}/{name}": digest for folder in folders for name, digest in fingerprints(folder).items()}
    return {name: digest for name, digest in found.items() if not name.endswith(".lock")}


def close_before_secrets(monkeypatch: pytest.MonkeyPatch, fault: OSError) -> None:
    """Nothing can be printed any more from the first secret on."""
    echo = click.echo

    def broken(message: Any = None, *rest: Any, **more: Any) -> None:
        if SECRET.search(str(message)):
            raise fault
        echo(message, *rest, **more)

    monkeypatch.setattr(click, "echo", broken)


@pytest.mark.usefixtures("quick_build")
@pytest.mark.parametrize("fault", GONE)
@pytest.mark.parametrize(
    "words",
    [
        ("willowmere", "--add", "Mara"),
        ("willowmere", "--link", "Mara"),
        ("willowmere", "--rotate", "--yes"),
        ("--export", "copy"),
    ],
    ids=lambda words: words[-2],
)
def test_what_could_not_be_shown_is_not_kept(
    published: Desk, words: tuple[str, ...], fault: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Keys and what is served stay as they were, no copy is written, and the readers' words still open."""
    monkeypatch.chdir(published.folder)
    before = kept(published)
    with monkeypatch.context() as patch:
        close_before_secrets(patch, GONE[fault])
        result = run("readers", *words, "--records", published.records)

    assert result.exit_code == EXIT[fault]
    assert (kept(published), Path("copy").exists()) == (before, False)
    assert published.publish("--yes").exit_code == 0
    assert unseal(published.public, published.words)


@pytest.mark.usefixtures("quick_build")
@pytest.mark.parametrize("fault", GONE)
def test_first_words_that_could_not_be_shown_are_drawn_anew(
    new: Desk, fault: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Nothing is sent that nobody can read; the next publishing shows words, and they open."""
    with monkeypatch.context() as patch:
        close_before_secrets(patch, GONE[fault])
        failed = new.publish("--yes")
    assert (failed.exit_code, kept(new)) == (EXIT[fault], {})
    told = new.publish("--yes")

    assert unseal(new.public, WORDS.findall(told.output)[0])


def test_a_pipe_that_nobody_reads_keeps_nothing(published: Desk) -> None:
    """A real one, closed before the words come."""
    before = kept(published)
    reading, writing = os.pipe()
    os.close(reading)
    words = ["readers", "willowmere", "--add", "Mara", "--records", str(published.records)]
    done = subprocess.run([sys.executable, "-m", "recordgen", *words], stdout=writing, stderr=subprocess.PIPE)
    os.close(writing)

    assert done.returncode == EXIT["closed pipe"]
    assert done.stderr == b""
    assert kept(published) == before


def test_a_terminal_closed_at_the_words_keeps_nothing(published: Desk) -> None:
    """The system ends the program at that very moment."""
    before = kept(published)
    ours, theirs = pty.openpty()
    hang_up = (
        "import os, signal; from recordgen.cli import asking, main; signal.signal(signal.SIGHUP, signal.SIG_DFL); "
    )
    hang_up += "asking.show_once = lambda *_: os.kill(os.getpid(), signal.SIGHUP); main()"
    words = ["readers", "willowmere", "--rotate", "--yes", "--records", str(published.records)]
    done = subprocess.run([sys.executable, "-c", hang_up, *words], stdin=theirs, stdout=theirs, start_new_session=True)
    os.close(ours)
    os.close(theirs)

    assert done.returncode == -signal.SIGHUP
    assert {name: digest for name, digest in kept(published).items() if "/.recordgen-" not in name} == before


def test_a_full_disk_after_the_words_says_that_they_do_not_hold(
    published: Desk, monkeypatch: pytest.MonkeyPatch
) -> None:
    """They were shown already, so somebody may have noted them."""
    before = kept(published)
    with monkeypatch.context() as patch:
        patch.setattr("os.fsync", lambda handle: (_ for _ in ()).throw(OSError(28, "No space left on device")))
        result = published.readers("--add", "Mara")

    assert result.exit_code == 1
    assert "words shown just now open nothing; make room, then try again" in result.output
    assert kept(published) == before

"""A published folder sent by a program of the practice's choice, such as one that copies to a host."""

from __future__ import annotations

import shlex
import subprocess
from collections.abc import Callable
from pathlib import Path

from recordgen.problems import Trouble, quoted
from recordgen.sentences import say

FOLDER = "{folder}"


def words_of(command: str, folder: Path) -> list[str]:
    """A command as the words it is run by, with the folder's path in place of {folder}; no shell reads it.

    Raises Trouble for a quote that is not closed, and for nothing at all.
    """
    try:
        words = shlex.split(command)
    except ValueError as why:
        raise Trouble(
            say("the command cannot be read: {why}", why=str(why).lower()), say("Mend publish: command in stable.yaml")
        ) from None
    if not words:
        raise Trouble(say("the command is empty"), say("Write publish: command in stable.yaml"))
    return [word.replace(FOLDER, str(folder)) for word in words]


def run_command(command: str, folder: Path, records: Path, tell: Callable[[str], None]) -> None:
    """Run a command on a folder, from the records' folder, and tell each line it prints.

    Raises Trouble where it cannot be run or ends with anything but 0.
    """
    words = words_of(command, folder.resolve())
    way_out = say("Whether anything arrived only that program knows; mend what it names and publish again")
    try:
        running = subprocess.Popen(
            words,
            cwd=records,
            stdin=subprocess.DEVNULL,
            stdout=subprocess.PIPE,
            stderr=subprocess.STDOUT,
            text=True,
            errors="replace",
        )
    except OSError as fault:
        raise Trouble(
            say("{program} cannot be run: {why}", program=quoted(words[0]), why=fault.strerror),
            say("Install it, or correct the command"),
        ) from None
    with running:
        for line in running.stdout or ():
            tell(line.rstrip("\n"))
    if running.returncode:
        raise Trouble(
            say("{program} ended with exit code {code}", program=quoted(words[0]), code=running.returncode),
            way_out,
        )

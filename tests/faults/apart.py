"""Commands in a process of their own, which may be killed at a moment drawn at random."""

from __future__ import annotations

import errno
import multiprocessing
import os
import signal
import sys
from collections.abc import Callable, Mapping
from pathlib import Path
from typing import Any

from click.testing import CliRunner

from recordgen.cli import main

# What the system is asked for when something is written; just before one of these a run is killed.
STEPS = {
    *("os.mkdir", "os.rename", "os.link", "os.remove", "os.rmdir", "os.chmod", "os.truncate"),
    *("ctypes.call_function", "subprocess.Popen", "fcntl.flock"),
}
KILLED = -signal.SIGKILL
# A run that takes longer than this hangs, on however busy a machine. Judgement.
MOST_SECONDS = 300


def run_apart(
    words: list[str | Path],
    environment: Mapping[str, str],
    at_step: int | None = None,
    after_seconds: float | None = None,
    prepare: Callable[[], object] = lambda: None,
) -> tuple[int, str, int]:
    """How a command ended, what it said, and how many steps of writing its own process took.

    at_step: kill it just before this step, from 0. after_seconds: kill it then. prepare: called in its process first.
    With it goes all that it had begun, as when a computer is switched off. Raises TimeoutError where it hangs.
    """
    reader, writer = multiprocessing.Pipe(duplex=False)
    process = multiprocessing.get_context("fork").Process(
        target=_run, args=([str(word) for word in words], environment, at_step, prepare, writer)
    )
    process.start()
    writer.close()
    process.join(after_seconds if after_seconds is not None else MOST_SECONDS)
    hangs = process.is_alive() and after_seconds is None
    _kill(process.pid)
    process.join()
    if hangs:
        raise TimeoutError(errno.ETIMEDOUT, f"no end after {MOST_SECONDS} s: {words}")
    said, steps = reader.recv() if reader.poll() and process.exitcode != KILLED else ("", 0)
    return process.exitcode or 0, said, steps


def _kill(group: int | None) -> None:
    if group:
        try:
            os.killpg(group, signal.SIGKILL)
        except ProcessLookupError:
            return


def _run(
    words: list[str], environment: Mapping[str, str], at_step: int | None, prepare: Callable[[], object], writer: Any
) -> None:
    os.setsid()
    os.environ.update(environment)
    prepare()
    steps = [0]

    def watch(event: str, given: tuple[Any, ...]) -> None:
        if event in STEPS or (event == "open" and _writes(given)):
            if steps[0] == at_step:
                os.killpg(os.getpgrp(), signal.SIGKILL)
            steps[0] += 1

    sys.addaudithook(watch)
    result = CliRunner().invoke(main, words)
    said = result.output
    if result.exception and not isinstance(result.exception, SystemExit):
        said += f"\nTRACEBACK {result.exception!r}"
    writer.send((said, steps[0]))
    writer.close()
    os._exit(result.exit_code)


def _writes(given: tuple[Any, ...]) -> bool:
    return isinstance(given[2], int) and bool(given[2] & (os.O_WRONLY | os.O_RDWR | os.O_CREAT))

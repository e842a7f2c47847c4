"""Lines of a shell as a text shows them, run one after another: recordgen, cd, and files written with cat."""

from __future__ import annotations

import os
import re
import shlex
from collections.abc import Callable, Iterator
from dataclasses import dataclass
from pathlib import Path

from click.testing import Result

from tests.support.commands import run

_HERE = re.compile(r"cat > (\S+) <<'(\w+)'")


@dataclass(frozen=True)
class Ran:
    """One line of recordgen, and what came of it."""

    line: str
    result: Result


def shell_blocks(text: str) -> str:
    """The lines of all blocks of shell in a Markdown text, one after another."""
    return "".join(re.findall(r"^```sh\n(.*?)^```", text, re.MULTILINE | re.DOTALL))


def run_lines(block: str, more: Callable[[str], list[str]] = lambda command: []) -> Iterator[Ran]:
    """Run the lines from this folder on. Any other word than those three at the beginning of a line is an error.

    more: further words for a command, such as the day to count from.
    """
    lines = iter(block.splitlines())
    for line in lines:
        here = _HERE.fullmatch(line)
        word, *words = shlex.split(line, comments=True)
        if here:
            Path(here[1]).write_text("".join(f"{one}\n" for one in iter(lambda: next(lines), here[2])))
        elif word == "cd":
            os.chdir(words[0])
        else:
            assert word == "recordgen", line
            yield Ran(line, run(*words, *more(words[0])))

"""Lines of a shell as a README shows them, run one after another: recordgen, cd, and files written with cat."""

from __future__ import annotations

import os
import re
import shlex
from collections.abc import Iterator
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


def block_below(heading: str, text: str) -> str:
    """The first block of shell below a heading of a Markdown text."""
    found = re.search(rf"^## {heading}$.*?^```sh\n(.*?)^```", text, re.MULTILINE | re.DOTALL)
    assert found is not None
    return found[1]


def run_lines(block: str) -> Iterator[Ran]:
    """Run the lines from this folder on. Any other word than those three at the beginning of a line is an error."""
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
            yield Ran(line, run(*words))

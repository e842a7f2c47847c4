"""The outputs in the guide's page of commands: each line run on a copy of the demo practice, its output below it."""

from __future__ import annotations

import random
import re
import secrets
import shutil
import socketserver
import subprocess
from collections.abc import Iterable
from pathlib import Path

import click
import pytest
from PIL import Image

from recordgen.cli import main
from recordgen.packaged import packaged
from recordgen.private.keystore.location import ENVIRONMENT
from tests.conftest import RECORDS, TODAY
from tests.support.git_practice import alone
from tests.support.shell_lines import Ran, run_lines

COMMANDS_PAGE = packaged() / "site_templates" / "pages" / "guide" / "commands.md"
# Of a long output the first lines stand in the guide, and of a long line its beginning.
MOST_LINES, MOST_SIGNS = 8, 110
# A block of lines to paste, and the block of their output below it.
_BLOCK = re.compile(r"^```sh\n(?P<lines>.*?)^```\n\n^```text\n.*?^```$", re.MULTILINE | re.DOTALL)
_NOON = f"{TODAY.isoformat()}T12:00:00+00:00"
_BOOK = "Horse;Date;Foot;Toe before (mm);Toe after (mm)\nBramble;14.3.2023;LF;88,5;80\nFennel;2.4.2023;RF;90;81\n"
# Drawn by chance, or of this very run: what is told of them stays, and they themselves do not.
_OF_THE_RUN = (
    (re.compile(r"\b[0-9a-f]{8,64}\b"), "0123abcd"),
    (re.compile(r"\b\d+\.\d s\b"), "4.0 s"),
    (re.compile(r"\b\d+ files deleted"), "200 files deleted"),
)


def with_outputs(text: str, folder: Path) -> str:
    """The page with the outputs of its lines as they are now. folder: an empty one, in which they run.

    Raises AssertionError where a line does not end well.
    """
    with pytest.MonkeyPatch.context() as patch:
        patch.chdir(_practice(folder, patch))
        _same_each_time(patch)
        return _BLOCK.sub(lambda found: _renewed(found["lines"], folder), text)


def _practice(folder: Path, patch: pytest.MonkeyPatch) -> Path:
    """The demo practice of 2026 in a git of its own, with a place to publish to; a photograph and a book beside it."""
    alone(patch, folder)
    patch.setenv(ENVIRONMENT, str(folder / "keys"))
    patch.setenv("RECORDGEN_CACHE", str(folder / "cache"))
    practice = folder / "my-practice"
    shutil.copytree(RECORDS, practice, ignore=shutil.ignore_patterns("202[45]-*"))
    shutil.copy(packaged() / "site_templates" / "records" / "gitignore", practice / ".gitignore")
    with (practice / "willowmere" / "stable.yaml").open("a", encoding="utf-8") as file:
        file.write("publish: {address: https://willowmere.example.org/, to: ../served/willowmere}\n")
    for words in (["init", "--quiet", "--initial-branch=main"], ["add", "--all"], ["commit", "--quiet", "-mBegun"]):
        subprocess.run(["git", "-C", str(practice), *words], check=True)
    Image.new("RGB", (1600, 1200), "gray").save(folder / "IMG_0412.jpg")
    (folder / "book-of-2023.csv").write_text(_BOOK, "utf-8")
    return practice


def _same_each_time(patch: pytest.MonkeyPatch) -> None:
    """Entries of one moment, the same words drawn each time, and screens that are closed as soon as they are shown."""
    for role in ("AUTHOR", "COMMITTER"):
        patch.setenv(f"GIT_{role}_DATE", _NOON)
    drawn = random.Random(1)
    patch.setattr(secrets, "choice", drawn.choice)
    patch.setattr(secrets, "token_urlsafe", lambda *size: "k7q2")
    patch.setattr(socketserver.BaseServer, "serve_forever", _interrupted)
    patch.setattr("recordgen.site.engine.serve_site", lambda *shown: None)


def _interrupted(*of_server: object, **ways: object) -> None:
    raise KeyboardInterrupt


def _renewed(lines: str, folder: Path) -> str:
    ran = list(run_lines(lines, _as_of_the_day))
    assert [one.line for one in ran if one.result.exit_code] == [], [one.result.output for one in ran]
    return f"```sh\n{lines}```\n\n```text\n{_shown(ran, folder)}```"


def _shown(ran: Iterable[Ran], folder: Path) -> str:
    output = "".join(one.result.output for one in ran).replace(str(folder), "/home/wren")
    for pattern, by in _OF_THE_RUN:
        output = pattern.sub(by, output)
    lines = [line.rstrip() for line in output.strip("\n").splitlines()]
    if len(lines) > MOST_LINES:
        lines = [*lines[:MOST_LINES], "…"]
    return "".join(f"{line}\n" if len(line) <= MOST_SIGNS else f"{line[:MOST_SIGNS].rstrip()} …\n" for line in lines)


def _as_of_the_day(command: str) -> list[str]:
    """The day on which the demo practice is looked at, for commands that ask for one."""
    found = main.get_command(click.Context(main), command)
    asks = found is not None and any("--today" in param.opts for param in found.params)
    return ["--today", TODAY.isoformat()] if asks else []

"""Help, exit codes and what the command line loads."""

from __future__ import annotations

import subprocess
import sys

import pytest

from recordgen.cli.main import COMMANDS
from tests.conftest import ROOT
from tests.support.commands import run

HEAVY = {"matplotlib", "mkdocs", "pydantic", "numpy", "jinja2", "markdown", "yaml"}
HELP = """
import sys, recordgen.cli
try:
    recordgen.cli.main(["--help"])
except SystemExit:
    print(*sys.modules, file=sys.stderr)
"""


def test_help_loads_nothing_heavy() -> None:
    """`recordgen --help` loads none of the large libraries."""
    done = subprocess.run([sys.executable, "-c", HELP], capture_output=True, text=True, check=True)

    assert HEAVY & set(done.stderr.split()) == set()


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_has_help_with_a_line_to_paste(command: str) -> None:
    """The help begins with what the command does, and shows a line that runs it."""
    told = run(command, "--help").output

    assert f"recordgen {command}" in told.split("Options:")[0].split("\n", 1)[1]


@pytest.mark.parametrize("command", COMMANDS)
def test_each_command_stands_in_the_readme(command: str) -> None:
    """The README shows every command once in use."""
    assert f"recordgen {command}" in (ROOT / "README.md").read_text("utf-8")


@pytest.mark.parametrize("command", [command for command in COMMANDS if command not in ("init", "schema", "cache")])
def test_each_command_takes_records(command: str) -> None:
    """The folder of the records can be named."""
    assert "--records" in run(command, "--help").output


def test_wrong_use_exits_with_two() -> None:
    """An unknown command is wrong use."""
    assert run("trim").exit_code == 2


def test_a_name_of_several_words_is_asked_for_in_quotes() -> None:
    """A shell makes two words of it, and the command has a place for one."""
    done = run("begin", "low-barn/Mr.", "Biscuit")

    assert done.exit_code == 2
    assert "'Biscuit' is too much; a name of several words stands in quotes." in done.output

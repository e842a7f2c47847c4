"""The form of what is printed: columns, width, colour, paths that open, the wait, a pipe that closes."""

from __future__ import annotations

import io
import json
import os
import re
import socket
import subprocess
import sys
from collections.abc import Callable
from pathlib import Path

import pytest

from recordgen import progress
from recordgen.cli import feet_table, summary, terminal
from recordgen.cli.columns import columns
from recordgen.cli.feet_table import figure_text
from tests.conftest import RECORDS, ROOT
from tests.support.commands import run, run_today, small_practice
from tests.support.practice_folders import TODAY, build


class Terminal(io.StringIO):
    """A channel that says it is a terminal."""

    def isatty(self) -> bool:
        """It is."""
        return True


def on_screen(monkeypatch: pytest.MonkeyPatch) -> Terminal:
    """Both channels lead to one terminal from now on."""
    shown = Terminal()
    for channel in ("stdout", "stderr"):
        monkeypatch.setattr(sys, channel, shown)
    monkeypatch.setenv("TERM", "xterm")
    return shown


@pytest.mark.parametrize(
    ("value", "sd", "typed", "shown"),
    [
        (124.967, 1.0, False, "125"),
        (80.04, 0.5, False, "80"),
        (74.83, 0.36, False, "74.8"),
        (0.6417, 0.006, False, "0.64"),
        (-0.04, 0.3, False, "0.0"),
        (80.0, 1.0, True, "80"),
        (49.5, 1.0, True, "49.5"),
        (124.967, 1.0, True, "125"),
    ],
)
def test_a_figure_has_the_digits_its_error_carries(value: float, sd: float, typed: bool, shown: str) -> None:
    """The last digit is of the order of the standard deviation, as the GUM asks (JCGM 100:2008, 7.2.6)."""
    assert figure_text(value, sd, typed) == shown


def test_feet_stand_beside_each_other() -> None:
    """A row a measure; what was traced with its error; a change in lines of its own where there is one."""
    lines = run_today("summary", "willowmere/bramble").output.splitlines()
    head = next(line for line in lines if "left fore" in line and "right hind" in line)
    toe = next(line for line in lines if line.lstrip().startswith("toe length"))
    sole = next(line for line in lines if line.lstrip().startswith("sole length"))

    assert head.endswith("  right hind")
    assert re.sub(" {2,}", "|", toe.strip()) == "toe length, mm|86 → 75|87 → 77|84 → 74|83 → 73"
    assert re.search(r"\d ± \d", sole)
    assert not [line for line in lines if re.search(r"\d\.\d{3}", line)]


def test_a_narrow_terminal_gets_the_fores_first(monkeypatch: pytest.MonkeyPatch) -> None:
    """And no line is wider than it."""
    for module in (summary, feet_table):
        monkeypatch.setattr(module, "width", lambda: 80, raising=False)
    lines = run_today("summary", "willowmere/bramble").output.splitlines()

    assert max(map(len, lines)) <= 80
    assert [line.split() for line in lines if line.split()[:1] in (["left"],)][:2] == [
        ["left", "fore", "right", "fore"],
        ["left", "hind", "right", "hind"],
    ]


def test_columns_begin_at_one_place_and_are_cut() -> None:
    """With an ellipsis."""
    assert list(columns([("a", "bcd", "e"), ("abc", "", "efghij")], 12)) == ["a    bcd  e", "abc       e…"]


@pytest.mark.parametrize(("no_colour", "shown"), [("", "\x1b[31mred\x1b[0m\n"), ("1", "red\n")])
def test_colour_is_for_terminals_that_want_it(monkeypatch: pytest.MonkeyPatch, no_colour: str, shown: str) -> None:
    """NO_COLOR set to anything is none; an escape that was typed is spelled out either way."""
    screen = on_screen(monkeypatch)
    monkeypatch.setenv("NO_COLOR", no_colour)
    terminal.echo("red", colour="red")
    assert screen.getvalue() == shown

    terminal.echo("\x1b[31m", colour="red")
    assert "\\u001b[31m" in screen.getvalue()


def test_nothing_is_coloured_for_other_programs(monkeypatch: pytest.MonkeyPatch) -> None:
    """Nor is a wait told."""
    pipe = io.StringIO()
    monkeypatch.setattr(sys, "stdout", pipe)
    with terminal.show_waiting(patience_seconds=0):
        terminal.echo("red", colour="red")

    assert pipe.getvalue() == "red\n"


def waited(monkeypatch: pytest.MonkeyPatch, meanwhile: Callable[[], object] = lambda: None) -> str:
    """The screen of a command that draws once after `meanwhile`, then prints that it is done."""
    screen = on_screen(monkeypatch)
    monkeypatch.setattr(terminal.Waiting, "start", lambda self: None)
    with terminal.show_waiting():
        meanwhile()
        found = terminal.Waiting.now
        assert found
        waits = iter([False, True])
        monkeypatch.setattr(found.over, "wait", lambda seconds: next(waits))
        found.run()
        terminal.echo("done")
    return screen.getvalue()


def test_a_wait_is_told_and_wiped(monkeypatch: pytest.MonkeyPatch) -> None:
    """Before anything else is printed."""
    assert waited(monkeypatch) == f"\rAt work for 0 s …{terminal.WIPED}done\n"


def test_how_far_it_has_come_is_told(monkeypatch: pytest.MonkeyPatch) -> None:
    """The stage, how many are done of all, and once it can be reckoned how long is left."""
    clock = iter(range(1000, 9000, 3))
    monkeypatch.setattr("time.time", lambda: next(clock))

    def work() -> None:
        for done in (0, 1, 6):
            progress.tell("Building", done, 25)

    assert re.search(r"Building  \[####-+\]  6/25  00:\d\d:\d\d  left\r\x1b", waited(monkeypatch, work))


def test_who_is_done_is_told_when_the_next_is_asked_for() -> None:
    """And all of them at the end; nobody need listen."""
    heard: list[tuple[str, int, int]] = []
    with progress.listened(lambda *figure_text: heard.append(figure_text)):
        assert list(progress.steps("Reading", "ab")) == ["a", "b"]
    progress.tell("Reading", 1, 2)

    assert heard == [("Reading", 0, 2), ("Reading", 1, 2), ("Reading", 2, 2)]


def test_a_closed_pipe_is_no_trouble() -> None:
    """The command ends without a word, as programs do that are told so by a signal."""
    words = ("find", "e", "--records", str(RECORDS))
    with subprocess.Popen(
        [sys.executable, "-m", "recordgen", *words], stdout=subprocess.PIPE, stderr=subprocess.PIPE, cwd=ROOT
    ) as process:
        assert process.stdout is not None
        assert process.stderr is not None
        process.stdout.readline()
        process.stdout.close()
        said = process.stderr.read()

    assert process.returncode == 141
    assert said == b""


@pytest.mark.parametrize("inside", ["", "willowmere", "willowmere/bramble", ".."])
def test_a_problem_names_a_path_that_opens_from_here(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, inside: str
) -> None:
    """From any folder of the records, and from the one around them."""
    records = build(tmp_path / "records", {"willowmere/bramble/2026-10-21.yaml": "date: soon\n"})
    monkeypatch.chdir(records / inside)
    line = run("check", "--today", TODAY.isoformat()).output.splitlines()[0]
    (plain,) = json.loads(run("check", "--today", TODAY.isoformat(), "--json").output)

    assert plain["path"] == line.partition(":")[0]
    assert os.path.samefile(line.partition(":")[0], records / "willowmere/bramble/2026-10-21.yaml")


@pytest.mark.parametrize("inside", ["", "willowmere"])
def test_a_problem_of_a_file_from_elsewhere_keeps_its_name(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch, inside: str
) -> None:
    """A sheet's cell, notes that are none, and a file that is not there, from inside the records."""
    records = small_practice(tmp_path)
    (tmp_path / "visits.csv").write_text("date,horse,toe length\n2026-11-20,Bramble,wide\n")
    (tmp_path / "notes.txt").write_text("Bramble was good.\n")
    monkeypatch.chdir(records / inside)
    told = [run("receive", tmp_path / name).output for name in ("visits.csv", "notes.txt", "gone.xlsx")]

    for output, start in zip(told, ("visits.csv:2:", "notes.txt:1:", "gone.xlsx:1:1: error: there is no"), strict=True):
        assert [line for line in output.splitlines() if line.startswith(start)] != [], output


def test_a_port_that_is_taken_names_the_way_to_another(tmp_path: Path) -> None:
    """By the option."""
    records = small_practice(tmp_path)
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        port = taken.getsockname()[1]
        found = run_today("preview", "willowmere", "--port", str(port), records=records)

    assert found.exit_code == 1
    assert f"Port {port} is taken on this machine. Say another, such as --port {port + 1}." in found.output

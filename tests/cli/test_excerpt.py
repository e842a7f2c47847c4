"""The line of a problem with a mark under the place, on a terminal alone."""

from __future__ import annotations

import os
import pty
import subprocess
import sys
from pathlib import Path

import pytest

from recordgen.cli.excerpt import excerpt, line_around_mark
from recordgen.problems import Place
from tests.conftest import TODAY
from tests.support.commands import run_today, small_practice

WRONG = "date: 2026-10-14\nnext: {weeks: six}\n"


def write(records: Path, text: str) -> Path:
    """One visit of the small practice, with another text."""
    file = records / "willowmere/bramble/2026-10-14.yaml"
    file.write_text(text, "utf-8")
    return file


@pytest.mark.parametrize(
    ("line", "column", "shown", "before"),
    [
        ("next: {weeks: six}", 8, "next: {weeks: six}", 7),
        ("\tnext: six", 2, "    next: six", 4),
        ("note: 小馬, six", 11, "note: 小馬, six", 12),
        ("note: e\u0301te\u0301 six", 13, "note: e\u0301te\u0301 six", 10),
        ("a\x1b[2Jb: six", 6, "a\\u001b[2Jb: six", 10),
        ("a\u202eb: six", 3, "a\\u202eb: six", 7),
        ("six", 9, "six", 3),
    ],
)
def test_the_mark_stands_under_the_place(line: str, column: int, shown: str, before: int) -> None:
    """Behind a tab, wide signs, accents, and signs that would act on the terminal."""
    assert line_around_mark(line, column, 60) == (shown, before)


@pytest.mark.parametrize("column", [1, 30, 500, 990, 1000])
def test_a_long_line_is_cut_around_the_place(column: int) -> None:
    """The marked part stays in sight, and the line fits."""
    line = "x" * 1000
    line = f"{line[: column - 1]}o{line[column:]}"
    text, before = line_around_mark(line, column, 40)

    assert len(text) <= 40
    assert text[before] == "o"


def test_a_whole_file_shows_no_line(tmp_path: Path) -> None:
    """Nor does a file that leads out of the records."""
    records = small_practice(tmp_path)
    (tmp_path / "secret.yaml").write_text("secret\n")
    (records / "willowmere/out.yaml").symlink_to(tmp_path / "secret.yaml")

    assert list(excerpt(Place("records/willowmere/stable.yaml"), records, 80)) == []
    assert list(excerpt(Place("records/willowmere/out.yaml", 1, 1), records, 80)) == []
    assert list(excerpt(Place("secret.yaml", 1, 1), records, 80)) == []


def test_in_a_pipe_each_problem_is_one_line(tmp_path: Path) -> None:
    """As other programs want it."""
    records = small_practice(tmp_path)
    write(records, WRONG)

    assert "^" not in run_today("check", records=records).output


def test_on_a_terminal_the_line_is_shown_with_a_mark(tmp_path: Path) -> None:
    """The mark stands under the first letter of the key."""
    records = small_practice(tmp_path)
    write(records, WRONG)
    ours, theirs = pty.openpty()
    words = [sys.executable, "-m", "recordgen", "check", "--records", str(records), "--today", TODAY.isoformat()]
    subprocess.run(words, stdout=theirs, env={**os.environ, "COLUMNS": "200"}, check=False)
    os.close(theirs)
    lines = os.read(ours, 10_000).decode().splitlines()
    os.close(ours)

    at = next(number for number, line in enumerate(lines) if "[number-form]" in line)
    assert lines[at + 1 : at + 3] == ["    2 | next: {weeks: six}", "      |        ^"]

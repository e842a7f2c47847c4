"""Runs a command as a person would, and copies of the demo practice to break."""

from __future__ import annotations

import shutil
from collections.abc import Sequence
from pathlib import Path

from click.testing import CliRunner, Result

from recordgen.cli import main
from tests.conftest import RECORDS, TODAY


def run(*words: str | Path) -> Result:
    """The output of a command, and its exit code; a traceback is passed on."""
    return CliRunner().invoke(main, [str(word) for word in words], catch_exceptions=False)


def run_today(command: str, *words: str | Path, records: Path = RECORDS) -> Result:
    """A command on some records as of the fixed day."""
    return run(command, *words, "--records", records, "--today", TODAY.isoformat())


def small_practice(folder: Path, horses: Sequence[str] = ("bramble", "fennel")) -> Path:
    """One stable of the demo practice with some of its horses and their visits of 2026, to change at will."""
    records = folder / "records"
    stable = records / "willowmere"
    stable.mkdir(parents=True)
    shutil.copy(RECORDS / "practice.yaml", records)
    shutil.copy(RECORDS / "willowmere" / "stable.yaml", stable)
    for horse in horses:
        shutil.copytree(RECORDS / "willowmere" / horse, stable / horse, ignore=shutil.ignore_patterns("202[45]-*"))
    return records

"""Each file of the records is opened once a command, but for telling by its bytes whether it changed."""

from __future__ import annotations

import builtins
import io
import os
from collections import Counter
from pathlib import Path
from typing import Any

import pytest

from tests.support.commands import run_today
from tests.support.practice_folders import build

FILES: dict[str, str | bytes | None] = {
    # Unlikely in itself, and far more growth than at other times: two warnings that tell their line.
    "willowmere/bramble/2026-11-20.yaml": "date: 2026-11-20\nfeet:\n  LF: {before: {toe_length: 130}}\n",
    "fallow-end/stable.yaml": "name: Fallow End\n",
    "fallow-end/otter/horse.yaml": "name: Otter\n",
    "fallow-end/otter/2026-10-15.yaml": (
        "date: 2026-10-15\nfeet:\n  LF: {after: {toe_length: 80}, repeat: {after: [{toe_length: 81}]}}\n"
    ),
}
VISITS = {"2026-10-14.yaml", "2026-10-15.yaml", "2026-11-20.yaml"}


@pytest.fixture
def opened(tmp_path: Path, monkeypatch: pytest.MonkeyPatch) -> Counter[str]:
    """How often each file under the folder of the test was opened in Python, by its name from there."""
    counted: Counter[str] = Counter()
    really = io.open

    def counting(file: Any, *words: Any, **more: Any) -> Any:
        if isinstance(file, (str, os.PathLike)) and Path(file).is_relative_to(tmp_path / "records"):
            counted[str(Path(file).relative_to(tmp_path / "records"))] += 1
        return really(file, *words, **more)

    for place in (builtins, io):
        monkeypatch.setattr(place, "open", counting)
    return counted


@pytest.mark.parametrize(
    "command",
    [
        "build --no-cache --processes 1",
        "build --no-cache --stable willowmere",
        "check --no-cache",
        "due",
        "due --stable fallow-end",
        "summary willowmere/bramble",
        "repeatability",
    ],
)
def test_no_record_is_opened_twice(
    tmp_path: Path, opened: Counter[str], command: str, monkeypatch: pytest.MonkeyPatch
) -> None:
    """Not for the sites, nor to tell the line of a problem, nor for how well the whole practice's readings repeat.

    Without a cache, since nothing is looked at then for whether it changed. The practice's file is opened for its
    language first.
    """
    records = build(tmp_path / "records", FILES)
    (tmp_path / "no folder").write_text("")
    monkeypatch.setenv("RECORDGEN_CACHE", str(tmp_path / "no folder"))
    opened.clear()
    name, *words = command.split()
    out = ["--out", str(tmp_path / "sites")] if name == "build" else []
    found = run_today(name, *words, *out, records=records)

    assert found.exit_code == 0, found.output
    assert opened.pop("practice.yaml") <= 2
    assert set(opened.values()) == {1}
    assert {Path(file).name for file in opened} >= VISITS


def test_lines_are_told_of_the_text_that_was_read(tmp_path: Path, opened: Counter[str]) -> None:
    """Two warnings of one visit, with their lines, from one look at its file."""
    records = build(tmp_path / "records", FILES)
    opened.clear()
    told = run_today("check", "--no-cache", records=records).output

    assert told.count("2026-11-20.yaml:3:") == 2
    assert opened["willowmere/bramble/2026-11-20.yaml"] == 1

"""Two computers of one trimmer, each with keys of its own, and a stick between them; git is real."""

from __future__ import annotations

import re
import subprocess
from dataclasses import dataclass
from pathlib import Path

import pytest
from click.testing import CliRunner, Result

from recordgen.cli import main
from tests.support.git_practice import alone
from tests.support.practice_folders import build

BRAMBLE = "willowmere/bramble/2026-10-14.yaml"
WORDS = re.compile(r"^    ([a-z]+(?: [a-z]+){5})$", re.MULTILINE)
# Near each other, so that lines alone could not be joined.
VISIT = """\
date: 2026-10-14
feet:
  left_fore:
    before: {toe_length: 88, toe_angle: 50}  # in the rain
    after:  {toe_length: 80}
next: {weeks: 6}
"""


@dataclass
class Computer:
    """One of them. records: the practice. keys: its folder of keys."""

    records: Path
    keys: Path
    stick: Path

    def run(self, *words: str | Path, typed: str = "") -> Result:
        """The output of a command on this computer."""
        env = {"RECORDGEN_PRIVATE": str(self.keys)}
        return CliRunner().invoke(main, [str(word) for word in words], input=typed, env=env, catch_exceptions=False)

    def on_records(self, command: str, *words: str | Path, typed: str = "") -> Result:
        """The same of a command that takes the records."""
        return self.run(command, *words, "--records", self.records, typed=typed)

    def backup(self, typed: str = "") -> Result:
        """Back up to the stick."""
        return self.on_records("backup", self.stick, typed=typed)

    def fetch(self, typed: str = "") -> Result:
        """Fetch from the stick."""
        return self.on_records("fetch", self.stick, typed=typed)

    def git(self, *words: str | Path) -> str:
        """The answer of git in the records."""
        command = ["git", "-C", str(self.records), *map(str, words)]
        return subprocess.run(command, capture_output=True, text=True, check=True).stdout

    def write(self, name: str, text: str | None) -> None:
        """Write a file of the records, or take it away."""
        path = self.records / name
        if text is None:
            path.unlink()
            return
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_text(text)

    def keep(self, *changes: tuple[str, str, str]) -> None:
        """Change text in files, and keep everything in git."""
        for name, before, after in changes:
            text = self.text(name)
            assert before in text
            self.write(name, text.replace(before, after))
        self.git("add", "--all")
        self.git("commit", "--quiet", "--message=changed")

    def text(self, name: str = BRAMBLE) -> str:
        """The text of a file."""
        return (self.records / name).read_text()

    def files(self) -> dict[str, bytes]:
        """All files of the records but git's own and what was received."""
        found = [path for path in self.records.rglob("*") if path.is_file()]
        names = {path.relative_to(self.records).as_posix(): path for path in found}
        return {name: path.read_bytes() for name, path in names.items() if not name.startswith((".git/", "received/"))}


def first_computer(folder: Path, monkeypatch: pytest.MonkeyPatch) -> Computer:
    """A practice in git on one computer, not backed up yet."""
    alone(monkeypatch, folder)
    made = Computer(build(folder / "one" / "records", {BRAMBLE: VISIT}), folder / "keys-one", folder / "stick.git")
    made.git("init", "--quiet", "--initial-branch=main")
    made.keep()
    return made


def second_computer(first: Computer, folder: Path, typed: str = "") -> Computer:
    """Another computer, restored from the stick."""
    made = Computer(folder / "two" / "records", folder / "keys-two", first.stick)
    made.records.parent.mkdir()
    told = made.run("backup", made.stick, "--restore", made.records, typed=typed)
    assert told.exit_code == 0, told.output
    return made

"""A small practice in a real git, whose entries carry the days they are given."""

import os
import re
import subprocess
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

import pytest

from recordgen.records.history.model import VisitTrail
from recordgen.records.history.trails import Trails, trails
from recordgen.records.load.everything import read_whole
from recordgen.records.load.tables import read_reference
from tests.support.practice_folders import TODAY, VISIT, VISIT_FILE, build

# The visit with another toe, what that value is called, and the file of another horse.
LONGER = VISIT.replace("after:  {toe_length: 75", "after:  {toe_length: 77")
SHORTER = VISIT.replace("after:  {toe_length: 75", "after:  {toe_length: 74")
TOE = "left fore, toe length, after the trim"
OTHER = "willowmere/daisy/2026-10-14.yaml"


def alone(monkeypatch: pytest.MonkeyPatch, folder: Path) -> None:
    """Git knows who we are, and nothing of this computer's settings."""
    for role in ("AUTHOR", "COMMITTER"):
        monkeypatch.setenv(f"GIT_{role}_NAME", "Wren Ashdown")
        monkeypatch.setenv(f"GIT_{role}_EMAIL", "wren@example.org")
    for name in ("GIT_CONFIG_GLOBAL", "GIT_CONFIG_SYSTEM"):
        monkeypatch.setenv(name, str(folder / "none"))


@dataclass
class Kept:
    """Records and the repository they are kept in."""

    records: Path
    top: Path

    def git(self, *words: str | Path, day: str = "2026-10-14T18:00:00+02:00", given: bytes = b"") -> bytes:
        """The answer of git; entries are made on the day."""
        dated = {"GIT_AUTHOR_DATE": day, "GIT_COMMITTER_DATE": day}
        command = ["git", "-C", str(self.top), *map(str, words)]
        return subprocess.run(command, env=os.environ | dated, capture_output=True, check=True, input=given).stdout

    def write(self, files: Mapping[str, str | bytes | None]) -> None:
        """Write files, or take those away that are None."""
        for name, text in files.items():
            path = self.records / name
            if text is None:
                path.unlink()
                continue
            path.parent.mkdir(parents=True, exist_ok=True)
            path.write_bytes(text if isinstance(text, bytes) else text.encode())

    def entry(self, day: str, reason: str, files: Mapping[str, str | bytes | None] | None = None) -> None:
        """One entry of everything that changed. day: such as 2026-10-20, at noon in Greenwich, or with its own hour."""
        self.write(files or {})
        self.git("add", "--all")
        moment = day if "T" in day else f"{day}T12:00:00+00:00"
        self.git("commit", "--quiet", "--allow-empty", f"--message={reason}", day=moment)

    def trails(self) -> Trails:
        """The trails in git of the visits."""
        return trails(read_whole(self.records, TODAY).practice, read_reference(self.records)[0])

    def trail(self, name: str = VISIT_FILE) -> VisitTrail:
        """The trails in git of one visit."""
        found = self.trails().of(self.records / name)
        assert found is not None
        return found

    def rewrite(self, pattern: bytes, by: bytes) -> None:
        """The last entry with other bytes in it, as another program may have written it."""
        raw = re.sub(pattern, lambda found: by, self.git("cat-file", "commit", "HEAD"))
        made = self.git("hash-object", "-t", "commit", "-w", "--stdin", "--literally", given=raw)
        self.git("update-ref", "HEAD", made.decode().strip())

    def told(self, name: str = VISIT_FILE) -> list[tuple[str, str, list[tuple[str, str | None, str | None]]]]:
        """Its changes: day, kind or reason, and the parts."""
        return [
            (
                str(change.day),
                change.reason if change.kind == "changed" else change.kind,
                [(part.what, part.before, part.after) for part in change.parts],
            )
            for change in self.trail(name).changes
        ]


def begun(folder: Path, within: str = "") -> Kept:
    """The small practice, kept for the first time on 14 October 2026; `within` is its folder in the repository."""
    kept = Kept(build(folder / "top" / within if within else folder / "top"), folder / "top")
    kept.git("init", "--quiet", "--initial-branch=main")
    kept.entry("2026-10-14", "Willowmere, 14 October 2026: Bramble seen")
    return kept

"""A trimmer's computer with everything on it: records in git, built and published sites, a copy, notes to take in."""

from __future__ import annotations

import os
import shutil
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path
from random import Random

from recordgen.files import fingerprints, list_files
from recordgen.private.sealing.unseal import unseal
from tests.faults.apart import run_apart
from tests.support.phone_notes import parts, photo, visit
from tests.support.photographs import drawn, file_of
from tests.support.practice_folders import TODAY, build
from tests.support.publishing import ADDRESS, WORDS, git
from tests.support.sealed_notes import plain_notes

HORSE = "willowmere/bramble"
VISIT = f"{HORSE}/2026-10-14.yaml"
PUBLISHED = f"name: Willowmere\npublish: {{address: '{ADDRESS}', to: ../public}}\n"


@dataclass(frozen=True)
class Machine:
    """One computer. folder: holds all of it. words: those of the published site, once there are any."""

    folder: Path
    words: str = ""

    @classmethod
    def prepared(cls, folder: Path) -> Machine:
        """A practice that was built, published and backed up once, and then changed."""
        machine = cls(folder)
        build(machine.records, {"willowmere/stable.yaml": PUBLISHED, ".gitignore": "/received/\n/sites/\n"})
        for words in (["init", "--quiet", "--initial-branch=main"], ["add", "."], ["commit", "--quiet", "-m", "begun"]):
            git(machine.records, *words)
        (folder / "IMG_0412.jpg").write_bytes(file_of(drawn()))
        (folder / "field-notes-k7q2.txt").write_bytes(plain_notes("k7q2", parts(visit(), photo())))
        told = [machine.run(kind) for kind in ("build", "publish", "backup")]
        assert [code for code, _ in told] == [0, 0, 0], told
        file = machine.records / VISIT
        file.write_text(file.read_text().replace("toe_length: 75", "toe_length: 76"))
        return cls(folder, WORDS.findall(told[1][1])[0])

    def copied(self, folder: Path, kept: bool = True) -> Machine:
        """The same on another computer. kept: with its cache."""
        shutil.copytree(self.folder, folder, symlinks=True, copy_function=shutil.copy2)
        if not kept:
            shutil.rmtree(folder / "cache")
        return Machine(folder, self.words)

    @property
    def records(self) -> Path:
        """The records in git."""
        return self.folder / "records"

    @property
    def environment(self) -> dict[str, str]:
        """The variables by which a command works on this computer alone."""
        who = {f"GIT_{role}_{what}": "wren" for role in ("AUTHOR", "COMMITTER") for what in ("NAME", "EMAIL")}
        return {
            "RECORDGEN_PRIVATE": str(self.folder / "keys"),
            "RECORDGEN_CACHE": str(self.folder / "cache"),
            "GIT_CONFIG_GLOBAL": os.devnull,
            "GIT_CONFIG_SYSTEM": os.devnull,
            **who,
        }

    def words_of(self, kind: str) -> list[str | Path]:
        """The words of a command that writes."""
        foot = ["--foot", "LF", "--view", "sole", "--moment", "before", "--date", "2026-10-14"]
        ways: Mapping[str, list[str | Path]] = {
            "build": ["build", "--processes", "2", "--out", self.folder / "sites"],
            "publish": ["publish", "willowmere", "--yes"],
            "photo": ["photo", HORSE, self.folder / "IMG_0412.jpg", *foot],
            "commit": ["commit"],
            "receive": ["receive", self.folder / "field-notes-k7q2.txt"],
            "backup": ["backup", self.folder / "stick.git"],
        }
        as_of: list[str | Path] = [] if kind == "backup" else ["--today", str(TODAY)]
        return [*ways[kind], "--records", self.records, *as_of]

    def run(self, kind: str) -> tuple[int, str]:
        """How a command ended, and what it said."""
        return run_apart(self.words_of(kind), self.environment)[:2]

    def held(self) -> dict[str, str]:
        """The hashes of the records and what lies among them, git's own files left out."""
        return {name: told for name, told in fingerprints(self.records).items() if not name.startswith(".git/")}

    def sites(self) -> dict[str, dict[str, str]]:
        """The hashes of the files of each built site."""
        return {site.name: fingerprints(site) for site in sorted((self.folder / "sites").iterdir()) if _shown(site)}

    def published(self) -> dict[str, bytes]:
        """The pages of the published site as its readers open them. Raises NotOpened and OSError where it is torn."""
        return unseal(self.folder / "public", self.words)

    def names(self) -> list[str]:
        """The paths of everything on this computer but git's objects, the cache, and blobs, whose names are drawn."""
        apart = ("records/.git/", "stick.git/", "cache/")
        found = [name for name in list_files(self.folder) if not name.startswith(apart)]
        return [name for name in found if not (name.endswith(".bin") and "/d/" in name)]

    def locks(self) -> list[Path]:
        """The locks that git left, since it was killed too."""
        return [path for top in (self.records / ".git", self.folder / "stick.git") for path in top.rglob("*.lock")]


def _shown(site: Path) -> bool:
    return site.is_dir() and not site.name.startswith(".")


def moment(rng: Random, steps: int, seconds: float) -> tuple[int | None, float | None]:
    """When a run is killed: before which of its steps of writing, or after how many seconds."""
    return (rng.randrange(steps), None) if rng.random() < 0.6 else (None, rng.uniform(0, seconds))

"""A trimmer's computer from which a stable is published."""

from __future__ import annotations

import os
import re
import subprocess
from dataclasses import dataclass
from pathlib import Path

from click.testing import Result

from recordgen.private.keystore.site_keys import SiteKeys
from tests.support.commands import run, run_today

ADDRESS = "https://willowmere.example.org/w/"
TO_FOLDER = f"publish: {{address: '{ADDRESS}', to: ../public}}\n"
WORDS = re.compile(r"^    ([a-z]+(?: [a-z]+){5})$", re.MULTILINE)


@dataclass(frozen=True)
class Desk:
    """A trimmer's computer: records in git, a folder of keys, a served folder; and the words, once there are any."""

    folder: Path
    words: str = ""

    @property
    def records(self) -> Path:
        """The records in git."""
        return self.folder / "records"

    @property
    def public(self) -> Path:
        """The folder that is served."""
        return self.folder / "public"

    @property
    def keys(self) -> Path:
        """The folder of keys."""
        return self.folder / "keys"

    @property
    def state(self) -> SiteKeys:
        """The keys kept of Willowmere's site."""
        return SiteKeys.load(self.records, "willowmere")

    def publish(self, *words: str) -> Result:
        """The output of recordgen publish."""
        return run_today("publish", "willowmere", *words, records=self.records)

    def readers(self, *words: str | Path) -> Result:
        """The output of recordgen readers."""
        return run("readers", "willowmere", *words, "--records", self.records)

    def verify(self, *words: str | Path) -> Result:
        """The output of recordgen verify."""
        return run("verify", "willowmere", *words, "--records", self.records)

    def say(self, told: str) -> None:
        """Write another way to publish into stable.yaml."""
        file = self.records / "willowmere" / "stable.yaml"
        file.write_text(file.read_text().split("publish:")[0] + told)


def amend(desk: Desk) -> None:
    """Write something else about Bramble."""
    horse = desk.records / "willowmere" / "bramble" / "horse.yaml"
    horse.write_text(horse.read_text().replace("\nnote: ", "\nnote: Likes carrots. "))


def git(folder: Path, *words: str) -> str:
    """The output of git."""
    named = {f"GIT_{role}_{what}": "wren" for role in ("AUTHOR", "COMMITTER") for what in ("NAME", "EMAIL")}
    done = subprocess.run(
        ["git", "-C", str(folder), *words], check=True, capture_output=True, text=True, env=os.environ | named
    )
    return done.stdout

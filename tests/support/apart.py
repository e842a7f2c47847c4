"""A practice in git whose stables need to be told of each other, and computers that hold one of them each."""

from __future__ import annotations

import datetime as dt
import os
import subprocess
from pathlib import Path

from recordgen.cache.entries import Cache
from recordgen.files import fingerprints
from recordgen.records.load.everything import read_whole
from recordgen.records.load.folders import SHARED
from recordgen.site.apart.count import count
from recordgen.site.build_context import BuildContext
from tests.conftest import TODAY
from tests.support.commands import run

STABLES = ("willowmere", "hazel-bottom", "old-mill")
# Ten sets of readings beyond the first: from there on a practice's own error counts.
AGAIN = "{toe_length: 82}, {toe_length: 83}, {toe_length: 81}, {toe_length: 82}, {toe_length: 84}"
TWICE = "".join(f"  {foot}: {{after: {{toe_length: 82}}, repeat: {{after: [{AGAIN}]}}}}\n" for foot in ("LF", "RF"))
# One picture traced twice; from five of them on a practice's hands tell their own error.
TRACED = "{view: sole, moment: after, image: [1200, 1000], frog_apex: [600, %d], frog_medial: [520, 800]}"
TRACED_TWICE = f"{{tracings: [{TRACED % 400}, {TRACED % 411}]}}"
WHO = {f"GIT_{role}_{what}": "wren" for role in ("AUTHOR", "COMMITTER") for what in ("NAME", "EMAIL")}


def git(folder: Path, *words: str) -> None:
    """One run of git."""
    subprocess.run(["git", "-C", str(folder), *words], check=True, capture_output=True, env=os.environ | WHO)


def tangled_practice(records: Path) -> Path:
    """Three stables of four horses: compared and near each other, readings and tracings repeated, changes in git."""
    files = {"practice.yaml": "name: Hazel Hoof Care\ntrimmer: Wren Ashdown\n"}
    for number, stable in enumerate(STABLES):
        files[f"{stable}/stable.yaml"] = f"name: Yard {number}\nnear: [{STABLES[number - 1]}]\n"
        for horse in range(4):
            files[f"{stable}/horse-{horse}/horse.yaml"] = f"name: Horse {number} {horse}\nborn: 2015\n"
            files[f"{stable}/horse-{horse}/2026-11-04.yaml"] = _visit(80 + horse, "none" if number else "surface")
    files["old-mill/horse-0/2026-11-11.yaml"] = f"date: 2026-11-11\nfeet:\n{TWICE}"
    for day, feet in ((11, ("LF", "RF", "LH", "RH")), (12, ("LF",))):
        traced = "".join(f"  {foot}: {TRACED_TWICE}\n" for foot in feet)
        files[f"old-mill/horse-3/2026-11-{day}.yaml"] = f"date: 2026-11-{day}\nfeet:\n{traced}"
    _write(records, files)
    git(records, "init", "--quiet", "--initial-branch=main")
    _keep(records, "begun")
    private = "private_note: Ask about the bill.\n"
    _write(records, {f"{stable}/horse-1/2026-11-04.yaml": _visit(85, "none") for stable in STABLES})
    _write(records, {"old-mill/horse-2/2026-11-04.yaml": _visit(82, "none") + private})
    _keep(records, "misread the rule, and a word on a bill")
    return records


def _visit(toe_mm: int, infection: str) -> str:
    after = f"after: {{toe_length: {toe_mm}}}, frog: {{infection: {infection}}}"
    return f"date: 2026-11-04\nfeet: {{LF: {{{after}}}}}\n"


def _write(records: Path, files: dict[str, str]) -> None:
    for name, text in files.items():
        (records / name).parent.mkdir(parents=True, exist_ok=True)
        (records / name).write_text(text)


def _keep(records: Path, says: str) -> None:
    git(records, "add", "--all")
    git(records, "commit", "--quiet", f"--message={says}")


def counted(records: Path, file: Path, today: dt.date = TODAY) -> BuildContext:
    """The context of a whole practice, whose counts are written into a file."""
    whole = read_whole(records, today)
    context = BuildContext.of(whole, today, Cache(None))
    count(whole, context).write(file)
    return context


def copied_alone(records: Path, stable: str, folder: Path) -> Path:
    """A copy of the repository in which one stable and what all share lie, and no file of any other."""
    git(records, "clone", "--quiet", "--no-checkout", str(records), str(folder))
    wanted = [f"/{name}" for name in sorted({stable, *SHARED})]
    git(folder, "sparse-checkout", "set", "--no-cone", *wanted)
    git(folder, "checkout", "--quiet", "main")
    return folder


def build_alone(records: Path, counts: Path, stable: str, folder: Path, today: dt.date = TODAY) -> tuple[int, set[str]]:
    """Builds one stable as a computer of its own does, into folder/sites: its process, and the folders it saw."""
    os.environ["RECORDGEN_CACHE"] = str(folder / "kept")
    own = copied_alone(records, stable, folder / "records")
    words: list[str | Path] = ["--records", own, "--out", folder / "sites", "--today", str(today)]
    told = run("build", *words, "--stable", stable, "--with", counts)
    if told.exit_code:
        raise RuntimeError(told.output)
    return os.getpid(), {path.name for path in own.iterdir() if path.is_dir() and path.name != ".git"}


def differing(here: Path, there: Path) -> list[str]:
    """The files in which two folders differ."""
    one, other = fingerprints(here), fingerprints(there)
    return sorted(name for name in one.keys() | other.keys() if one.get(name) != other.get(name))

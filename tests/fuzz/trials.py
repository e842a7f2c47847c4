"""Trials: one file of a practice is changed, all is read, and what comes of it is judged."""

from __future__ import annotations

import re
import signal
import traceback
from collections.abc import Iterator
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path
from random import Random
from types import FrameType
from unittest import mock

from recordgen.packaged import packaged
from recordgen.problems import Problem
from recordgen.records.checks.tables import OURS
from recordgen.records.load import tables
from recordgen.records.load.everything import Whole, look_through
from recordgen.records.models.reference import Reference
from recordgen.site.build_context import BuildContext
from recordgen.site.pages.sites import PRACTICE, render_site
from tests.conftest import RECORDS, TODAY
from tests.fuzz.changes import changed
from tests.support.commands import run_today
from tests.support.phone_notes import parts, photo, visit
from tests.support.practice_folders import build
from tests.support.sealed_notes import plain_notes

# A file may take so long on a busy machine; reading one takes some hundredths of a second. Judgement.
MOST_SECONDS = 30
# Of so many practices that are well the pages are rendered once, since that takes ten times as long.
RENDERED_ONE_IN = 25
HORSE = "willowmere/bramble"
CARE_NOTE = b"""\
what: Pick out the feet
why: Mud hides stones
how_often: every day
until: the next visit
not_while: [call now]
source: Common practice, no source
"""
_LINE = re.compile("\r\n|[\n\r\x85\u2028\u2029]")


class _TooLong(BaseException):
    """Time is up; no handler of errors takes it for one."""


@dataclass(frozen=True)
class Trial:
    """One changed file. name: its path in the practice, or that of a file to be received."""

    number: int
    name: str
    content: bytes

    @property
    def received(self) -> bool:
        """Whether it is taken in from outside the records."""
        return not self.name.endswith((".yaml", ".md"))


def originals() -> dict[str, bytes]:
    """A whole file of every kind, by its path in the practice: records, own pages and tables, notes, a sheet."""
    demo = ["practice.yaml", "pages/before-we-come.md", "willowmere/stable.yaml", f"{HORSE}/horse.yaml"]
    demo += [f"{HORSE}/{file.name}" for file in sorted((RECORDS / HORSE).glob("2*.yaml"))[-3:]]
    found = {name: (RECORDS / name).read_bytes() for name in demo}
    words = sorted((packaged() / "site_templates" / "words").glob("*.yaml"))
    found |= {f"site_templates/words/{file.name}": file.read_bytes() for file in words}
    found["care/wet-weeks.yaml"] = CARE_NOTE
    found["notes.txt"] = plain_notes("k7q2", parts(visit(), photo()))
    found["visits.csv"] = b"Horse,Date,LF toe length,Weeks\r\nBramble,14.03.2024,81,6\r\nBramble,20.04.2024,80,5\r\n"
    return found


class Bench:
    """A practice in a folder, in which trials are made one after the other."""

    def __init__(self, folder: Path, seed: int) -> None:
        self.seed, self.originals = seed, originals()
        self.records = build(folder / "records")
        self.well = 0

    def trial(self, number: int) -> Trial:
        """The so-manieth trial: the same for the same seed."""
        rng = Random(f"{self.seed} {number}")
        name = rng.choice(list(self.originals))
        return Trial(number, name, changed(self.originals[name], rng, list(self.originals.values())))

    def fault(self, trial: Trial) -> str:
        """Why a trial failed, in words; empty where it went as it should."""
        with self._written(trial):
            try:
                with _at_most(MOST_SECONDS):
                    return self._receive(trial) if trial.received else self._read(trial)
            except _TooLong:
                return f"no answer after {MOST_SECONDS} s\n{traceback.format_exc()}"
            except Exception:
                return traceback.format_exc()

    @contextmanager
    def _written(self, trial: Trial) -> Iterator[None]:
        path = self.records / trial.name
        before = path.read_bytes() if path.exists() else None
        path.parent.mkdir(parents=True, exist_ok=True)
        path.write_bytes(trial.content)
        try:
            yield
        finally:
            if before is None:
                path.unlink()
            else:
                path.write_bytes(before)

    def _receive(self, trial: Trial) -> str:
        told = run_today("receive", self.records / trial.name, "--dry-run", records=self.records)
        return "" if told.exit_code in (0, 1) and told.output.strip() else f"exit {told.exit_code}: {told.output}"

    def _read(self, trial: Trial) -> str:
        practice, reference, problems = look_through(self.records, TODAY, files=True)
        ill = next(filter(None, (self._ill_placed(problem) for problem in problems)), "")
        if practice is not None and not ill:
            self.well += 1
            context = BuildContext.of(Whole(practice, reference, tuple(problems)), TODAY, None)
            if self.well % RENDERED_ONE_IN == 1:
                render_site(context, PRACTICE)
        return ill

    def _ill_placed(self, problem: Problem) -> str:
        """Why the place of a problem cannot be looked up, in words; empty where it can."""
        place = problem.place
        inside = self.records.parent / place.path
        file = inside if inside.exists() else packaged() / place.path
        if not file.exists() or not problem.message:
            return f"no such place: {problem.as_line()}"
        lines = _LINE.split(file.read_bytes().decode("utf-8", "replace")) if file.is_file() else []
        return "" if 0 <= place.line <= max(1, len(lines)) else f"no such line: {problem.as_line()}"


@contextmanager
def our_tables_read_once() -> Iterator[None]:
    """Our own tables, which no trial changes, are read once for all trials, since that takes longer than a trial."""
    read = tables._with_words
    ours = read(packaged() / tables.WORDS, OURS, Reference())[0]

    def read_own(folder: Path, shown: str, under: Reference) -> tuple[Reference, list[Problem]]:
        return (ours, []) if shown == OURS else read(folder, shown, under)

    with mock.patch.object(tables, "_with_words", read_own):
        yield


@contextmanager
def _at_most(seconds: int) -> Iterator[None]:
    def stop(signum: int, frame: FrameType | None) -> None:
        raise _TooLong

    before = signal.signal(signal.SIGALRM, stop)
    signal.alarm(seconds)
    try:
        yield
    finally:
        signal.alarm(0)
        signal.signal(signal.SIGALRM, before)

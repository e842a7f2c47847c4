"""Commands killed at random moments: what is lost, torn or left behind, and how the next run ends."""

from __future__ import annotations

import shutil
import time
from collections.abc import Iterator
from dataclasses import dataclass
from pathlib import Path
from random import Random

from tests.faults.apart import KILLED, run_apart
from tests.faults.machines import Machine, moment
from tests.support.publishing import git

KINDS = ("build", "build anew", "publish", "photo", "commit", "receive", "backup")


@dataclass(frozen=True)
class Unharmed:
    """A command that was not killed: the computer after a second run of it, its steps, and how long it took."""

    machine: Machine
    steps: int
    seconds: float


class Kills:
    """Kills commands on copies of one prepared computer."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.before = Machine.prepared(folder / "prepared")
        self.unharmed: dict[str, Unharmed] = {}

    def goes_on(self, kind: str) -> Unharmed:
        """The outcome of a command that nobody kills, run twice."""
        if kind not in self.unharmed:
            machine, words = self._copy(kind, f"whole {kind}")
            start = time.monotonic()
            code, said, steps = run_apart(words, machine.environment)
            assert code == 0, said
            taken = time.monotonic() - start
            run_apart(words, machine.environment)
            self.unharmed[kind] = Unharmed(machine, steps, taken)
        return self.unharmed[kind]

    def faults(self, kind: str, seed: int, *, at_step: bool = False) -> tuple[bool, list[str]]:
        """Whether a run was killed before it was through, and what was then wrong, in words.

        at_step: before a step of writing, which never comes too late, rather than perhaps after a time.
        """
        whole = self.goes_on(kind)
        machine, words = self._copy(kind, "killed")
        drawn = Random(f"{kind} {seed}")
        when = (drawn.randrange(whole.steps), None) if at_step else moment(drawn, whole.steps, whole.seconds)
        try:
            code = run_apart(words, machine.environment, *when)[0]
            wrong = [*self.torn(machine, whole.machine, kind), *self.after_next_run(machine, whole.machine, kind)]
            return code == KILLED, [f"{kind} {seed}, (step, seconds) {when}: {one}" for one in wrong]
        finally:
            shutil.rmtree(machine.folder)

    def _copy(self, kind: str, name: str) -> tuple[Machine, list[str | Path]]:
        machine = self.before.copied(self.folder / name, kept=kind != "build anew")
        return machine, machine.words_of(kind.partition(" ")[0])

    def torn(self, machine: Machine, after: Machine, kind: str) -> Iterator[str]:
        """Damage of a kill: a record of before that is not as it was, a site that is neither the old nor the new."""
        held = machine.held()
        yield from (f"record {name}" for name, told in self.before.held().items() if held.get(name) != told)
        old, new = self.before.sites(), after.sites()
        for name, files in machine.sites().items():
            if files not in (old[name], new[name]):
                yield f"site {name} is neither the old nor the new one"
        if kind == "publish" and machine.published() not in (self.before.published(), after.published()):
            yield "the published site is neither the old nor the new one"

    def after_next_run(self, machine: Machine, after: Machine, kind: str) -> Iterator[str]:
        """Faults after the next run: it fails, a file is missing or too many, or another than without a kill."""
        words = machine.words_of(kind.partition(" ")[0])
        code, said = run_apart(words, machine.environment)[:2]
        locks = machine.locks()
        if code == 1 and any(lock.name in said for lock in locks):
            # Git was killed too, and it was told which file of git's has to go.
            for lock in locks:
                lock.unlink()
            code, said = run_apart(words, machine.environment)[:2]
        if code:
            yield f"the next run ended with {code}: {said}"
        yield from (f"left over: {name}" for name in sorted(set(machine.names()) - set(after.names())))
        yield from (f"missing: {name}" for name in sorted(set(after.names()) - set(machine.names())))
        if machine.held() != after.held():
            yield "the records are others than without a kill"
        if machine.sites() != after.sites():
            yield "the sites are others than without a kill"
        if kind == "publish" and machine.published() != after.published():
            yield "the published site is another than without a kill"
        if git(machine.records, "status", "--porcelain") != git(after.records, "status", "--porcelain"):
            yield f"git tells otherwise: {git(machine.records, 'status', '--porcelain')}"
        git(machine.records, "fsck", "--strict")

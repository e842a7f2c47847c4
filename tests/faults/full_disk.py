"""Commands on a disk with a little room left: what they say, what is lost, torn or left, and how the next run ends."""

from __future__ import annotations

import os
import re
import subprocess
import tempfile
import threading
from collections.abc import Iterator, Mapping
from contextlib import contextmanager
from dataclasses import dataclass
from pathlib import Path

from recordgen.files import SPARE_BYTES
from tests.faults.apart import run_apart
from tests.faults.machines import HORSE, Machine
from tests.support.practice_folders import TODAY
from tests.support.publishing import git

# A disk much larger than all of one computer, so that what is left of it is known to the byte that a filler takes.
DISK_BYTES = 48 << 20
# So much of what a command needs at its fullest moment is left, in as many runs; of a change, beyond the spare room.
SHARES = tuple(part / 7 for part in range(7))
# Names that are drawn anew at each run.
DRAWN = re.compile(r"record-[a-z]{8}")
AS_OF = ["--today", str(TODAY)]
CONSENT = "consent: {vet: yes, by: Mara Tilling, date: 2026-10-14}\n"
CHANGES = ("begin", "rename", "end", "correct", "undo")
KINDS = (
    *("build", "build anew", "publish", "photo", "commit", "receive", "backup"),
    *("visit", "readers", "share", "sheet", "export", "field", *CHANGES),
)


def can_mount() -> bool:
    """Tell whether this process may make a disk of its own: by making one."""
    try:
        with tempfile.TemporaryDirectory() as folder, small_disk(Path(folder) / "disk"):
            return True
    except (OSError, subprocess.CalledProcessError):
        return False


@contextmanager
def small_disk(folder: Path) -> Iterator[Path]:
    """A disk of DISK_BYTES at a new folder. Raises CalledProcessError where none may be made."""
    folder.mkdir()
    made: list[str | Path] = ["mount", "-t", "tmpfs", "-o", f"size={DISK_BYTES}", "tmpfs", folder]
    subprocess.run(made, check=True, capture_output=True)
    try:
        yield folder
    finally:
        subprocess.run(["umount", "--lazy", folder], check=True)
        folder.rmdir()


def free_bytes(disk: Path) -> int:
    """The room left on a disk."""
    told = os.statvfs(disk)
    return told.f_bavail * told.f_frsize


class Filled:
    """A disk of which only some bytes are left until `empty`."""

    def __init__(self, disk: Path, left: int) -> None:
        self.filler = disk / "filler"
        with self.filler.open("wb") as file:
            os.posix_fallocate(file.fileno(), 0, max(1, free_bytes(disk) - left))

    def empty(self) -> None:
        """Make room again."""
        self.filler.unlink()


@dataclass(frozen=True)
class Unhindered:
    """A command with all the room it wants: the computer before and after, and what it needs at its fullest moment."""

    before: Machine
    after: Machine
    code: int
    needs_bytes: int


class FullDisks:
    """Runs commands on copies of one prepared computer, on a disk that is nearly full."""

    def __init__(self, folder: Path) -> None:
        self.folder = folder
        self.changed = Machine.prepared(folder / "prepared")
        self.kept = self.changed.copied(folder / "kept")
        horse = self.kept.records / HORSE / "horse.yaml"
        horse.write_text(horse.read_text() + CONSENT)
        assert run_apart(self.kept.words_of("commit"), self.kept.environment)[0] == 0
        self.unhindered: dict[str, Unhindered] = {}

    def goes_on(self, kind: str) -> Unhindered:
        """The outcome of a command that has room."""
        if kind not in self.unhindered:
            before = self.kept if kind in ways(self.kept) else self.changed
            with small_disk(self.folder / "large") as disk:
                machine = self._copy(before, disk, kind)
                room = free_bytes(disk)
                with least_room(disk) as least:
                    code, said, _ = run_apart(words(machine, kind), machine.environment)
                after = machine.copied(self.folder / f"after {kind}")
            assert code == 0, said
            self.unhindered[kind] = Unhindered(before, after, code, room - min(least))
        return self.unhindered[kind]

    def faults(self, kind: str, share: float) -> tuple[bool, list[str]]:
        """Whether a command was refused for want of room, and what was then wrong, in words.

        share: of what the command needs at its fullest moment, how much is left.
        """
        whole = self.goes_on(kind)
        with small_disk(self.folder / "small") as disk:
            machine = self._copy(whole.before, disk, kind)
            spare = SPARE_BYTES if kind in CHANGES and share else 0
            filled = Filled(disk, spare + round((whole.needs_bytes - spare) * share))
            code, said, _ = run_apart(words(machine, kind), machine.environment)
            wrong = [*told_badly(code, said), *(torn(machine, whole) if code else ())]
            filled.empty()
            wrong += after_next_run(machine, whole, kind, again=bool(code))
        return bool(code), [f"{kind}, {share:.2f} of the room: {one}" for one in wrong]

    def _copy(self, before: Machine, disk: Path, kind: str) -> Machine:
        return before.copied(disk / "computer", kept=kind != "build anew")


@contextmanager
def least_room(disk: Path) -> Iterator[list[int]]:
    """How little room there was meanwhile, looked at again and again."""
    room, over = [free_bytes(disk)], threading.Event()

    def look() -> None:
        while not over.wait(0.002):
            room.append(free_bytes(disk))

    looking = threading.Thread(target=look)
    looking.start()
    try:
        yield room
    finally:
        over.set()
        looking.join()


def ways(machine: Machine) -> Mapping[str, list[str | Path]]:
    """The words of commands that want everything kept in git."""
    return {
        "begin": ["begin", "willowmere/hazel", "--kind", "pony", *AS_OF],
        "rename": ["rename", HORSE, "Old Bramble", *AS_OF],
        "end": ["end", HORSE, "--why", "sold", *AS_OF],
        "correct": [
            "correct",
            HORSE,
            "2026-10-14",
            "--because",
            "misread",
            "--set",
            "feet.LF.after.toe_length=74",
            *AS_OF,
        ],
        "visit": ["visit", HORSE, "--date", "2026-11-04"],
        "readers": ["readers", "willowmere", "--add", "Mara"],
        "share": ["share", HORSE, "--with", "Three Larches", "--out", machine.folder / "shared", "--no-pdf", *AS_OF],
        "sheet": ["sheet", HORSE, "--out", machine.folder / "sheet.html", *AS_OF],
        "export": ["export", machine.folder / "tables", *AS_OF],
        "field": ["field", "--out", machine.folder / "page", *AS_OF],
        "undo": ["undo"],
    }


def words(machine: Machine, kind: str) -> list[str | Path]:
    """The words of a command that writes."""
    own = ways(machine)
    return [*own[kind], "--records", machine.records] if kind in own else machine.words_of(kind.partition(" ")[0])


def told_badly(code: int, said: str) -> Iterator[str]:
    """Faults of what a command says: a traceback, an end that is none of ours, a refusal that names no disk."""
    if code not in (0, 1) or "TRACEBACK" in said or "Traceback" in said:
        yield f"it ended with {code}: {said}"
    elif code and "full" not in said:
        yield f"it does not say that the disk is full: {said}"


def torn(machine: Machine, whole: Unhindered) -> Iterator[str]:
    """Damage of a refused run: a record of before that is another, a site that is neither the old nor the new."""
    held, old, new = machine.held(), whole.before.held(), whole.after.held()
    yield from (f"record {name}" for name, told in old.items() if held.get(name) not in (told, new.get(name)))
    added = {name for name in held.keys() - old.keys() if not name.startswith("received/")}
    yield from (f"record {name} is cut short" for name in added if held[name] != new.get(name))
    sites = machine.sites()
    for name in sites:
        if sites[name] not in (whole.before.sites().get(name), whole.after.sites().get(name)):
            yield f"site {name} is neither the old nor the new one"
    if machine.published() != whole.before.published():
        yield "the published site is another"


def after_next_run(machine: Machine, whole: Unhindered, kind: str, again: bool) -> Iterator[str]:
    """Faults once there is room: the next run fails, or a file is missing, too many or another."""
    for lock in machine.locks():
        yield f"git's lock was left: {lock.name}"
        lock.unlink()
    code, said = run_apart(words(machine, kind), machine.environment)[:2] if again else (0, "")
    if code:
        yield f"the next run ended with {code}: {said}"
    names, wanted = names_of(machine), names_of(whole.after)
    yield from (f"left over: {name}" for name in sorted(names - wanted))
    yield from (f"missing: {name}" for name in sorted(wanted - names))
    if kind != "share" and machine.held() != whole.after.held():
        yield "the records are others than with room"
    if machine.sites() != whole.after.sites():
        yield "the sites are others than with room"
    if kind == "publish" and machine.published() != whole.after.published():
        yield "the published site is another than with room"
    git(machine.records, "fsck", "--strict")


def names_of(machine: Machine) -> set[str]:
    """The paths of everything on a computer, as `Machine.names` gives them, less what is drawn anew at each run."""
    return {DRAWN.sub("record-drawn", name) for name in machine.names()}

"""Files written whole or not at all, listed and told apart; what a disk refuses, as sentences.

The one place that writes a file which somebody may read at that moment, or miss after a crash.
"""

from __future__ import annotations

import errno
import hashlib
import os
import re
import secrets
from collections.abc import Callable, Iterator
from contextlib import ExitStack, contextmanager, suppress
from pathlib import Path
from typing import IO

from recordgen.locks import hold, hold_new
from recordgen.problems import Trouble
from recordgen.sentences import Said, say

_NOTHING_WRITTEN = say("Nothing was written")
FULL = (errno.ENOSPC, errno.EDQUOT)
# Room for the files of a change as they were, and for what git writes to forget it. Judgement.
SPARE_BYTES = 4 << 20
# Where two names for one file are not to be had. Source: link(2), Linux manual pages.
NO_LINKS = (errno.EPERM, errno.ENOSYS, errno.ENOTSUP, errno.EOPNOTSUPP, errno.EMLINK)
_NEW = os.O_WRONLY | os.O_CREAT | os.O_EXCL | getattr(os, "O_BINARY", 0)
_PART = re.compile(r"\..+\.[0-9a-f]{8}\.part")


def write_whole(path: Path, content: str | bytes, mode: int | None = None, lasting: bool = True) -> None:
    """Write a file so that whoever reads it, even after a crash, sees all of it or what was there before.

    content: text goes in as UTF-8. mode: who may open the file, such as 0o600; as before, or as any new file, where
    None. lasting: wait until the disk has it; no where it can be made again. Raises OSError, with the file's name.
    """
    if mode is None and path.is_file():
        mode = path.stat().st_mode & 0o777
    with _written_beside(path, content, mode, lasting) as part:
        os.replace(part, path)


def write_new(path: Path, content: str | bytes, mode: int | None = None) -> bool:
    """Write a file as `write_whole` does, but never over anything; False where something has that name.

    Raises OSError, with the file's name.
    """
    if os.path.lexists(path):
        # A run killed just after it gave the file its name left the part, and nobody writes the file again.
        with suppress(OSError):
            clear_parts(path)
        return False
    with _written_beside(path, content, mode, lasting=True) as part:
        return _named_first(part, path)


def is_part(name: str) -> bool:
    """Tell whether a file's name is one that a file bears only while it is written."""
    return bool(_PART.fullmatch(name))


@contextmanager
def _written_beside(path: Path, content: str | bytes, mode: int | None, lasting: bool) -> Iterator[Path]:
    """The content in a part beside its place, which is gone once the block is through."""
    with _naming(path):
        if lasting:
            clear_parts(path)
        part, handle = _begun(path, mode)
        try:
            with os.fdopen(handle, "wb") as file:
                _fill(file, content.encode() if isinstance(content, str) else content, lasting)
                if mode is not None:
                    part.chmod(mode)
                if os.name != "posix":
                    # An open file bears its name there until it is closed.
                    file.close()
                yield part
        finally:
            with suppress(OSError):
                part.unlink()


def _fill(file: IO[bytes], content: bytes, lasting: bool) -> None:
    file.write(content)
    file.flush()
    if lasting:
        os.fsync(file.fileno())


def _begun(path: Path, mode: int | None) -> tuple[Path, int]:
    """A new part, held so that nobody takes it for one that was left behind."""
    while True:
        part = path.with_name(f".{path.name}.{secrets.token_hex(4)}.part")
        handle = os.open(part, _NEW, 0o666 if mode is None else mode)
        if hold_new(handle):
            return part, handle
        os.close(handle)


def clear_parts(path: Path) -> None:
    """Take away the parts of this file that killed runs left; whoever still writes holds theirs. Raises OSError."""
    for part in path.parent.iterdir():
        if is_part(part.name) and part.name[1 : -len(".00000000.part")] == path.name:
            clear_part(part)


def clear_part(part: Path) -> bool:
    """Tell whether a part was left by a killed run, and so was taken away; whoever still writes holds theirs."""
    with suppress(OSError), part.open("rb") as file:
        hold(file.fileno())
        part.unlink()
        return True
    return False


def _named_first(part: Path, path: Path) -> bool:
    """Give a part its name unless something bears it."""
    try:
        os.link(part, path)
    except FileExistsError:
        return False
    except OSError as fault:
        if fault.errno not in NO_LINKS:
            raise
        return _claimed(part, path)
    return True


def _claimed(part: Path, path: Path) -> bool:
    """The same where one file cannot have two names: the name is taken by an empty file first."""
    try:
        path.touch(exist_ok=False)
    except FileExistsError:
        return False
    os.replace(part, path)
    return True


@contextmanager
def _naming(path: Path) -> Iterator[None]:
    """Has trouble name the file that was asked for: the system names the part, or nothing."""
    try:
        yield
    except OSError as fault:
        fault.filename, fault.filename2 = str(path), None
        raise


def list_files(folder: Path) -> list[str]:
    """The paths in a folder of all that is no folder, in order, with forward strokes; links are not followed.

    None where there is no folder.
    """
    found = [Path(at, name) for at, folders, files in os.walk(folder) for name in (*files, *_links(at, folders))]
    return sorted(path.relative_to(folder).as_posix() for path in found)


def _links(at: str, folders: list[str]) -> list[str]:
    return [name for name in folders if os.path.islink(os.path.join(at, name))]


def list_empty_folders(folder: Path) -> list[str]:
    """The paths in a folder of all folders that hold nothing, each with a stroke at its end."""
    empty = [Path(at) for at, folders, files in os.walk(folder) if not folders and not files and Path(at) != folder]
    return sorted(f"{path.relative_to(folder).as_posix()}/" for path in empty)


def fingerprints(folder: Path) -> dict[str, str]:
    """The files of a folder by their paths in it, each as the SHA-256 of its bytes."""
    return {name: hashlib.sha256((folder / name).read_bytes()).hexdigest() for name in list_files(folder)}


def refuse_other(path: Path, is_ours: Callable[[bytes], bool], what: str) -> None:
    """Raises Trouble where a path holds anything but a file of ours. what: what such a file is called."""
    if os.path.lexists(path) and not (path.is_file() and is_ours(path.read_bytes())):
        raise Trouble(
            say("{path} is there already and is no {what} of ours", path=path, what=what),
            say("Name another, or move it elsewhere"),
        )


@contextmanager
def writing(target: Path, stays: Said = _NOTHING_WRITTEN) -> Iterator[None]:
    """Turns what a disk refuses into sentences that name what was to be written, never what it was made from.

    stays: how things stand, as a sentence without a full stop. Raises Trouble.
    """
    try:
        yield
    except OSError as fault:
        raise disk_trouble(fault, target, stays) from fault


@contextmanager
def spare_room(folder: Path, stays: Said) -> Iterator[None]:
    """Hold room on the disk of a folder until the block ends: what it did can then be taken back on a full disk, too.

    stays: how things stand, as a sentence without a full stop. Raises Trouble where there is not so much room.
    """
    held = ExitStack()
    with writing(folder, stays):
        # No disk can make these bytes fewer.
        held.enter_context(_written_beside(folder / "spare", os.urandom(SPARE_BYTES), None, lasting=True))
    try:
        yield
    finally:
        held.close()


@contextmanager
def filling(target: Path, stays: Said) -> Iterator[None]:
    """Turns a full disk alone into sentences; any other trouble may be of what is read. Raises Trouble and OSError."""
    try:
        yield
    except OSError as fault:
        if fault.errno not in FULL:
            raise
        raise disk_trouble(fault, target, stays) from fault


def disk_trouble(fault: OSError, target: Path | str, stays: Said) -> Trouble:
    """The refusal of a disk, as sentences."""
    if fault.errno in FULL:
        return Trouble(
            say("the disk of {target} is full", target=target), say("{stays}; make room, then try again", stays=stays)
        )
    reason = fault.strerror or str(fault)
    return Trouble(
        say("{target} cannot be written: {reason}", target=target, reason=reason),
        say("{stays}; look whether you may write there", stays=stays),
    )

"""Folders by all that is in them: what is read, by its bytes, and what was written, by what the system tells of it."""

from __future__ import annotations

import hashlib
import os
import time
from collections.abc import Collection, Iterator
from pathlib import Path

from recordgen.packaged import packaged

# A file from this size on, such as a photograph, is told by size and times while it is older than that many seconds:
# within two, a file may change and keep its times. Source: the coarsest clock of a file system in use, FAT's.
LARGE_BYTES, SETTLED_S = 65_536, 3


def content_digest(folder: Path, leave_out: Collection[Path] = ()) -> str:
    """The SHA-256 of all that a folder holds: names, bytes, where links lead, what cannot be opened.

    leave_out: folders that are not looked into, by their real paths.
    """
    seen, now = hashlib.sha256(), time.time()
    for path in _walked(folder, {os.path.realpath(one) for one in leave_out}, with_folders=True):
        seen.update(f"{path[len(str(folder)) :]}\0{_stat_line(path, now)}\0".encode("utf-8", "surrogatepass"))
    return seen.hexdigest()


def stat_digest(files: Iterator[str]) -> str:
    """The SHA-256 of some files' names, sizes and times: another write to any of them, even of the same, shows."""
    seen = hashlib.sha256()
    for path in files:
        seen.update(f"{path}\0{_stat_told(path)}\0".encode("utf-8", "surrogatepass"))
    return seen.hexdigest()


def touched_digest(folder: Path, leave_out: Collection[Path] = ()) -> str:
    """The SHA-256 of the names, sizes and times in a folder: a change that was taken back again shows too.

    leave_out: folders that are not looked into, by their real paths.
    """
    return stat_digest(_walked(folder, {os.path.realpath(one) for one in leave_out}, with_folders=False))


def files_in(*folders: Path) -> Iterator[str]:
    """The paths of all files and links in some folders, in order."""
    for folder in folders:
        yield from _walked(folder, set(), with_folders=False)


def templates_digest() -> str:
    """The SHA-256 of our templates, tables, styles and the base of every site."""
    base = hashlib.sha256((packaged() / "mkdocs.yml").read_bytes()).hexdigest()
    return f"{base} {content_digest(packaged() / 'site_templates')}"


def _walked(folder: Path, leave_out: set[str], with_folders: bool) -> Iterator[str]:
    """The paths of files and of links; with_folders: and of folders, those that cannot be opened among them."""
    for at, folders, files in os.walk(folder):
        folders[:] = sorted(name for name in folders if os.path.join(os.path.realpath(at), name) not in leave_out)
        links = [name for name in folders if os.path.islink(os.path.join(at, name))]
        told = [*files, *(folders if with_folders else links)]
        yield from (os.path.join(at, name) for name in sorted(told))


def _stat_line(path: str, now: float) -> str:
    if os.path.islink(path):
        return f"link {os.readlink(path)} {os.path.realpath(path)} {_file_line(path, now)}"
    return _file_line(path, now)


def _file_line(path: str, now: float) -> str:
    try:
        found = os.stat(path)
        if found.st_size >= LARGE_BYTES and now - max(found.st_mtime, found.st_ctime) > SETTLED_S:
            return _as_stat(found)
        with open(path, "rb") as file:
            return hashlib.sha256(file.read()).hexdigest()
    except OSError as fault:
        return f"{type(fault).__name__} {fault.errno}"


def _stat_told(path: str) -> str:
    try:
        return _as_stat(os.lstat(path))
    except OSError as fault:
        return f"{fault.errno}"


def _as_stat(found: os.stat_result) -> str:
    return f"{found.st_mode} {found.st_size} {found.st_mtime_ns} {found.st_ctime_ns} {found.st_ino}"

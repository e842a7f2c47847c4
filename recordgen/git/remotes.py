"""Tell whether a remote is the records' own: their clients' names must never lie where a site is served."""

from __future__ import annotations

import os
import re
from collections.abc import Iterator
from pathlib import Path
from urllib.parse import unquote, urlsplit

from recordgen.git.run import run, text
from recordgen.git.troubles import GitTrouble
from recordgen.problems import Trouble
from recordgen.sentences import say

# host:path, as ssh takes it; one letter before the colon is a drive.
_SHORT = re.compile(r"(?:[^/@:]+@)?(?P<host>\[[^\]]+\]|[^/:@]{2,}):(?P<path>.*)")
_WAY_OUT = say("Make a repository of its own for the site, and name it in stable.yaml")


def address_of(remote: str, records: Path) -> str:
    """A remote as git takes it from anywhere: folders are counted from the records' folder."""
    if "://" in remote or _SHORT.fullmatch(remote):
        return remote
    return str(Path(os.path.abspath(records / Path(remote).expanduser())))


def refuse_own(remote: str, records: Path) -> None:
    """Raises Trouble where a remote is the records' repository, or one the records are pushed to or fetched from.

    remote: as `address_of` gives it. Addresses are compared by host and path, whatever the protocol, the user, the
    port and the spelling; folders by where they really lie.
    """
    ours = {place(address) for address in _own_addresses(records)}
    if place(remote) in ours or place(_ask(records, "ls-remote", "--get-url", remote).strip()) in ours:
        raise Trouble(say("the records go to that remote, so a site must not"), _WAY_OUT)


def refuse_records(found: list[str], records: Path) -> None:
    """Raises Trouble where a remote holds entries of the records, whatever its address says.

    found: the hashes its branches and tags stand at.
    """
    if not found or not _is_repository(records):
        return
    told = text(run(records, "cat-file", "--batch-check", given="".join(f"{one}\n" for one in found).encode()))
    if any(not line.endswith("missing") for line in told.splitlines()):
        raise Trouble(say("that remote holds the records, so a site must not go there"), _WAY_OUT)


def place(address: str) -> tuple[str, str]:
    """The place where an address leads, as host and path, spelled one way; the host of a folder is empty."""
    if "://" in address:
        parts = urlsplit(address)
        if parts.scheme != "file":
            return (parts.hostname or "").lower(), _bare(unquote(parts.path))
        address = unquote(parts.path)
    elif short := _SHORT.fullmatch(address):
        return short["host"].lower().strip("[]"), _bare(short["path"])
    real = os.path.realpath(address).replace(os.sep, "/")
    return "", real.removesuffix("/.git").removesuffix(".git")


def _bare(path: str) -> str:
    """A path on a host, in small letters since many hosts know no others."""
    return path.strip("/").lower().removesuffix("/.git").removesuffix(".git")


def _own_addresses(records: Path) -> Iterator[str]:
    if not _is_repository(records):
        return
    for line in _ask(records, "remote", "-v").splitlines():
        name, address = line.rsplit(" (", 1)[0].split("\t", 1)
        yield from (name, address_of(address, records))
        yield address_of(name, records)
    top = Path(_ask(records, "rev-parse", "--show-toplevel").rstrip("\n"))
    yield from (str(top), str(top / _ask(records, "rev-parse", "--git-common-dir").rstrip("\n")))


def _is_repository(records: Path) -> bool:
    try:
        _ask(records, "rev-parse", "--show-toplevel")
    except GitTrouble:
        return False
    return True


def _ask(records: Path, *words: str) -> str:
    return text(run(records, *words))

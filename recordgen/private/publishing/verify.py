"""Tell whether what is served is what was published, in a folder or at an address."""

from __future__ import annotations

import hashlib
import http.client
import urllib.error
import urllib.request
from collections.abc import Callable
from pathlib import Path

from recordgen.files import list_files
from recordgen.private.keystore.key_store import KeyStore
from recordgen.private.keystore.readers import refuse_unknown, state_of
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.private.sealing.unseal import Fault, faults, faults_through_reader
from recordgen.problems import Trouble
from recordgen.sentences import say

PATIENCE_SECONDS = 30
# No reader asks for it, and many hosts do not give it out.
_NOT_SERVED = ".nojekyll"
# What hosts answer where there is nothing.
_NOTHING = {403, 404, 410}
_SCHEMES = ("http://", "https://")


def faults_in_folder(records: Path, slug: str, folder: Path) -> list[Fault]:
    """Differences of a folder from the site last published there. Raises Trouble where nothing was."""
    if not folder.is_dir():
        raise Trouble(say("{folder} is not a folder", folder=folder), say("Name the folder that is served"))
    plain = _plain_fingerprints(records, slug)
    if not plain:
        return faults(folder, _published_keys(records, slug))
    found = _plain_faults(plain, lambda name: _bytes(folder / name))
    return sorted([*found, *(Fault(name, "foreign") for name in list_files(folder) if name not in plain)])


def faults_at(records: Path, slug: str, address: str) -> list[Fault]:
    """Differences of an address from the site last published; what else lies there cannot be seen.

    Raises Trouble where nothing was published, and where the address does not answer.
    """
    if not address.startswith(_SCHEMES):
        raise Trouble(
            say("{address} is not the address of a site", address=address),
            say("Write it like https://willowmere.example.org/"),
        )
    read = reader_of(address)
    plain = _plain_fingerprints(records, slug)
    found = _plain_faults(plain, read) if plain else faults_through_reader(read, _published_keys(records, slug))
    return [fault for fault in found if fault.path != _NOT_SERVED]


def _plain_fingerprints(records: Path, slug: str) -> dict[str, str]:
    refuse_unknown(records, slug)
    return KeyStore.of(records, slug).plain_fingerprints()


def _published_keys(records: Path, slug: str) -> SiteKeys:
    state = state_of(records, slug)
    if not state.fixed:
        raise Trouble(
            say("{slug} was not published from this computer yet", slug=slug),
            say("Publish it: recordgen publish {slug}", slug=slug),
        )
    return state


def _plain_faults(published: dict[str, str], read: Callable[[str], bytes | None]) -> list[Fault]:
    found = ((name, digest, read(name)) for name, digest in published.items())
    return [
        Fault(name, "missing" if content is None else "changed")
        for name, digest, content in found
        if content is None or hashlib.sha256(content).hexdigest() != digest
    ]


def _bytes(path: Path) -> bytes | None:
    return path.read_bytes() if path.is_file() else None


def reader_of(address: str) -> Callable[[str], bytes | None]:
    """A reader of the files below an address: bytes, or None for no such file. It raises Trouble for no answer."""
    base = address if address.endswith("/") else f"{address}/"
    return lambda name: _fetch(f"{base}{name}")


def _fetch(address: str) -> bytes | None:
    # Whatever lies between must not answer from its memory: what the host has now is asked for.
    request = urllib.request.Request(address, headers={"Cache-Control": "no-cache", "User-Agent": "recordgen"})
    try:
        with urllib.request.urlopen(request, timeout=PATIENCE_SECONDS) as answer:
            content: bytes = answer.read()
            return content
    except urllib.error.HTTPError as refused:
        if refused.code in _NOTHING:
            # Hosts may give out the page for unknown addresses with that very answer.
            return refused.read() if address.endswith("/404.html") else None
        raise Trouble(
            say("{address} answers {code} {reason}", address=address, code=refused.code, reason=refused.reason),
            say("Look at the host; try again later"),
        ) from None
    except (OSError, ValueError, http.client.HTTPException) as fault:
        reason = getattr(fault, "reason", fault)
        raise Trouble(
            say("{address} does not answer: {reason}", address=address, reason=reason),
            say("Look at the network and the address"),
        ) from None

"""Demands on an address and a place, so that a sealed site works there and no other stable's is written over."""

from __future__ import annotations

import os
from collections.abc import Iterator, Mapping
from pathlib import Path
from urllib.parse import urlsplit

from recordgen.git.remotes import address_of, place
from recordgen.private.sharing.output_folder import lies_in
from recordgen.problems import Trouble
from recordgen.records.load.folders import FIELD
from recordgen.records.models.settings import PracticeFile
from recordgen.records.models.stable import Publish, Stable
from recordgen.records.yaml.read import read_record
from recordgen.sentences import say

# Browsers trust these without https. Source: W3C, Secure Contexts, section 3.1.
_THIS_MACHINE = {"localhost", "127.0.0.1", "::1"}


def needs_https(address: str) -> bool:
    """Tell whether a browser refuses to open a sealed site at an address, because it is not https."""
    parts = urlsplit(address)
    return parts.scheme != "https" and parts.hostname not in _THIS_MACHINE


def origin(address: str) -> tuple[str, str, int | None]:
    """The origin, by which browsers tell sites apart: scheme, host, port."""
    parts = urlsplit(address)
    return parts.scheme, parts.hostname or "", parts.port or {"https": 443, "http": 80}.get(parts.scheme)


def sharing_origin(wanted: Publish, others: Mapping[str, Publish]) -> list[str]:
    """The other stables whose sites have the same origin, so that each could use a key the other keeps in a browser."""
    return [slug for slug, other in others.items() if origin(other.address) == origin(wanted.address)]


def publish_of(records: Path, slug: str) -> Publish:
    """Tell where a stable or the field page is published. Raises Trouble where its file tells nothing, or is wrong."""
    if slug == FIELD:
        return publish_of_field(_practice_of(records))
    file = records / slug / "stable.yaml"
    written, problems = read_record(file, f"{slug}/stable.yaml", Stable)
    if written is None:
        raise Trouble(
            say("{slug}/stable.yaml cannot be read: {message}", slug=slug, message=problems[0].message),
            say("Look with: recordgen check"),
        )
    return publish_of_stable(written.record, slug)


def publish_of_field(practice: PracticeFile | None) -> Publish:
    """Tell where the field page is published. Raises Trouble where practice.yaml tells nothing, or cannot be read."""
    if practice is None or practice.field_page is None:
        way_out = say(
            "Write there: field_page: {{address: https://..., to: folder}}; recordgen schema practice tells more"
        )
        raise Trouble(say("practice.yaml does not say where the page for the phone is published"), way_out)
    return practice.field_page


def _practice_of(records: Path) -> PracticeFile | None:
    written, _ = read_record(records / "practice.yaml", "practice.yaml", PracticeFile)
    return written.record if written else None


def publish_of_stable(stable: Stable, slug: str) -> Publish:
    """The place where a stable is published. Raises Trouble where its file says nothing of it."""
    if stable.publish is None:
        way_out = say("Write there: publish: {{address: https://..., to: folder}}; recordgen schema stable tells more")
        raise Trouble(say("{slug}/stable.yaml does not say where its site is published", slug=slug), way_out)
    return stable.publish


def neighbours(records: Path, slug: str) -> dict[str, Publish]:
    """The places of the practice's other published sites, by their folders; files that do not read are left out."""
    found: dict[str, Publish] = {}
    for file in sorted(records.glob("*/stable.yaml")):
        written, _ = read_record(file, file.name, Stable)
        if file.parent.name != slug and written and written.record.publish:
            found[file.parent.name] = written.record.publish
    practice = _practice_of(records)
    if slug != FIELD and practice and practice.field_page:
        found[FIELD] = practice.field_page
    return found


def refuse_shared(wanted: Publish, others: Mapping[str, Publish], records: Path) -> None:
    """Raises Trouble where another stable is published to the same place or at the same address."""
    ours = set(_places(wanted, records))
    for slug, other in others.items():
        if ours & set(_places(other, records)):
            raise Trouble(
                say("{slug} is published at the same place", slug=slug),
                say("Give each stable a place and an address of its own"),
            )


def _places(publish: Publish, records: Path) -> Iterator[tuple[object, ...]]:
    yield ("address", origin(publish.address), urlsplit(publish.address).path)
    if publish.to:
        yield ("folder", folder_of(publish.to, records))
    if publish.git:
        yield ("branch", *place(address_of(publish.git.remote, records)), publish.git.branch)
    if publish.command:
        yield ("command", publish.command)


def folder_of(to: str, records: Path) -> Path:
    """The folder a stable's site goes to, counted from the records' folder, by where it really lies."""
    return Path(os.path.realpath(records / Path(to).expanduser()))


def refuse_inside(folder: Path, records: Path) -> None:
    """Raises Trouble for a folder in the records, or around them."""
    if lies_in(folder, records) or lies_in(records, folder):
        raise Trouble(
            say("{folder} does not lie apart from the records", folder=folder),
            say("Name a folder outside them in stable.yaml"),
        )

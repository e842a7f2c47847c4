"""Tell where a copy of the records may lie: outside them, at no address of a site, not where anything else is kept."""

from __future__ import annotations

import os
from pathlib import Path

from recordgen.files import writing
from recordgen.folders import replace_folder, workroom
from recordgen.git.copies import MAIN_LINE, SIDE_LINE, begin_copy, is_bare, last_copy_address, lines_of
from recordgen.git.remotes import address_of, place
from recordgen.git.repository import top_of
from recordgen.private.sharing.output_folder import lies_in
from recordgen.problems import Trouble, quoted
from recordgen.records.models.stable import Stable
from recordgen.records.yaml.read import read_partly
from recordgen.sentences import say

NEW = say("Name a new folder, such as /media/stick/my-practice.git")


def refuse_shared(records: Path) -> None:
    """Raises Trouble where the records are in no git repository of their own."""
    top = top_of(records)
    if top is None:
        raise Trouble(
            say("the records are not in a git repository"), say("Make it one: git init, then recordgen commit")
        )
    if not top.samefile(records):
        message = say("the records share a git repository with other files ({top})", top=top)
        raise Trouble(message, say("Move them into a folder of their own: recordgen init shows what one looks like"))


def copy_address(typed: str | None, records: Path) -> str:
    """The address of the copy: the one that is named, or the one that was used last. Raises Trouble for neither."""
    if typed is None:
        found = last_copy_address(records)
        if found is None:
            raise Trouble(
                say("no copy is known yet"), say("Name its place: recordgen backup /media/stick/my-practice.git")
            )
        return found
    return address_of(typed, Path.cwd())


def is_folder(address: str) -> bool:
    """Tell whether an address is a folder of this computer."""
    return place(address)[0] == "" and "://" not in address


def fit_copy(address: str, records: Path) -> None:
    """Raises Trouble where no copy of the records may lie at an address. A folder that is missing is made."""
    for slug, remote in _sites(records).items():
        if place(address_of(remote, records)) == place(address):
            raise Trouble(
                say("the site of {slug} is served from there", slug=slug), say("Name a place that nobody reads but you")
            )
    if is_folder(address):
        folder = Path(address)
        if lies_in(folder, records):
            raise Trouble(say("{folder} lies in the records themselves", folder=folder), NEW)
        _make_copy(folder)
    others = sorted(lines_of(records, address).keys() - {MAIN_LINE, SIDE_LINE})
    if others:
        message = say(
            "there is another repository, with the branch {others}",
            others=quoted(others[0].removeprefix("refs/heads/")),
        )
        raise Trouble(message, say("Name an empty repository, or a new folder"))


def refuse_missing(address: str) -> None:
    """Raises Trouble where an address is a folder in which no copy lies."""
    if is_folder(address) and not is_bare(Path(address)):
        raise Trouble(
            say("there is no copy of records in {address}", address=address),
            say("Look at its name, and whether the stick is in"),
        )


def _make_copy(folder: Path) -> None:
    if folder.is_dir() and is_bare(folder):
        return
    if not folder.parent.is_dir():
        raise Trouble(
            say("there is no folder {parent}", parent=folder.parent),
            say("Look at its name, and whether the stick is in"),
        )
    if os.path.lexists(folder) and (not folder.is_dir() or any(folder.iterdir())):
        raise Trouble(say("{folder} holds other files", folder=folder), NEW)
    with writing(folder), workroom(folder.parent) as room:
        fresh = room / folder.name
        fresh.mkdir()
        begin_copy(fresh)
        replace_folder(fresh, folder)


def _sites(records: Path) -> dict[str, str]:
    found = {}
    for file in sorted(records.glob("*/stable.yaml")):
        stable, _ = read_partly(file, file.name, Stable)
        publish = stable.record.publish if stable else None
        if publish and publish.git:
            found[file.parent.name] = publish.git.remote
    return found

"""New records out of a copy, whole with their history, and the keys beside them once the words are typed."""

from __future__ import annotations

import os
from dataclasses import dataclass
from pathlib import Path

from recordgen.files import writing
from recordgen.folders import replace_folder, workroom
from recordgen.git.copies import (
    MAIN_LINE,
    MET_SIDE,
    SIDE_LINE,
    clone_copy,
    entries_between,
    fetch_lines,
    file_in,
    lines_of,
    name_entry,
)
from recordgen.git.keep import HOOKS, look_through_first
from recordgen.packaged import packaged
from recordgen.private.backup.copied_keys import FILE, AskWords, CopiedKeys
from recordgen.private.backup.place import refuse_missing
from recordgen.problems import Trouble
from recordgen.sentences import say


@dataclass(frozen=True)
class RestoredCopy:
    """The outcome. entries: of the history. keys: files that were put back. without_words: keys that wait."""

    entries: int
    keys: tuple[str, ...]
    without_words: bool


def restore_copy(address: str, folder: Path, ask: AskWords) -> RestoredCopy:
    """Make a folder of records out of a copy.

    Raises Trouble where the folder is there already, or the copy holds no records or is damaged; nothing is made then.
    NotOpened, where the words do not fit, is raised before anything is in its place too.
    """
    refuse_missing(address)
    if os.path.lexists(folder) and (not folder.is_dir() or any(folder.iterdir())):
        raise Trouble(say("{folder} is there already", folder=folder), say("Name a folder that is not there yet"))
    if not folder.parent.is_dir():
        raise Trouble(say("there is no folder {parent}", parent=folder.parent), say("Make it, or name another place"))
    if MAIN_LINE not in lines_of(folder.parent, address):
        raise Trouble(say("there are no records in that copy"), say("Look at its address"))
    with writing(folder), workroom(folder.parent) as room:
        fresh = room / folder.name
        clone_copy(address, fresh)
        standing = fetch_lines(fresh, address)
        if _has_our_hook(fresh):
            look_through_first(fresh)
        put_back, without_words = _keys(fresh, standing.get(SIDE_LINE), ask)
        entries = len(entries_between(fresh, None, standing[MAIN_LINE]))
        replace_folder(fresh, folder)
    return RestoredCopy(entries, put_back, without_words)


def _has_our_hook(fresh: Path) -> bool:
    """Tell whether what git would run before an entry is what we laid out; a changed one is not run unasked."""
    ours = packaged() / "site_templates" / "records" / "pre-commit"
    hooks = sorted((fresh / HOOKS).glob("*"))
    return [path.name for path in hooks] == [ours.name] and hooks[0].read_bytes() == ours.read_bytes()


def _keys(fresh: Path, there: str | None, ask: AskWords) -> tuple[tuple[str, ...], bool]:
    """The files of keys that were put back, and whether any wait for their words."""
    if there is None:
        return (), False
    keys = CopiedKeys.read(fresh)
    states = keys.open_keys(file_in(fresh, there, FILE), ask)
    if states is None:
        return (), True
    put_back = keys.take_in(states, lambda name, ours, theirs: True)
    keys.keep_met(states)
    name_entry(fresh, MET_SIDE, there)
    return put_back, False

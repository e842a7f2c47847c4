"""Sends all records with their history to a copy, and the keys sealed beside them; then reads the copy back."""

from __future__ import annotations

import tempfile
from collections.abc import Callable
from dataclasses import dataclass
from pathlib import Path

from recordgen.folders import workroom
from recordgen.git.changes import kinds_of_change
from recordgen.git.copies import (
    MAIN_LINE,
    MET_SIDE,
    SIDE_LINE,
    clone_and_check,
    common_entry,
    entries_between,
    entry_of,
    entry_of_file,
    fetch_lines,
    file_in,
    is_before,
    name_entry,
    remember_copy_address,
    send_lines,
)
from recordgen.private.backup.copied_keys import FILE, AskWords, CopiedKeys
from recordgen.private.backup.place import fit_copy, refuse_shared
from recordgen.private.crypto.passphrases import six_words
from recordgen.private.keystore.sealed_copy import KeyBackup, SealingKey
from recordgen.problems import Trouble
from recordgen.progress import tell
from recordgen.sentences import say, say_counted

# Shows new words once, before anything is sealed under them.
ShowWords = Callable[[str], None]


@dataclass(frozen=True)
class BackedUp:
    """The outcome. new: entries that the copy did not hold. keys: how many files. not_kept: files not in git yet."""

    address: str
    new: int
    keys: int
    not_kept: tuple[str, ...]


def back_up(records: Path, address: str, show: ShowWords, ask: AskWords) -> BackedUp:
    """Send everything to a copy and read it back.

    Raises Trouble where the copy holds what is not here, where it belongs to another practice, and where anything of it
    does not read back; the copy only ever grows.
    """
    refuse_shared(records)
    now = entry_of(records, "HEAD")
    if now is None:
        raise Trouble(say("nothing is kept in git yet"), say("Keep it first: recordgen commit"))
    fit_copy(address, records)
    tell(say("Backing up: what the copy holds"), 0, 3)
    standing = fetch_lines(records, address)
    before = standing.get(MAIN_LINE)
    _refuse_ahead(records, now, before)
    keys = CopiedKeys.read(records)
    keys_entry = _keys_entry(records, keys, standing.get(SIDE_LINE), show, ask)
    lines = {MAIN_LINE: now} | ({SIDE_LINE: keys_entry} if keys_entry else {})
    tell(say("Backing up: sending"), 1, 3)
    send_lines(records, address, lines)
    tell(say("Backing up: reading it back"), 2, 3)
    _check_sent(address, lines, keys)
    if keys_entry:
        name_entry(records, MET_SIDE, keys_entry)
        keys.keep()
    remember_copy_address(records, address)
    new = len(entries_between(records, before, now))
    not_kept = tuple(path.relative_to(records).as_posix() for path in kinds_of_change(records))
    return BackedUp(address, new, len(keys.here), not_kept)


def _refuse_ahead(records: Path, now: str, there: str | None) -> None:
    if there is None or is_before(records, there, now):
        return
    if common_entry(records, now, there) is None:
        raise Trouble(
            say("that copy is of another practice"), say("Name another place, such as a new folder on the stick")
        )
    message = say_counted(
        "the copy holds an entry that is not here",
        "the copy holds {count} entries that are not here",
        len(entries_between(records, now, there)),
    )
    raise Trouble(message, say("Bring them first: recordgen fetch"))


def _keys_entry(records: Path, keys: CopiedKeys, there: str | None, show: ShowWords, ask: AskWords) -> str | None:
    """The entry of sealed keys that the copy is to hold; None where there are no keys."""
    if not keys.here and there is None:
        return None
    if there is not None and there != entry_of(records, MET_SIDE):
        raise Trouble(say("the copy holds keys that are not here"), say("Bring them first: recordgen fetch"))
    if there is None:
        words = six_words()
        show(words)
        keys.sealing = SealingKey.new(words)
        return entry_of_file(records, FILE, keys.seal(), None)
    raw = file_in(records, there, FILE)
    if keys.open_keys(raw, ask) is None:
        raise Trouble(
            say("without the words of the copy its keys cannot be renewed"),
            say("Look for the six words, and try again"),
        )
    return there if keys.is_as_met() else entry_of_file(records, FILE, keys.seal(), there)


def _check_sent(address: str, lines: dict[str, str], keys: CopiedKeys) -> None:
    """Raises Trouble where the copy does not hold, byte for byte, what was sent."""
    with workroom(Path(tempfile.gettempdir())) as room:
        folder = clone_and_check(address, room)
        wrong = [line for line, entry in lines.items() if entry_of(folder, line) != entry]
        if not wrong and SIDE_LINE in lines:
            copy = KeyBackup.read(file_in(folder, SIDE_LINE, FILE))
            is_whole = copy is not None and keys.sealing is not None and bool(keys.sealing.open_text(copy))
            wrong = [] if is_whole else [SIDE_LINE]
    if wrong:
        raise Trouble(
            say("the copy does not read back as it was sent"), say("Take another place: recordgen backup FOLDER")
        )

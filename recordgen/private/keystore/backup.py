"""The keys of all stables and of the field page as one encrypted file, to keep away from this computer."""

from __future__ import annotations

import json
import os
from collections.abc import Mapping
from dataclasses import dataclass
from itertools import count
from pathlib import Path

from recordgen.files import write_new, writing
from recordgen.private.crypto.passphrases import FEWEST_ITERATIONS, ITERATIONS
from recordgen.private.crypto.primitives import NotOpened
from recordgen.private.keystore import field_key
from recordgen.private.keystore.checksum import verified_content
from recordgen.private.keystore.location import ENDING, private_folder, refuse_repository
from recordgen.private.keystore.sealed_copy import KeyBackup, SealingKey
from recordgen.private.keystore.site_keys import SiteKeys
from recordgen.problems import Trouble
from recordgen.records.load.folders import FIELD
from recordgen.sentences import say

# Readers refuse an edition older than one they saw; a copy may be that many editions old.
SERIALS_AHEAD = 1000


@dataclass(frozen=True)
class Backup:
    """A copy of all keys that is not written yet.

    path: its file. stables: of how many. field_page: whether of the field page too. content: sealed.
    """

    path: Path
    stables: int
    field_page: bool
    content: bytes

    def write(self) -> None:
        """Write it to its file. Raises Trouble where that cannot be, or something lies there by now."""
        with writing(self.path, say("There is no copy, and the words shown just now open nothing")):
            if not write_new(self.path, self.content, mode=0o600):
                raise _exists_already(self.path)


@dataclass(frozen=True)
class RestoredKeys:
    """The files of keys that were put back, those that were here and stay, and what damaged ones are now called."""

    put_back: tuple[str, ...]
    already_here: tuple[str, ...]
    damaged: tuple[str, ...]


def backup(path: Path, passphrase: str, iterations: int = ITERATIONS) -> Backup:
    """The keys of all stables and of the field page, for a new file that only these words open.

    Raises Trouble where there are none or damaged ones, where the file is there already, and inside a git repository.
    """
    refuse_repository(path)
    if os.path.lexists(path):
        raise _exists_already(path)
    kept = local_keys()
    if not kept:
        raise Trouble(say("there are no keys on this computer yet"), say("Begin a private site first"))
    stables = sum(not _is_of_page(name) and not name.startswith(f"{FIELD}-") for name in kept)
    sealed = SealingKey.new(passphrase, iterations).seal(json.dumps(kept))
    return Backup(path, stables, stables < len(kept), sealed)


def local_keys(practice: str = "") -> dict[str, str]:
    """The keys of stables and of the field page on this computer, by the names of their files.

    practice: the part of those names that tells a practice; all practices' where empty. Raises Trouble where any are
    damaged.
    """
    folder = private_folder()
    found = {file.name: SiteKeys.read(file).file_bytes.decode() for file in sorted(folder.glob(f"*{practice}{ENDING}"))}
    for file in sorted(folder.glob(f"*{practice}{field_key.ENDING}")):
        found[file.name] = field_key.pem_of(field_key.keys_in(file))
    return found


def _exists_already(path: Path) -> Trouble:
    return Trouble(
        say("{path} is there already", path=path), say("Name a new file, and delete the old copy afterwards")
    )


def restore(path: Path, passphrase: str, fewest: int = FEWEST_ITERATIONS) -> RestoredKeys:
    """Put back the keys of each stable that has none here, or damaged ones, out of a file that `backup` wrote.

    Those of the field page are put beside what is here, since notes may still come that were sealed for either. Damaged
    ones are not deleted; their file gets another name. Raises NotOpened where the words do not fit, and Trouble where
    the file is none of these, or damaged.
    """
    return put_back(_open_copy(path, passphrase, fewest))


def put_back(kept: Mapping[str, str]) -> RestoredKeys:
    """Put back keys by the names of their files, as `restore` does. Raises Trouble."""
    folder = private_folder()
    pages = {name: field_key.keys_of(text, folder / name) for name, text in kept.items() if _is_of_page(name)}
    states = {name: SiteKeys.of(text.encode(), folder / name) for name, text in kept.items() if not _is_of_page(name)}
    damaged = [name for name in sorted(kept) if _is_damaged(folder / name)]
    missing = [name for name in sorted(states) if name in damaged or not (folder / name).exists()]
    moved = [_move_aside(folder / name) for name in damaged]
    for name in missing:
        _run_ahead(states[name]).save()
    missing += [name for name, keys in sorted(pages.items()) if field_key.keep_too(folder / name, keys)]
    return RestoredKeys(tuple(missing), tuple(sorted(kept.keys() - set(missing))), tuple(moved))


def _is_of_page(name: str) -> bool:
    return name.endswith(field_key.ENDING)


def _is_damaged(file: Path) -> bool:
    return file.exists() and verified_content(file.read_bytes()) is None


def _move_aside(file: Path) -> str:
    """Gives a file a name that no file has yet, which is returned."""
    names = (f"{file.name}.damaged{number or ''}" for number in count())
    free = next(name for name in names if not os.path.lexists(file.with_name(name)))
    file.rename(file.with_name(free))
    return free


def _run_ahead(state: SiteKeys) -> SiteKeys:
    state.serial += SERIALS_AHEAD
    state.digest = ""
    return state


def _open_copy(path: Path, passphrase: str, fewest: int) -> dict[str, str]:
    copy = _read_copy(path)
    key = SealingKey.of(copy, passphrase, fewest)
    try:
        text = key.open_text(copy)
    except NotOpened:
        raise NotOpened(
            say("these words do not open {path}", path=path), say("Look for a word left out or spelled otherwise")
        ) from None
    return {Path(name).name: text for name, text in json.loads(text).items()}


def _read_copy(path: Path) -> KeyBackup:
    copy = KeyBackup.read(path.read_bytes())
    if copy is None:
        way_out = say("Name the file that was written as a copy, or take another one that you kept")
        raise Trouble(say("{path} is no copy of keys, or a damaged one", path=path), way_out)
    return copy

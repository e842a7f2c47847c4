"""The keys of all stables as one encrypted file, to keep away from this computer."""

from __future__ import annotations

import json
import os
import secrets
from dataclasses import dataclass
from pathlib import Path
from typing import Literal

from pydantic import BaseModel, ConfigDict, ValidationError

from recordgen.files import write_new
from recordgen.private.keys import (
    FEWEST_ITERATIONS,
    ITERATIONS,
    NONCE_BYTES,
    NotOpened,
    decrypted,
    encrypted,
    pbkdf2,
    within_limits,
)
from recordgen.private.ring import SALT_BYTES, b64u, unb64u
from recordgen.private.state import State
from recordgen.private.whereabouts import ENDING, private_folder, refuse_repository
from recordgen.private.words import normal
from recordgen.problems import Trouble

# Readers refuse an edition older than one they saw; a copy may be that many editions old.
SERIALS_AHEAD = 1000


class Copy(BaseModel):
    """The encrypted file as it is read back."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    v: Literal[1]
    iter: int
    salt: str
    iv: str
    states: str


@dataclass(frozen=True)
class Restored:
    """The files of keys that were put back, and those that were here already and stay as they are."""

    put_back: tuple[str, ...]
    already_here: tuple[str, ...]


def export(path: Path, passphrase: str, iterations: int = ITERATIONS) -> int:
    """Write the keys of all stables to a new file that only these words open; answers for how many stables.

    Raises Trouble where there are none, where the file is there already, and inside a git repository.
    """
    refuse_repository(path)
    states = {file.name: file.read_text("utf-8") for file in sorted(private_folder().glob(f"*{ENDING}"))}
    if not states:
        raise Trouble("there are no keys on this computer yet", "Begin a private site first")
    if os.path.lexists(path) or not write_new(path, _sealed(json.dumps(states), passphrase, iterations), mode=0o600):
        raise Trouble(f"{path} is there already", "Name a new file, and delete the old copy afterwards")
    return len(states)


def _sealed(text: str, passphrase: str, iterations: int) -> bytes:
    salt, iv = secrets.token_bytes(SALT_BYTES), secrets.token_bytes(NONCE_BYTES)
    key = pbkdf2(normal(passphrase).encode(), salt, iterations)
    states = b64u(encrypted(key, iv, text.encode(), _bound(iterations)))
    copy = Copy(v=1, iter=iterations, salt=b64u(salt), iv=b64u(iv), states=states)
    return (copy.model_dump_json(indent=1) + "\n").encode()


def restore(path: Path, passphrase: str, fewest: int = FEWEST_ITERATIONS) -> Restored:
    """Put back the keys of each stable that has none here, out of a file that `export` wrote.

    Raises NotOpened where the words do not fit, and Trouble where the file is none of these.
    """
    states = _opened(path, passphrase, fewest)
    folder = private_folder()
    missing = [name for name in sorted(states) if not (folder / name).exists()]
    for name in missing:
        _run_ahead(State.of(states[name].encode(), folder / name)).save()
    return Restored(tuple(missing), tuple(sorted(states.keys() - set(missing))))


def _run_ahead(state: State) -> State:
    state.serial += SERIALS_AHEAD
    state.digest = ""
    return state


def _opened(path: Path, passphrase: str, fewest: int) -> dict[str, str]:
    try:
        copy = Copy.model_validate_json(path.read_bytes())
    except ValidationError:
        raise Trouble(f"{path} is no copy of keys", "Name the file that was written as a copy") from None
    key = pbkdf2(normal(passphrase).encode(), unb64u(copy.salt), within_limits(copy.iter, fewest))
    try:
        states = json.loads(decrypted(key, unb64u(copy.iv), unb64u(copy.states), _bound(copy.iter)))
    except NotOpened:
        raise NotOpened(f"these words do not open {path}", "Look for a word left out or spelled otherwise") from None
    return {Path(name).name: text for name, text in states.items()}


def _bound(iterations: int) -> bytes:
    return f"recordgen keys|1|{iterations}".encode()

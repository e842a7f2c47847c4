"""Tell where keys lie: a folder of this user's alone, outside every repository, one file for each stable."""

from __future__ import annotations

import hashlib
import os
from pathlib import Path

from platformdirs import user_data_path

from recordgen.git.repository import first_entry
from recordgen.problems import Trouble
from recordgen.sentences import say

ENVIRONMENT = "RECORDGEN_PRIVATE"
ENDING = ".keys"


def private_folder() -> Path:
    """The folder of keys, made where it is missing and closed to others. Raises Trouble inside a git repository."""
    folder = _folder()
    refuse_repository(folder)
    folder.mkdir(mode=0o700, parents=True, exist_ok=True)
    folder.chmod(0o700)
    return folder


def key_files() -> list[str]:
    """The paths of all that lies in the folder of keys, in order; looking makes no folder."""
    return sorted(str(path) for path in _folder().glob("*"))


def has_keys() -> bool:
    """Tell whether any stable's keys lie on this computer; looking makes no folder."""
    return any(_folder().glob(f"*{ENDING}"))


def _folder() -> Path:
    return Path(os.environ.get(ENVIRONMENT) or user_data_path("recordgen") / "private")


def refuse_repository(path: Path) -> None:
    """Raises Trouble where a path lies inside a git repository: what is once in git cannot be taken back."""
    real = Path(os.path.realpath(path))
    for folder in (real, *real.parents):
        if (folder / ".git").exists():
            way_out = say(
                "Name a folder outside {folder}; for the keys, in the environment variable {environment}",
                folder=folder,
                environment=ENVIRONMENT,
            )
            raise Trouble(say("{path} lies in a git repository, where no key may lie", path=path), way_out)


def state_file(records: Path, slug: str, ending: str = ENDING) -> Path:
    """The file of one stable's keys, there or not yet; that of the practice's own has another ending.

    It is named by the stable and by the first entry of the records' git history, so that it is found again when the
    records move or are cloned, and two practices never meet. Records without a history are known by their folder; once
    they have one, the file is renamed. Raises Trouble where the folder of keys cannot be used.
    """
    from recordgen.records.load.folders import SLUG

    if not SLUG.fullmatch(slug):
        raise ValueError(f"{slug!r} is no name of a stable")
    folder = private_folder()
    by_folder = _key_file(folder, slug, str(records.resolve()), ending)
    history = first_entry(records)
    if history is None:
        return by_folder
    by_history = _key_file(folder, slug, history, ending)
    if by_folder.exists() and not by_history.exists():
        by_folder.rename(by_history)
    return by_history


def _key_file(folder: Path, slug: str, practice: str, ending: str) -> Path:
    return folder / f"{slug}-{hashlib.sha256(practice.encode('utf-8', 'surrogatepass')).hexdigest()[:16]}{ending}"

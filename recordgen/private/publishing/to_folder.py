"""A site put into the folder that is served: copied beside it, then swapped in one step."""

from __future__ import annotations

import errno
import os
import shutil
from collections.abc import Iterator
from contextlib import contextmanager
from pathlib import Path

from recordgen.files import disk_trouble, fingerprints, list_empty_folders, list_files
from recordgen.folders import replace_folder, workroom
from recordgen.private.publishing.ownership import RING_FILE, Ours
from recordgen.problems import Trouble
from recordgen.sentences import say

STAYS = say("What is served stays as it was")


def put_folder(fresh: Path, place: Path, ours: Ours) -> bool:
    """Put a copy of `fresh` in the place of a folder, in one step; False where the same was there already.

    At every moment the place holds the old site or the new one, whole. Raises Trouble where it holds anything else,
    where it cannot be swapped, and on a full disk.
    """
    place = Path(os.path.realpath(place))
    with _explain_disk_faults(place):
        refuse_place(place, ours)
        if place.is_dir() and fingerprints(place) == fingerprints(fresh):
            return False
        place.parent.mkdir(parents=True, exist_ok=True)
        with workroom(place.parent) as room:
            # Whatever a killed run had moved aside is back by now.
            refuse_place(place, ours)
            replace_folder(_copy_durably(fresh, room / "site"), place)
    return True


def refuse_place(place: Path, ours: Ours) -> None:
    """Raises Trouble where a place is no folder, or holds anything but this site."""
    if place.is_dir():
        ring = place / RING_FILE
        found = [*list_files(place), *list_empty_folders(place)]
        ours.look_at(found, ring.read_bytes() if ring.is_file() else None, str(place))
    elif place.exists():
        raise Trouble(say("{place} is not a folder", place=place), say("Name a folder of its own in stable.yaml"))


def _copy_durably(fresh: Path, copy: Path) -> Path:
    """A copy that is on the disk before it is used, as open to others as any new folder."""
    copy.mkdir()
    for name in list_files(fresh):
        (copy / name).parent.mkdir(parents=True, exist_ok=True)
        shutil.copyfile(fresh / name, copy / name)
    if hasattr(os, "sync"):
        os.sync()
    return copy


@contextmanager
def _explain_disk_faults(place: Path) -> Iterator[None]:
    """Turns what a disk refuses into sentences."""
    try:
        yield
    except OSError as fault:
        if fault.errno in (errno.EBUSY, errno.EXDEV):
            message = say("{place} is where a disk begins, so it cannot be swapped in one step", place=place)
            raise Trouble(message, say("{stays}; name a folder inside it", stays=STAYS)) from fault
        raise disk_trouble(fault, place, STAYS) from fault

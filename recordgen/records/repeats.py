"""The visits of a whole practice that hold repeated readings, found without reading the others."""

from __future__ import annotations

from collections.abc import Iterator
from pathlib import Path

from recordgen.records.reading import read
from recordgen.records.visit import Visit
from recordgen.records.walk import OWN_FOLDERS, VISIT_FILE

KEY = b"repeat:"


def repeated_visits(records: Path) -> tuple[Visit, ...]:
    """The visits with `repeat:`, of every stable, in the order of their files; those with an error are left out.

    How well readings repeat belongs to the practice: a stable that is built alone is told by the same errors.
    """
    found = (read(file, file.name, Visit)[0] for file in _files(records) if KEY in file.read_bytes())
    return tuple(written.record for written in found if written)


def _files(records: Path) -> Iterator[Path]:
    for stable in sorted(path for path in records.iterdir() if path.is_dir() and path.name not in OWN_FOLDERS):
        for horse in sorted(path for path in stable.iterdir() if path.is_dir()):
            yield from sorted(path for path in horse.iterdir() if VISIT_FILE.fullmatch(path.name) and path.is_file())

"""The figures of tracings that were reckoned once, kept by content beside the pictures."""

from __future__ import annotations

import hashlib
import json
from dataclasses import dataclass
from pathlib import Path

import recordgen.hoof
import recordgen.records.models.lines
from recordgen.hoof.tracing.figures import Figure, reckoned
from recordgen.pictures.cache import code_version, keep
from recordgen.records.models.tracing import Tracing


@dataclass(frozen=True)
class FigureCache:
    """Finds the figures of a tracing, and reckons them where a folder does not hold them whole.

    Several processes may share the folder; one that cannot be written to only costs the time of reckoning.
    """

    folder: Path

    def __call__(self, tracing: Tracing, hand_px: float) -> dict[str, Figure]:
        """The figures by name. hand_px: SD of one picked coordinate, px."""
        file = self.folder / f"{key_of(tracing, hand_px)}.json"
        found = _read(file)
        if found is None:
            found = reckoned(tracing, hand_px)
            keep(file, json.dumps({name: [figure.value, figure.sd] for name, figure in found.items()}))
        return found


def key_of(tracing: Tracing, hand_px: float) -> str:
    """The name that figures are kept under: a hash of what reckons them and of all that they come from."""
    scale = (tracing.scale.ends, tracing.scale.length, tracing.scale.lay) if tracing.scale else None
    told = (reckoning_version(), hand_px, tracing.view, tracing.drawn, scale, tracing.named())
    return hashlib.sha256(repr(told).encode()).hexdigest()


def reckoning_version() -> str:
    """A hash of the code that reckons and of its libraries' versions: when either changes, all is reckoned again."""
    rooms = (recordgen.hoof, recordgen.records.models.lines)
    return " ".join(code_version(Path(str(room.__file__)).parent, "numpy", "shapely") for room in rooms)


def _read(file: Path) -> dict[str, Figure] | None:
    try:
        return {name: Figure(*map(float, figure)) for name, figure in json.loads(file.read_bytes()).items()}
    except (OSError, ValueError, TypeError, AttributeError):
        return None

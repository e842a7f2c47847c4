"""The records by their bytes, so that what was made from them is known again."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from pathlib import Path

from recordgen.cache.inputs import content_digest, templates_digest, touched_digest
from recordgen.cache.spelling import key_of
from recordgen.cache.versions import program_version
from recordgen.records.load.everything import Whole
from recordgen.records.models.practice import HorseRecord


@dataclass(frozen=True)
class RecordsDigest:
    """The records of a folder by their bytes: each horse's folder, what else a stable's holds, and all the rest.

    horses: by their folders, such as willowmere/bramble. touched: by sizes and times, since what is read may change and
    change back before anybody looks again.
    """

    root: str
    shared: str
    stables: Mapping[str, str]
    horses: Mapping[str, str]
    touched: str

    @classmethod
    def of(cls, records: Path) -> RecordsDigest:
        """The records as they are now."""
        root = Path(os.path.realpath(records))
        stables = sorted(file.parent for file in root.glob("*/stable.yaml"))
        not_read = [root / ".git", root / "sites"]
        touched = touched_digest(root, not_read)
        shared = content_digest(root, [*not_read, *stables])
        horses = {folder: sorted(file.parent for file in folder.glob("*/horse.yaml")) for folder in stables}
        own = {folder.name: content_digest(folder, horses[folder]) for folder in stables}
        each = {f"{at.name}/{one.name}": content_digest(one) for at, found in horses.items() for one in found}
        return cls(str(root), shared, own, each, touched)

    def is_current(self) -> bool:
        """Tell whether the records are still as they were, and nobody wrote to them meanwhile."""
        return self == RecordsDigest.of(Path(self.root))

    def keys(self, whole: Whole) -> RecordKeys:
        """The keys of what is made of each stable's and each horse's records, with what all stables share.

        whole: the practice that was read from these bytes.
        """
        repeated = [visit.model_dump_json() for visit in whole.repeated]
        shared = key_of((program_version(), templates_digest()), self.root, self.shared, repeated)
        stables = {one.slug: key_of(shared, one.slug, self.stables.get(one.slug)) for one in whole.practice.stables}
        horses = {
            (one.stable, one.slug): key_of(stables[one.stable], one.slug, self._held(one), one.earlier)
            for one in whole.practice.horses
        }
        return RecordKeys(stables, horses, shared)

    def _held(self, horse: HorseRecord) -> str | None:
        return self.horses.get(f"{horse.stable}/{horse.slug}")


@dataclass(frozen=True)
class RecordKeys:
    """The keys of stables without their horses, and of horses, by the names of their folders.

    shared: of what all stables share. None tells the day.
    """

    stables: Mapping[str, str]
    horses: Mapping[tuple[str, str], str]
    shared: str

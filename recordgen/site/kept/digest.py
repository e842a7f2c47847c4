"""The records by their bytes, so that what was made from them is known again."""

from __future__ import annotations

import os
from collections.abc import Mapping
from dataclasses import dataclass
from datetime import date
from pathlib import Path

from recordgen.cache.inputs import content_digest, templates_digest, touched_digest
from recordgen.cache.spelling import key_of
from recordgen.cache.versions import program_version
from recordgen.records.load.everything import Whole
from recordgen.records.models.practice import StableRecord


@dataclass(frozen=True)
class RecordsDigest:
    """The records of a folder by their bytes: each stable's folder, and all the rest.

    touched: by sizes and times, since what is read may change and change back before anybody looks again.
    """

    root: str
    shared: str
    stables: Mapping[str, str]
    touched: str

    @classmethod
    def of(cls, records: Path) -> RecordsDigest:
        """The records as they are now."""
        root = Path(os.path.realpath(records))
        stables = sorted(file.parent for file in root.glob("*/stable.yaml"))
        not_read = [root / ".git", root / "sites"]
        touched = touched_digest(root, not_read)
        shared = content_digest(root, [*not_read, *stables])
        return cls(str(root), shared, {folder.name: content_digest(folder) for folder in stables}, touched)

    def is_current(self) -> bool:
        """Whether the records are still as they were, and nobody wrote to them meanwhile."""
        return self == RecordsDigest.of(Path(self.root))

    def keys(self, whole: Whole, today: date) -> dict[str, str]:
        """By stable, the key of what is made of its records alone, with what all stables share.

        whole: the practice that was read from these bytes.
        """
        repeated = [visit.model_dump_json() for visit in whole.repeated]
        shared = key_of((program_version(), templates_digest()), self.root, self.shared, today, repeated)
        return {stable.slug: self._key(shared, stable) for stable in whole.practice.stables}

    def _key(self, shared: str, stable: StableRecord) -> str:
        return key_of(shared, stable.slug, self.stables.get(stable.slug), [horse.earlier for horse in stable.horses])

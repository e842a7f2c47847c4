"""Tell which stables changed since an entry of git: their own folder, or what all stables share."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from pathlib import Path

from recordgen.git.changes import names_changed_since
from recordgen.records.load.folders import SHARED


def why_changed(records: Path, stables: Sequence[str], revision: str) -> dict[str, list[str]]:
    """By the folder of each stable that changed, why: `records` of its own, or what is `shared`. Raises GitTrouble."""
    return _reasons(stables, names_changed_since(records, revision))


def _reasons(stables: Sequence[str], names: Iterable[str]) -> dict[str, list[str]]:
    tops = {name.partition("/")[0] for name in names}
    shared = ["shared"] if tops & SHARED else []
    found = {slug: [*(["records"] if slug in tops else []), *shared] for slug in stables}
    return {slug: why for slug, why in found.items() if why}

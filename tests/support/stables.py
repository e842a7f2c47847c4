"""Stables whose horses have a finding or have it not."""

from __future__ import annotations

from datetime import date
from typing import Any

from recordgen.hoof.stable.prevalence import shares
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.records.models.stable import Stable
from tests.support.horse_records import TODAY

NOW, YEAR_AGO = "2026-11-02", "2025-11-02"


INFECTED: dict[str, Any] = {"frog": {"infection": "surface"}}


CLEAN: dict[str, Any] = {"frog": {"infection": "none"}}


def stable(*horses: HorseSummary, slug: str = "willowmere") -> StableSummary:
    """A stable of these horses."""
    return StableSummary(slug, Stable.model_validate({"name": slug.title()}), horses)


def share(finding: str, *horses: HorseSummary, day: date = TODAY) -> tuple[int, int, int]:
    """Tell how many of these horses had a finding, were looked at for it, and were seen."""
    one = shares(stable(*horses), day)[finding]
    return one.count, one.looked, one.seen

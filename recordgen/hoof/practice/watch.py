"""The open cautions of all horses, most urgent first, then those that have been open longest."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass

from recordgen.hoof.cautions.cautions import LEVELS, Caution
from recordgen.hoof.summary import HorseSummary


@dataclass(frozen=True)
class WatchEntry:
    """An open caution of a horse. days: how long it has been open; of a late trim, how late it is."""

    horse: HorseSummary
    caution: Caution
    days: int


def watch_list(horses: Iterable[HorseSummary]) -> list[WatchEntry]:
    """The open cautions of several horses, without those that another one sums up."""
    found = [_watch_entry(horse, one) for horse in horses for one in horse.cautions if not one.part_of]
    return sorted(found, key=lambda one: (LEVELS.index(one.caution.level), -one.days, one.horse.horse.name))


def _watch_entry(horse: HorseSummary, caution: Caution) -> WatchEntry:
    late = horse.due.overdue_days if horse.due and caution.rule == "overdue" else 0
    return WatchEntry(horse, caution, late or caution.days_open)

"""The order in which horses and their cautions stand on a page."""

from __future__ import annotations

from collections.abc import Iterable
from datetime import date, timedelta

from recordgen.hoof.cautions.cautions import LEVELS, Caution, ClosedCaution
from recordgen.hoof.summary import HorseSummary

# The trimmer sees so long who ended what.
ENDED_LATELY = timedelta(weeks=12)


def worst_first(horses: Iterable[HorseSummary]) -> list[tuple[HorseSummary, Caution]]:
    """The cautions of several horses, most urgent first, then by name."""
    found = [(horse, caution) for horse in horses for caution in horse.cautions]
    return sorted(found, key=lambda pair: (LEVELS.index(pair[1].level), pair[0].horse.name))


def recently_ended(horses: Iterable[HorseSummary], today: date) -> list[tuple[HorseSummary, ClosedCaution]]:
    """The cautions of several horses that ended in the last twelve weeks, the latest first, then by name."""
    found = [(horse, one) for horse in horses for one in horse.closed_cautions if today - one.ended <= ENDED_LATELY]
    return sorted(found, key=lambda pair: (-pair[1].ended.toordinal(), pair[0].horse.name))


def overdue_first(horse: HorseSummary) -> tuple[int, date, str]:
    """A key by which the longest overdue stand first, then the next to be due."""
    return (-horse.due.overdue_days if horse.due else 0, *by_due(horse))


def by_due(horse: HorseSummary) -> tuple[date, str]:
    """A key by which the next to be due stand first, then by name."""
    return (horse.due.best if horse.due else date.max, horse.horse.name)

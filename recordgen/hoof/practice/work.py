"""The work of the last months: visits, horses and days out, by month."""

from __future__ import annotations

from collections.abc import Iterable
from dataclasses import dataclass
from datetime import date

from recordgen.hoof.summary import HorseSummary

MONTHS_SHOWN = 12


@dataclass(frozen=True)
class MonthOfWork:
    """One month by its first day: how many visits to how many horses, on how many days out."""

    first: date
    visits: int
    horses: int
    days: int


def months_of_work(horses: Iterable[HorseSummary], today: date) -> list[MonthOfWork]:
    """The last twelve months, this one last; months without a visit stand with nothing.

    horses: those that have left count too, since they were work.
    """
    visits = [(horse.stable, horse.slug, day) for horse in horses for day in horse.visit_days]
    return [_month(first, visits) for first in _firsts(today)]


def _month(first: date, visits: Iterable[tuple[str, str, date]]) -> MonthOfWork:
    within = [one for one in visits if (one[2].year, one[2].month) == (first.year, first.month)]
    horses = {(stable, horse) for stable, horse, _ in within}
    return MonthOfWork(first, len(within), len(horses), len({day for *_, day in within}))


def _firsts(today: date) -> list[date]:
    """The first days of the last twelve months, oldest first."""
    months = [today.year * 12 + today.month - 1 - back for back in range(MONTHS_SHOWN)]
    return [date(month // 12, month % 12 + 1, 1) for month in reversed(months)]

"""Slow and sure: the most horses that can be met and the fewest days, by trying every choice of days."""

from __future__ import annotations

from collections.abc import Collection, Iterator, Sequence
from itertools import combinations, product

from recordgen.hoof.rounds.fewest_days import Span


def met_on(days: Collection[int], spans: Sequence[Span], most: int) -> int:
    """Tell how many horses can be met on just these days.

    Horse by horse; one that finds no room makes another go elsewhere, and that one another, if it can.
    From memory, not read: Berge 1957, Proc. Natl Acad. Sci. 43:842-844 (a matching is the largest if none augments it).
    """
    going: dict[int, list[int]] = {day: [] for day in days}

    def goes(horse: int, asked: set[int]) -> bool:
        for day, met in going.items():
            if day in asked or not spans[horse].first <= day <= spans[horse].last:
                continue
            asked.add(day)
            away = next((other for other in met if goes(other, asked)), None)
            if len(met) < most or away is not None:
                going[day] = [other for other in met if other != away] + [horse]
                return True
        return False

    return sum(goes(horse, set()) for horse in range(len(spans)))


def choices(days: int) -> Iterator[tuple[int, ...]]:
    """Every choice of so many days, those of few days first."""
    for count in range(days + 1):
        yield from combinations(range(days), count)


def least_days(spans: Sequence[Span], days: int, most: int) -> int:
    """The fewest of so many days on which all can be met."""
    return next(len(chosen) for chosen in choices(days) if met_on(chosen, spans, most) == len(spans))


def least_shared(places: Sequence[Sequence[Span]], days: int, most: int) -> tuple[int, int]:
    """Of every way to give each day to one place or none: the least number of horses not met, then of days."""
    unmet = [{chosen: len(spans) - met_on(chosen, spans, most) for chosen in choices(days)} for spans in places]
    ways = product(range(len(places) + 1), repeat=days)
    return min(_counts(unmet, owners) for owners in ways)


def _counts(unmet: Sequence[dict[tuple[int, ...], int]], owners: Sequence[int]) -> tuple[int, int]:
    chosen = [tuple(day for day, owner in enumerate(owners) if owner == place) for place in range(len(unmet))]
    return sum(unmet[place][days] for place, days in enumerate(chosen)), sum(map(len, chosen))

"""The days of one place: its horses inside their windows, and a day near them for those that cannot be met.

Days are ordinals here, as `date.toordinal` counts them.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right
from collections.abc import Iterable, Mapping, Sequence
from dataclasses import dataclass, replace
from heapq import merge
from typing import NamedTuple

from recordgen.hoof.rounds.fewest_days import Span, all_met, fewest_days, most_met

_MOST_SHIFTS = 6  # how many other days are tried for a day; it bounds the time alone


class Window(NamedTuple):
    """The first and the last day on which a horse may be visited."""

    first: int
    last: int


class Demand(NamedTuple):
    """One horse's demand: its window, and the best day of it."""

    window: Window
    best: int


@dataclass(frozen=True)
class PlaceDays:
    """The fewest days of one place, in order, and the windows that its horses were given, by their numbers.

    unmet: how many were not given the window they asked for. waiting: those of them that have none at all, in order.
    """

    days: tuple[int, ...]
    windows: dict[int, Window]
    unmet: int
    waiting: tuple[int, ...]


def place_days(asked: Sequence[Demand], days: Sequence[int], most: int, soon: Window) -> PlaceDays:
    """The fewest of these days on which the horses of one place can be visited.

    days: those that are free, in order. most: horses a day. As many horses as possible are given the windows they asked
    for. Of the others, those whose windows were over before `soon` begins are given `soon` as long as there is room;
    the rest are left waiting.
    """
    met = most_met(spans_on(days, [one.window for one in asked]), most)
    given = _AcceptedWindows({horse: asked[horse].window for horse in sorted(met)}, days, most)
    left = [horse for _, horse in sorted((one.best, horse) for horse, one in enumerate(asked) if horse not in met)]
    waiting = [horse for horse in left if asked[horse].window.last >= soon.first or not given.add(horse, soon)]
    return given.plan(len(left), waiting)


def with_waiting(plan: PlaceDays, asked: Sequence[Demand], days: Sequence[int], most: int) -> PlaceDays:
    """The plan with each horse that waits on the day nearest to its best that has room, if there is one.

    days: those that are free and the plan's own, in order; the windows that the plan gave are kept.
    """
    given = _AcceptedWindows(dict(plan.windows), days, most)
    waiting = [horse for horse in plan.waiting if not given.add_nearest(horse, asked[horse].best)]
    return given.plan(plan.unmet, waiting)


def avoid_wanted_days(plan: PlaceDays, days: Sequence[int], most: int, wanted: Mapping[int, int]) -> PlaceDays:
    """The plan on days that fewer horses want, where its windows allow, so that other places find more room.

    days: those that are free and suit the place. wanted: how many horses of all places each of them would suit.
    """
    chosen = list(plan.days)
    for number, day in enumerate(plan.days):
        less = [other for other in days if wanted[other] < wanted[day] and other not in chosen]
        for other in sorted(less, key=lambda other: (wanted[other], -other))[:_MOST_SHIFTS]:
            shifted = [*chosen[:number], other, *chosen[number + 1 :]]
            if all_met(spans_on(sorted(shifted), plan.windows.values()), most):
                chosen = shifted
                break
    return replace(plan, days=tuple(sorted(chosen)))


def spans_on(days: Sequence[int], windows: Iterable[Window]) -> list[Span]:
    """The windows as numbers of the days they hold."""
    return [Span(bisect_left(days, first), bisect_right(days, last) - 1) for first, last in windows]


class _AcceptedWindows:
    """The windows given so far, all of which can be kept."""

    def __init__(self, windows: dict[int, Window], days: Sequence[int], most: int) -> None:
        self.windows = windows
        self.days = days
        self.most = most
        self.spans = spans_on(days, windows.values())
        self.full: set[Span] = set()

    def add(self, horse: int, window: Window) -> bool:
        """Gives a horse a window if all can still be kept; whether that is so."""
        (span,) = spans_on(self.days, [window])
        if span in self.full:
            return False
        if not all_met([*self.spans, span], self.most):
            self.full.add(span)
            return False
        self.windows[horse] = window
        self.spans.append(span)
        return True

    def add_nearest(self, horse: int, best: int) -> bool:
        """Gives a horse the day nearest to its best on which all can still be kept; whether there is one."""
        after = bisect_left(self.days, best)
        nearest = merge(self.days[:after][::-1], self.days[after:], key=lambda day: (abs(day - best), day))
        return any(self.add(horse, Window(day, day)) for day in nearest)

    def plan(self, unmet: int, waiting: Sequence[int]) -> PlaceDays:
        """The fewest days that keep all windows."""
        chosen = fewest_days(self.spans, self.most)
        return PlaceDays(tuple(self.days[number] for number in chosen), self.windows, unmet, tuple(waiting))

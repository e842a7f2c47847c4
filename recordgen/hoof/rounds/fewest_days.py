"""The fewest days on which the horses of one place can be visited, when a day holds so many of them.

Days are numbered here: a span names the first and the last of the place's free days that suit a horse.
"""

from __future__ import annotations

import heapq
from collections import defaultdict
from collections.abc import Sequence
from typing import NamedTuple


class Span(NamedTuple):
    """The numbers of the first and the last day that suit a horse; the last before the first where none does."""

    first: int
    last: int


def most_met(spans: Sequence[Span], most: int) -> dict[int, int]:
    """As many horses as can be visited inside their spans: the number of the day of each, by its place in `spans`.

    most: horses a day. Day by day, those go first whose spans end first; no other way meets more horses.
    Source: Glover 1967, Nav. Res. Logist. Q. 14(3):313-316 (abstract read); held against all ways in the tests.
    """
    coming = sorted(((span.first, span.last, horse) for horse, span in enumerate(spans)), reverse=True)
    waiting: list[tuple[int, int]] = []
    met: dict[int, int] = {}
    day = 0
    while coming or waiting:
        if not waiting:
            day = max(day, coming[-1][0])
        while coming and coming[-1][0] <= day:
            _, last, horse = coming.pop()
            heapq.heappush(waiting, (last, horse))
        met.update(dict.fromkeys(_first_to_end(waiting, day, most), day))
        day += 1
    return met


def _first_to_end(waiting: list[tuple[int, int]], day: int, most: int) -> list[int]:
    """Takes the horses of one day from those that wait; those whose spans are over are taken away too."""
    going: list[int] = []
    while waiting and len(going) < most:
        last, horse = heapq.heappop(waiting)
        if last >= day:
            going.append(horse)
    return going


def all_met(spans: Sequence[Span], most: int) -> bool:
    """Tell whether every horse can be visited inside its span."""
    return len(most_met(spans, most)) == len(spans)


def fewest_days(spans: Sequence[Span], most: int) -> list[int]:
    """The numbers of the fewest days on which all horses can be visited inside their spans, in order.

    most: horses a day. Nobody goes out before some horse can wait no longer; then the day is filled.
    Raises ValueError where not all horses can be met.
    Source: Chang, Gabow & Khuller 2014, Algorithmica 70(3):368-405 (abstract read; the steps from memory, not read);
    held against all choices of days in the tests.
    """
    if not all_met(spans, most):
        raise ValueError("not every horse can be visited inside its span")
    last = _last_days(spans, most)
    waiting = sorted(range(len(spans)), key=lambda horse: (last[horse], horse))
    chosen: list[int] = []
    while waiting:
        day = last[waiting[0]]
        ready = [horse for horse in waiting if spans[horse].first <= day]
        going = set(ready[:most])
        waiting = [horse for horse in waiting if horse not in going]
        chosen.append(day)
    return chosen


def _last_days(spans: Sequence[Span], most: int) -> list[int]:
    """The day that each horse can wait for: of more than a day holds, those that were ready first go a day sooner."""
    last = [span.last for span in spans]
    ending = defaultdict(list)
    for horse, day in enumerate(last):
        ending[day].append(horse)
    for day in range(max(last, default=-1), 0, -1):
        by_first = sorted(ending[day], key=lambda horse: (-spans[horse].first, horse))
        for horse in by_first[most:]:
            last[horse] = day - 1
            ending[day - 1].append(horse)
    return last

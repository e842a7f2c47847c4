"""The second wish: with no more days than before, horses are visited nearer to their best days.

Days are ordinals here, as `date.toordinal` counts them.
"""

from __future__ import annotations

from bisect import bisect_left, bisect_right, insort
from collections.abc import Sequence

from recordgen.hoof.rounds.fewest_days import most_met
from recordgen.hoof.rounds.one_place import Demand, PlaceDays, spans_on


class PlaceRounds:
    """The rounds of one place while they are drawn nearer: the horses of each day, by their numbers."""

    def __init__(self, asked: Sequence[Demand], plan: PlaceDays, most: int) -> None:
        self.best = [one.best for one in asked]
        self.windows = plan.windows
        self.most = most
        self.horses: dict[int, list[int]] = {day: [] for day in plan.days}
        numbers = list(plan.windows)
        met = most_met(spans_on(plan.days, plan.windows.values()), most)
        for place, day in met.items():
            self.horses[plan.days[day]].append(numbers[place])

    @property
    def distance(self) -> int:
        """The sum of the days between each horse's visit and its best day."""
        return sum(self._away(horses, day) for day, horses in self.horses.items())

    def shift(self, free: list[int]) -> bool:
        """Moves each day with all its horses to the free day that suits them best, of equals the earlier.

        free: the days that nobody has, in order; kept up to date. Tells whether a day was moved.
        """
        moved = False
        for day, horses in sorted(self.horses.items()):
            _, better = min((self._away(horses, other), other) for other in (day, *self._suiting(horses, free)))
            if better != day:
                self.horses[better] = self.horses.pop(day)
                free.remove(better)
                insort(free, day)
                moved = True
        return moved

    def regroup(self, free: list[int]) -> bool:
        """Moves horses to a nearer day of these that has room, or lets two change places; whether one moved."""
        going = [(horse, day) for day, horses in sorted(self.horses.items()) for horse in sorted(horses)]
        moved = [self._move_nearer(horse, day) for horse, day in going if horse in self.horses[day]]
        for day in [day for day, horses in self.horses.items() if not horses]:
            del self.horses[day]
            insort(free, day)
        return any(moved)

    def _away(self, horses: Sequence[int], day: int) -> int:
        return sum(abs(day - self.best[horse]) for horse in horses)

    def _suiting(self, horses: Sequence[int], free: list[int]) -> list[int]:
        first = max(self.windows[horse].first for horse in horses)
        last = min(self.windows[horse].last for horse in horses)
        return free[bisect_left(free, first) : bisect_right(free, last)]

    def _suits(self, horse: int, day: int) -> bool:
        return self.windows[horse].first <= day <= self.windows[horse].last

    def _move_nearer(self, horse: int, day: int) -> bool:
        here = self._away([horse], day)
        nearer = sorted((self._away([horse], other), other) for other in self.horses if self._suits(horse, other))
        for away, other in nearer:
            if away < here and (len(self.horses[other]) < self.most or self._make_room(other, day, here - away)):
                self.horses[day].remove(horse)
                self.horses[other].append(horse)
                return True
        return False

    def _make_room(self, day: int, other: int, allowed: int) -> bool:
        """Moves a horse from a full day to another if that takes it away from its best by less than allowed."""
        for horse in sorted(self.horses[day]):
            farther = self._away([horse], other) - self._away([horse], day)
            if farther < allowed and self._suits(horse, other):
                self.horses[day].remove(horse)
                self.horses[other].append(horse)
                return True
        return False


def draw_nearer(places: Sequence[PlaceRounds], days: Sequence[int]) -> None:
    """Shifts days and regroups horses, in place, as long as the sum of the distances falls; every horse stays met.

    days: all days on which somebody can go out, in order. The sum is made smaller, not proven to be the least.
    """
    taken = {day for place in places for day in place.horses}
    free = [day for day in days if day not in taken]
    moved = True
    while moved:
        moved = False
        for place in places:
            shifted, regrouped = place.shift(free), place.regroup(free)
            moved = moved or shifted or regrouped

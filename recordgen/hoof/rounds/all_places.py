"""Several places share one calendar: which days each of them gets, one place a day.

Places are planned one after another, each on the days that those before it left free. Which goes first decides how
well it turns out, so several orders are tried; then places that came off badly may have days of others. Days are
ordinals here, as `date.toordinal` counts them.
"""

from __future__ import annotations

from collections import Counter
from collections.abc import Iterable, Iterator, Sequence
from dataclasses import dataclass
from functools import cached_property
from itertools import islice

from recordgen.hoof.rounds.fewest_days import fewest_days
from recordgen.hoof.rounds.improve import PlaceRounds, draw_nearer
from recordgen.hoof.rounds.one_place import (
    Demand,
    PlaceDays,
    Window,
    avoid_wanted_days,
    place_days,
    spans_on,
    with_waiting,
)

_MOST_CLAIMS = 1000  # how many days of others are asked for; it bounds the time alone


@dataclass(frozen=True)
class SharedCalendar:
    """The calendar and what is asked of it.

    places: what the horses of each place ask for. days: all on which somebody can go out, in order. most: horses a day,
    one or more. soon: when horses are visited whose windows were over before it.
    """

    places: Sequence[Sequence[Demand]]
    days: Sequence[int]
    most: int
    soon: Window

    def rounds(self) -> list[PlaceRounds]:
        """The rounds of each place: of those tried, the ones that meet most horses, then have the fewest days.

        Where several do, those with the horses nearest to their best days. With one place the days are the fewest there
        can be; with more, `fewest` tells how far from that they may be.
        """
        tried = {tuple(plan.days for plan in plans): plans for plans in self._try_orders()}
        best = min(_score(plans) for plans in tried.values())
        drawn = [self._draw_rounds(plans) for plans in tried.values() if _score(plans) == best]
        return min(drawn, key=lambda rounds: (_days(rounds), sum(place.distance for place in rounds)))

    def fewest(self, rounds: Sequence[PlaceRounds]) -> int:
        """The days it would take to keep the same windows if each place had the calendar to itself."""
        spans = [spans_on(self.days, place.windows.values()) for place in rounds]
        return sum(len(fewest_days(one, self.most)) for one in spans)

    @cached_property
    def suiting(self) -> list[list[int]]:
        """For each place the days that suit at least one of its horses, in order."""
        spans = [spans_on(self.days, [one.window for one in asked]) for asked in self.places]
        numbers = [sorted({day for first, last in place for day in range(first, last + 1)}) for place in spans]
        return [[self.days[number] for number in place] for place in numbers]

    @cached_property
    def wanted(self) -> Counter[int]:
        """Tell how many horses of all places each day suits."""
        spans = [span for asked in self.places for span in spans_on(self.days, [one.window for one in asked])]
        return Counter(self.days[number] for first, last in spans for number in range(first, last + 1))

    def _try_orders(self) -> list[list[PlaceDays]]:
        alone = [place_days(asked, self.days, self.most, self.soon) for asked in self.places]
        in_orders = [self._in_order(order) for order in self._orders(alone)]
        return [*in_orders, self._trade_days(min(in_orders, key=_score), alone)]

    def _orders(self, alone: Sequence[PlaceDays]) -> list[list[int]]:
        """Fewest days to spare first, earliest last day first, most horses first, and as they stand."""
        numbers = range(len(self.places))
        last = [min(one.window.last for one in asked) for asked in self.places]
        spare = [len(suiting) - len(plan.days) for suiting, plan in zip(self.suiting, alone, strict=True)]
        by = (spare.__getitem__, last.__getitem__, lambda place: -len(self.places[place]), lambda place: place)
        return [sorted(numbers, key=key) for key in by]

    def _in_order(self, order: Sequence[int]) -> list[PlaceDays]:
        found: dict[int, PlaceDays] = {}
        for place in order:
            found[place] = self._plan_place(place, found.values())
        return [found[place] for place in range(len(self.places))]

    def _plan_place(self, place: int, others: Iterable[PlaceDays], barred: Iterable[int] = ()) -> PlaceDays:
        free = self._free(others, barred)
        plan = place_days(self.places[place], free, self.most, self.soon)
        suiting = sorted(set(free).intersection(self.suiting[place]))
        return avoid_wanted_days(plan, suiting, self.most, self.wanted)

    def _free(self, others: Iterable[PlaceDays], barred: Iterable[int] = ()) -> list[int]:
        taken = {day for plan in others for day in plan.days}.union(barred)
        return [day for day in self.days if day not in taken]

    def _trade_days(self, plans: Sequence[PlaceDays], alone: Sequence[PlaceDays]) -> list[PlaceDays]:
        """The plans after each place that came off badly had a day of another, where the two are better off so."""
        better = list(plans)
        for place, day in islice(self._claims(better, alone), _MOST_CLAIMS):
            owner = next((other for other, plan in enumerate(better) if day in plan.days), place)
            if owner != place:
                self._take_day(day, owner, place, better)
        return better

    def _claims(self, plans: Sequence[PlaceDays], alone: Sequence[PlaceDays]) -> Iterator[tuple[int, int]]:
        """Each place that came off worse than alone with each day that suits it, over again while `plans` improve."""
        score = None
        while score != _score(plans):
            score = _score(plans)
            for place in range(len(plans)):
                if _worse(plans[place], alone[place]):
                    yield from ((place, day) for day in self.suiting[place])

    def _take_day(self, day: int, owner: int, place: int, plans: list[PlaceDays]) -> None:
        others = [plan for number, plan in enumerate(plans) if number not in (owner, place)]
        ours = self._plan_place(place, others, barred=set(plans[owner].days) - {day})
        if _score([ours]) < _score([plans[place]]):
            theirs = self._plan_place(owner, [*others, ours])
            if _score([ours, theirs]) < _score([plans[place], plans[owner]]):
                plans[place], plans[owner] = ours, theirs

    def _draw_rounds(self, plans: Sequence[PlaceDays]) -> list[PlaceRounds]:
        whole = list(plans)
        waiting = [place for place, plan in enumerate(plans) if plan.waiting]
        for place in sorted(waiting, key=lambda place: self.places[place][plans[place].waiting[0]].best):
            others = [plan for number, plan in enumerate(whole) if number != place]
            whole[place] = with_waiting(whole[place], self.places[place], self._free(others), self.most)
        rounds = [PlaceRounds(asked, plan, self.most) for asked, plan in zip(self.places, whole, strict=True)]
        draw_nearer(rounds, self.days)
        return rounds


def _score(plans: Sequence[PlaceDays]) -> tuple[int, int, int]:
    """Tell how bad it is: horses not met, those of them that still wait, days."""
    unmet = sum(plan.unmet for plan in plans)
    return unmet, sum(len(plan.waiting) for plan in plans), sum(len(plan.days) for plan in plans)


def _worse(plan: PlaceDays, other: PlaceDays) -> bool:
    return _score([plan]) > _score([other])


def _days(rounds: Sequence[PlaceRounds]) -> int:
    return sum(len(place.horses) for place in rounds)

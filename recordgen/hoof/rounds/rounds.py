"""The fewest rounds: on which day to go to which stables, so that each horse is visited inside its window."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from datetime import date
from itertools import islice
from typing import Literal, get_args

from recordgen.hoof.context import Context
from recordgen.hoof.naming import Naming
from recordgen.hoof.rounds.all_places import SharedCalendar
from recordgen.hoof.rounds.improve import PlaceRounds
from recordgen.hoof.rounds.one_place import Demand, Window
from recordgen.hoof.summary import HorseSummary, StableSummary
from recordgen.public_holidays import PublicHolidays
from recordgen.records.models.fields import DaySpan
from recordgen.records.models.settings import Weekday

Why = Literal["overdue", "no working day", "no room"]

WEEKDAYS: tuple[Weekday, ...] = get_args(Weekday)

_FARTHEST_DAYS = 3653  # the calendar is looked through for so long after the last window


@dataclass(frozen=True)
class Wish:
    """The window of one horse's next visit: its stable and itself by their folders, and its name."""

    stable: str
    horse: str
    name: str
    earliest: date
    best: date
    latest: date


@dataclass(frozen=True)
class Round:
    """One day: the stables visited on it, sorted, and the horses, by stable and name."""

    day: date
    stables: tuple[str, ...]
    wishes: tuple[Wish, ...]


@dataclass(frozen=True)
class Unmet:
    """A horse that is not visited inside its window: why, and the day on which it is visited, if there is one."""

    wish: Wish
    why: Why
    placed: date | None


@dataclass(frozen=True)
class Plan:
    """The rounds by day, the horses whose windows are not met, and the days that no such plan can do without.

    fewest: the days it would take if each place had the calendar to itself. The horses that are not met are counted
    with the windows they were given instead.
    """

    rounds: tuple[Round, ...]
    unmet: tuple[Unmet, ...]
    fewest: int

    @property
    def gap(self) -> int:
        """The days above `fewest`; where it is 0, no plan that does the same for each horse has fewer days."""
        return len(self.rounds) - self.fewest


@dataclass(frozen=True)
class Calendar:
    """The days on which somebody can go out, and how much a day holds.

    weekdays: of work, such as mon. skipped: more days without rounds. start: the first day that may have one.
    horses_a_day: one or more. leeway_days: how long after the start horses may wait whose windows were over before it.
    public: the public holidays that are kept.
    """

    weekdays: tuple[str, ...]
    holidays: tuple[DaySpan, ...]
    skipped: frozenset[date]
    start: date
    horses_a_day: int
    leeway_days: int
    public: PublicHolidays | None = None

    @classmethod
    def of(cls, ways: Context, start: date, skipped: Iterable[date] = ()) -> Calendar:
        """The calendar of a practice from a day on."""
        practice = ways.practice
        return cls(
            weekdays=practice.working_days,
            holidays=practice.holidays,
            skipped=frozenset(skipped),
            start=start,
            horses_a_day=practice.horses_a_day,
            leeway_days=practice.leeway_days,
            public=None if practice.work_on_public_holidays else ways.public,
        )

    def days(self, until: date, more: int = 0) -> list[date]:
        """The days for rounds from the start until a day, that one included, and so many more days after it."""
        end = max(until, self.start).toordinal()
        found = list(self._working_days(self.start.toordinal(), end))
        return found + list(islice(self._working_days(end + 1, end + _FARTHEST_DAYS), more))

    def _working_days(self, first: int, last: int) -> Iterator[date]:
        for ordinal in range(first, min(last, date.max.toordinal()) + 1):
            day = date.fromordinal(ordinal)
            if WEEKDAYS[day.weekday()] in self.weekdays and day not in self.skipped and not self._is_off(day):
                yield day

    def _is_off(self, day: date) -> bool:
        if any(span.first <= day <= span.last for span in self.holidays):
            return True
        return self.public is not None and self.public.name(day) is not None


def wishes_of(horses: Iterable[HorseSummary]) -> list[Wish]:
    """The wishes of the horses that have a next visit; none of those that left, were never visited or are held back."""
    return [
        Wish(horse.stable, horse.slug, horse.horse.name, horse.due.earliest, horse.due.best, horse.due.latest)
        for horse in horses
        if horse.due and not horse.held
    ]


def plan_rounds(wishes: Sequence[Wish], near: Mapping[str, Sequence[str]], calendar: Calendar) -> Plan:
    """The rounds that visit horses inside their windows: as many as can be, in as few days as can be.

    near: for each stable of the practice those that can be visited on the same day, by their folders. It holds both
    ways, and from neighbour to neighbour; names of no stable are passed over.

    A day belongs to one place: a stable, or stables near each other. For one place no plan meets more horses, and none
    that meets these has fewer days. Where several share the calendar, it is a good plan that may not be the best;
    `Plan.gap` tells how many days fewer might do. A horse that cannot be met is visited all the same: one whose window
    was over before the start within the leeway after it where there is room, others on the nearest day with room to
    their best. Then days and horses are shifted towards the best days; that sum is made smaller, not proven the least.
    """
    if not wishes:
        return Plan((), (), 0)
    places = _places(wishes, near)
    start = calendar.start.toordinal()
    days = calendar.days(max(wish.latest for wish in wishes), more=len(wishes))
    shared = SharedCalendar(
        places=[[_day_numbers(wish) for wish in place] for place in places],
        days=[day.toordinal() for day in days],
        most=calendar.horses_a_day,
        soon=Window(start, start + calendar.leeway_days),
    )
    rounds = shared.rounds()
    going = [one for place, horses in zip(places, rounds, strict=True) for one in _going(place, horses)]
    placed = {wish: one.day for one in going for wish in one.wishes}
    unmet = [_unmet(wish, placed.get(wish), days, calendar.start) for place in places for wish in place]
    return Plan(
        rounds=tuple(sorted(going, key=lambda one: one.day)),
        unmet=tuple(sorted((one for one in unmet if one), key=lambda one: _by_name(one.wish))),
        fewest=shared.fewest(rounds),
    )


def plan_of(stables: Sequence[StableSummary], calendar: Calendar) -> Plan:
    """The rounds for the next visits of all horses of some stables that have not left and may be trimmed."""
    near = {one.slug: one.stable.near for one in stables}
    return plan_rounds(wishes_of(horse for one in stables for horse in one.present), near, calendar)


def _places(wishes: Sequence[Wish], near: Mapping[str, Sequence[str]]) -> list[list[Wish]]:
    """The wishes of each place: of a stable, or of stables that are near each other."""
    joined = {stable: {stable} for stable in sorted({*near, *(wish.stable for wish in wishes)})}
    for stable in sorted(near):
        for other in near[stable]:
            together = joined[stable] | joined.get(other, set())
            joined.update(dict.fromkeys(together, together))
    places: dict[str, list[Wish]] = {}
    for wish in sorted(wishes, key=_by_name):
        places.setdefault(min(joined[wish.stable]), []).append(wish)
    return [places[name] for name in sorted(places)]


def _day_numbers(wish: Wish) -> Demand:
    return Demand(Window(wish.earliest.toordinal(), wish.latest.toordinal()), wish.best.toordinal())


def _going(place: Sequence[Wish], rounds: PlaceRounds) -> Iterator[Round]:
    for day, horses in rounds.horses.items():
        wishes = tuple(sorted((place[horse] for horse in horses), key=_by_name))
        yield Round(date.fromordinal(day), tuple(sorted({wish.stable for wish in wishes})), wishes)


def _unmet(wish: Wish, placed: date | None, days: Sequence[date], start: date) -> Unmet | None:
    if placed and wish.earliest <= placed <= wish.latest:
        return None
    if wish.latest < start:
        return Unmet(wish, "overdue", placed)
    held = any(wish.earliest <= day <= wish.latest for day in days)
    return Unmet(wish, "no room" if held else "no working day", placed)


def _by_name(wish: Wish) -> tuple[str, str, str]:
    return wish.stable, wish.name, wish.horse


def describe_plan(plan: Plan, naming: Naming) -> str:
    """Tell how many days a plan takes, and whether fewer would do; a sentence without its full stop."""
    days = naming.days(len(plan.rounds))
    if not plan.rounds:
        return naming.phrase("rounds_none")
    if plan.gap:
        return naming.phrase("rounds_more", days=days, more=naming.days(plan.gap))
    return naming.phrase("rounds_unmet_fewest" if plan.unmet else "rounds_fewest", days=days)


def explain_held(horse: HorseSummary, naming: Naming) -> str:
    """Tell why nothing is trimmed of a horse until the vet agrees; sentences."""
    seen = " ".join(dict.fromkeys(caution.seen for caution in horse.held))
    return naming.phrase("rounds_no_trim_why", seen=seen)


def explain_unmet(one: Unmet, naming: Naming) -> str:
    """Tell why a horse is not visited inside its window, and when it is; a sentence without its full stop."""
    earliest, latest = naming.day(one.wish.earliest), naming.day(one.wish.latest)
    window = latest if earliest == latest else naming.phrase("rounds_window", earliest=earliest, latest=latest)
    why = naming.phrase(f"rounds_{one.why.replace(' ', '_')}", window=window, latest=latest)
    placed = naming.phrase("rounds_placed", day=naming.language.weekday_day(one.placed)) if one.placed else None
    return f"{why}; {placed or naming.phrase('rounds_unplaced')}"

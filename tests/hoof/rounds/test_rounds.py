"""The fewest rounds: days, places, capacity, and who cannot be met."""

from __future__ import annotations

from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

import pytest

from recordgen.hoof.rounds.improve import PlaceRounds, draw_nearer
from recordgen.hoof.rounds.one_place import Demand, PlaceDays, Window
from recordgen.hoof.rounds.rounds import Calendar, Plan, Wish, describe_plan, plan_rounds, wishes_of
from recordgen.records.models.fields import DaySpan
from tests.support.horse_records import NAMING, TODAY, summary, visit, ways
from tests.support.planned_practices import WORKING_DAYS, calendar, day, days_of, plan, unmet, wish


def test_horses_whose_windows_meet_share_a_day() -> None:
    """Two windows with days in common are one round; the third horse needs its own."""
    found = plan(wish("Otter", 0, 10), wish("Moss", 8, 20), wish("Pip", 15, 25))

    assert len(found.rounds) == 2
    assert (found.fewest, found.gap, found.unmet) == (2, 0, ())


def test_a_day_holds_no_more_horses_than_the_practice_takes() -> None:
    """Five horses of the same window, two a day: three days."""
    found = plan(*(wish(name, 0, 9) for name in ("Ash", "Elm", "Fir", "Oak", "Yew")), horses_a_day=2)

    assert sorted(len(one.wishes) for one in found.rounds) == [1, 2, 2]
    assert found.gap == 0


def test_with_as_many_days_horses_are_visited_near_their_best() -> None:
    """One day for all is the middle one of their best days."""
    found = plan(wish("Ash", 0, 20, 6), wish("Elm", 0, 20, 8), wish("Oak", 0, 20, 13))

    assert days_of(found) == {8: "Ash Elm Oak"}


def test_a_horse_goes_with_the_day_that_is_nearer_to_its_best() -> None:
    """Two days are needed, and Elm could go on either; of days that are as good the earlier is taken."""
    found = plan(wish("Ash", 0, 5, 3), wish("Elm", 3, 14, 11), wish("Oak", 8, 14, 12))

    assert days_of(found) == {3: "Ash", 11: "Elm Oak"}


def test_two_horses_change_places_where_their_days_are_full() -> None:
    """Neither day has room, and each horse still ends on the nearer one."""
    horses = wish("Ash", 0, 12, 10), wish("Elm", 0, 20, 2), wish("Fir", 0, 9, 2), wish("Oak", 6, 20, 10)
    found = plan(*horses, horses_a_day=2)

    assert days_of(found) == {2: "Elm Fir", 10: "Ash Oak"}


@pytest.mark.parametrize(
    ("values", "expected"),
    [
        ({}, 5),
        ({"weekdays": WORKING_DAYS}, 4),
        ({"weekdays": ("mon",)}, 7),
        ({"holidays": (DaySpan(day(4), day(5)),)}, 6),
        ({"holidays": (DaySpan(day(3), day(6)),), "skipped": frozenset({day(2), day(7)})}, 8),
        ({"start": day(6)}, 6),
    ],
)
def test_rounds_are_on_days_of_work(values: dict[str, Any], expected: int) -> None:
    """Weekdays of work, no holiday, no day that is skipped, none before the start: the nearest one that is left."""
    assert days_of(plan(wish("Otter", 1, 9, 5), **values)) == {expected: "Otter"}


@pytest.mark.parametrize(("work", "expected"), [("no", date(2026, 4, 2)), ("yes", date(2026, 4, 3))])
def test_rounds_avoid_public_holidays_unless_the_practice_works_on_them(work: str, expected: date) -> None:
    """Good Friday 2026 was 3 April (gov.uk, bank holidays: From memory, not read)."""
    chosen = ways(country="GB", work_on_public_holidays=work)
    good_friday = Wish("mill", "otter", "Otter", date(2026, 4, 2), date(2026, 4, 3), date(2026, 4, 3))

    found = plan_rounds([good_friday], {}, Calendar.of(chosen, date(2026, 4, 1)))

    assert [one.day for one in found.rounds] == [expected]


def test_a_window_that_has_begun_goes_on_from_the_start() -> None:
    """The horse is met though its window began, and its best day was, before the plan does."""
    found = plan(wish("Otter", -10, 2, -4))

    assert (days_of(found), found.unmet) == ({0: "Otter"}, ())


def test_a_day_belongs_to_one_stable() -> None:
    """Two stables with the same window are two days."""
    found = plan(wish("Otter", 0, 6, stable="mill"), wish("Moss", 0, 6, stable="barn"))

    assert [one.stables for one in found.rounds] in ([("mill",), ("barn",)], [("barn",), ("mill",)])
    assert (len({one.day for one in found.rounds}), found.fewest) == (2, 2)


@pytest.mark.parametrize(
    ("near", "expected"),
    [
        ({"mill": ["barn"]}, [("barn", "mill"), ("yard",)]),
        ({"barn": ["mill"]}, [("barn", "mill"), ("yard",)]),
        ({"mill": ["barn"], "yard": ["barn"]}, [("barn", "mill", "yard")]),
        ({"mill": ["hill"], "hill": ["yard"]}, [("barn",), ("mill", "yard")]),
        ({"mill": ["nowhere"], "yard": ["nowhere"]}, [("barn",), ("mill",), ("yard",)]),
    ],
)
def test_stables_near_each_other_share_a_day(near: dict[str, Sequence[str]], expected: list[tuple[str, ...]]) -> None:
    """Both ways, and from neighbour to neighbour, a stable without horses included; not by a name of no stable."""
    horses = [wish("Moss", 0, 6, stable=stable) for stable in ("mill", "barn", "yard")]

    assert sorted(one.stables for one in plan(*horses, near=near).rounds) == expected


def test_the_place_with_fewer_days_to_choose_from_comes_first() -> None:
    """The mill could go on either day, the barn on one alone."""
    found = plan(wish("Ash", 3, 4, 3, stable="barn"), wish("Elm", 3, 3, stable="mill"), skipped=frozenset({day(5)}))

    assert ({one.day: one.stables for one in found.rounds}, found.unmet) == ({day(3): ("mill",), day(4): ("barn",)}, ())


def test_a_plan_says_how_many_days_it_is_above_the_least_of_each_place() -> None:
    """Both places would want the middle day, and one of them goes on the days around it."""
    horses = wish("Ash", 1, 1, stable="barn"), wish("Elm", 0, 1, 0), wish("Oak", 1, 2, 2)
    found = plan(*horses)

    assert days_of(found) == {0: "Elm", 1: "Ash", 2: "Oak"}
    assert (found.fewest, found.gap) == (2, 1)
    assert describe_plan(found, NAMING).startswith("3 days, 1 day more than if each place")


def test_an_overdue_horse_is_visited_as_soon_as_a_round_there_allows() -> None:
    """Within the leeway it waits for the others of its stable; alone it goes on the first day."""
    late = wish("Rowan", -20, -5)

    assert days_of(plan(late)) == {0: "Rowan"}
    assert days_of(plan(late, wish("Otter", 4, 12, 9))) == {4: "Otter Rowan"}
    assert days_of(plan(late, wish("Otter", 8, 12, 9))) == {0: "Rowan", 9: "Otter"}
    assert unmet(plan(late)) == [("Rowan", "overdue", 0)]


def test_an_overdue_horse_takes_no_day_from_one_that_can_be_met() -> None:
    """One horse a day: it goes on the first day after those that have no other."""
    horses = [wish(f"Elm{number}", number, number) for number in range(8)]
    found = plan(wish("Rowan", -20, -5), *horses, horses_a_day=1)

    assert unmet(found) == [("Rowan", "overdue", 8)]


def test_overdue_horses_of_one_place_leave_the_day_to_a_horse_of_another() -> None:
    """Two of the barn should be seen on the first day, which is the only one for the mill's."""
    horses = wish("Ash", 0, 0), wish("Rowan", -9, -5, stable="barn"), wish("Yew", -9, -5, stable="barn")
    found = plan(*horses, leeway_days=0)

    assert days_of(found) == {0: "Ash", 1: "Rowan Yew"}


def test_a_horse_whose_window_holds_no_working_day_goes_on_the_nearest() -> None:
    """Before or after, whichever is nearer to its best day; before where both are alike."""
    away = (DaySpan(day(10), day(20)),)

    assert unmet(plan(wish("Ash", 11, 19, 12), holidays=away)) == [("Ash", "no working day", 9)]
    assert unmet(plan(wish("Ash", 11, 19, 18), holidays=away)) == [("Ash", "no working day", 21)]
    assert unmet(plan(wish("Ash", 11, 19, 15), holidays=away)) == [("Ash", "no working day", 9)]


def test_a_horse_for_which_there_is_no_room_goes_on_the_nearest_day_with_room() -> None:
    """Three horses want one day that holds two."""
    found = plan(*(wish(name, 5, 5) for name in ("Ash", "Elm", "Oak")), horses_a_day=2)

    assert (sorted(days_of(found)), found.gap) == ([4, 5], 0)
    assert [one[1:] for one in unmet(found)] == [("no room", 4)]


def test_a_window_that_ends_at_the_start_is_not_over() -> None:
    """Without room that day the horse is not overdue, and goes on the next day rather than with others later."""
    found = plan(*(wish(name, -5, 0) for name in ("Ash", "Elm", "Oak")), wish("Pip", 5, 9), horses_a_day=2)

    assert [one[1:] for one in unmet(found)] == [("no room", 1)]


def test_a_horse_that_cannot_be_met_waits_for_those_of_other_places_that_can() -> None:
    """The mill's second horse would go on day 6, which the barn needs; it goes on day 4."""
    horses = wish("Ash", 5, 5), wish("Elm", 5, 5), wish("Oak", 6, 6, stable="barn")
    found = plan(*horses, horses_a_day=1, skipped=frozenset({day(0), day(1), day(2), day(3)}))

    assert [one[1:] for one in unmet(found)] == [("no room", 4)]


def test_a_practice_that_never_works_plans_nothing() -> None:
    """Everybody is named, and nobody has a day."""
    found = plan(wish("Ash", 5, 9), wish("Rowan", -9, -5), weekdays=())

    assert unmet(found) == [("Ash", "no working day", None), ("Rowan", "overdue", None)]
    assert (found.rounds, found.fewest) == ((), 0)


def test_without_wishes_there_is_nothing_to_plan() -> None:
    """An empty plan, and a sentence."""
    found = plan()

    assert (found, found.gap) == (Plan((), (), 0), 0)
    assert describe_plan(found, NAMING) == "No next visit to plan"


def test_the_last_days_of_all_calendars_are_days() -> None:
    """Nothing is looked for after them."""
    last = date.max - timedelta(days=3)
    found = plan_rounds([Wish("mill", "ash", "Ash", last, last, date.max)], {}, calendar(start=last))

    assert [one.day for one in found.rounds] == [last]


def test_wishes_are_those_of_horses_with_a_next_visit() -> None:
    """Who left, and who was never visited, has none."""
    seen = summary(visit("2026-10-14", next={"date": "2026-12-09"}))
    left = summary(visit("2026-10-14"), left={"date": "2026-11-01"})
    (found,) = wishes_of([seen, left, summary()])

    assert (found.stable, found.horse, found.name, found.best) == (
        "willowmere",
        "bramble",
        "Bramble",
        date(2026, 12, 9),
    )
    assert seen.due is not None
    assert (found.earliest, found.latest) == (seen.due.earliest, seen.due.latest)


def test_the_calendar_of_a_practice_is_what_its_file_says() -> None:
    """Working days, holidays, horses a day and leeway, and what is skipped beside them."""
    chosen = ways(working_days=["mon", "fri"], holidays=["2026-12-07"], horses_a_day=5, leeway_days=3)
    found = Calendar.of(chosen, TODAY, [date(2026, 12, 14)])

    assert found.days(date(2026, 12, 18)) == [date(2026, 12, 4), date(2026, 12, 11), date(2026, 12, 18)]
    assert found.days(date(2026, 12, 3), more=2) == [date(2026, 12, 4), date(2026, 12, 11)]
    assert (found.horses_a_day, found.leeway_days) == (5, 3)


def test_a_day_on_which_nobody_goes_any_more_is_given_back() -> None:
    """Both horses of a place go on a day that became free since, and one day less is taken."""
    asked = [Demand(Window(0, 1), 1), Demand(Window(1, 2), 1)]
    place = PlaceRounds(asked, PlaceDays((0, 2), {0: Window(0, 1), 1: Window(1, 2)}, 0, ()), 8)
    draw_nearer([place], [0, 1, 2])

    assert {day: sorted(horses) for day, horses in place.horses.items()} == {1: [0, 1]}

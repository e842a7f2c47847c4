"""When the next visit is due, and why."""

from __future__ import annotations

import math
from collections.abc import Sequence
from datetime import date, timedelta
from typing import Any

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from recordgen.hoof.context import Context
from recordgen.hoof.due import Due, day_grown
from recordgen.hoof.growth.season import Season
from recordgen.records.models.visit import Visit
from tests.support.horse_records import TODAY, summary, toes, visit, ways
from tests.support.simulated_season import Yearly

LAST = visit("2026-10-14")
PLAN = {"by": "Dr Sage", "date": "2026-09-01", "words": "every four weeks"}


def window(last: Visit = LAST, today: date = TODAY, by: Context | None = None, **values: Any) -> tuple[str, str, str]:
    """The window of a horse last visited then, as month and day."""
    found = told(last, today, by, **values)
    return f"{found.earliest:%m-%d}", f"{found.best:%m-%d}", f"{found.latest:%m-%d}"


def told(last: Visit = LAST, today: date = TODAY, by: Context | None = None, **values: Any) -> Due:
    """The same, with everything told."""
    return after([last], today, by, **values)


def after(visits: Sequence[Visit], today: date = TODAY, by: Context | None = None, **values: Any) -> Due:
    """The due day after some visits."""
    found = summary(*visits, by=by or ways(), today=today, **values).due
    assert found is not None
    return found


@pytest.mark.parametrize(
    ("values", "expected"),
    [
        ({}, ("11-18", "11-25", "12-02")),
        ({"kind": "pony"}, ("11-18", "11-25", "12-02")),
        ({"kind": "donkey"}, ("12-02", "12-09", "12-16")),
        ({"born": "2026-05-01"}, ("11-04", "11-11", "11-18")),
    ],
)
def test_usual_interval_of_each_class(values: dict[str, Any], expected: tuple[str, str, str]) -> None:
    """Six weeks, eight for a donkey, four for a foal; a week of leeway on each side."""
    assert window(**values) == expected
    assert told(**values).whose == "usual"


def test_a_horse_s_own_interval_wins_over_that_of_its_class() -> None:
    """And the practice's over our own."""
    assert window(usual_weeks=5)[1] == "11-18"
    assert window(by=ways(usual_weeks={"adult": 7}))[1] == "12-02"
    assert told(usual_weeks=5).reason == "5 weeks after the last visit, the usual interval of this horse"


@pytest.mark.parametrize(
    ("values", "best", "weeks"),
    [
        ({"usual_weeks": 12}, "12-09", "8"),
        ({"usual_weeks": 2}, "11-11", "4"),
        ({"usual_weeks": 5, "kind": "donkey"}, "11-25", "6"),
        ({"usual_weeks": 8, "born": "2026-05-01"}, "11-25", "6"),
    ],
)
def test_an_interval_outside_the_range_of_its_class_is_clamped(values: dict[str, Any], best: str, weeks: str) -> None:
    """The reason says so, with the range."""
    found = told(**values)

    assert (f"{found.best:%m-%d}", found.reason.split()[0]) == (best, weeks)
    assert "usually need" in found.reason


@pytest.mark.parametrize(("weeks", "expected"), [(4, ("11-11", "11-11", "11-18")), (8, ("12-02", "12-09", "12-09"))])
def test_the_window_ends_where_the_range_of_the_class_ends(weeks: int, expected: tuple[str, str, str]) -> None:
    """Leeway does not lead out of it."""
    assert window(usual_weeks=weeks) == expected


def test_leeway_is_the_practice_s() -> None:
    """Without any, the window is one day."""
    assert window(by=ways(leeway_days=0)) == ("11-25", "11-25", "11-25")
    assert window(by=ways(leeway_days=3)) == ("11-22", "11-25", "11-28")


def test_a_vet_s_plan_wins_over_the_usual_interval() -> None:
    """Its weeks are the longest, so the window ends on the best day."""
    found = told(vet_plan={**PLAN, "weeks": 5}, usual_weeks=7)

    assert (found.earliest, found.best, found.latest) == (date(2026, 11, 11), date(2026, 11, 18), date(2026, 11, 18))
    assert (found.whose, found.reason) == ("vet", "5 weeks after the last visit, as the plan of Dr Sage asks")


def test_a_vet_s_plan_may_be_shorter_than_any_usual_interval() -> None:
    """It is not clamped."""
    assert window(vet_plan={**PLAN, "weeks": 2}) == ("10-28", "10-28", "10-28")


@pytest.mark.parametrize(("until", "whose"), [("2026-10-13", "usual"), ("2026-10-14", "vet"), (None, "vet")])
def test_a_plan_that_has_ended_is_over(until: str | None, whose: str) -> None:
    """It holds for a visit on its last day."""
    assert told(vet_plan={**PLAN, "weeks": 4, "until": until}).whose == whose


def test_a_plan_made_after_the_last_visit_counts_from_its_day_on() -> None:
    """A vet who shortens the interval between two visits is heard at once, and not before."""
    later = {**PLAN, "weeks": 4, "date": "2026-10-20"}

    assert told(vet_plan=later, today=date(2026, 10, 20)).whose == "vet"
    assert told(vet_plan=later, today=date(2026, 10, 19)).whose == "usual"


def test_a_plan_never_lengthens_the_usual_interval() -> None:
    """Its weeks are the longest allowed, not a wish."""
    found = told(vet_plan={**PLAN, "weeks": 8}, usual_weeks=5)

    assert (found.best, found.whose) == (date(2026, 11, 18), "usual")


def test_one_week_is_told_as_one() -> None:
    """Not '1 weeks'."""
    assert told(visit("2026-10-14", next={"weeks": 1})).reason.startswith("1 week after the last visit")


@pytest.mark.parametrize(("weeks", "latest"), [(5, "11-18"), (8, "11-25")])
def test_a_plan_bounds_the_window_of_the_trimmer_s_word(weeks: int, latest: str) -> None:
    """The trimmer's best day stands; the latest is no later than the plan asks, save for that day itself."""
    found = window(visit("2026-10-14", next={"weeks": 5}), vet_plan={**PLAN, "weeks": weeks})

    assert (found[1], found[2]) == ("11-18", latest)


def test_a_plan_without_weeks_sets_no_interval() -> None:
    """Its words stand elsewhere."""
    assert told(vet_plan=PLAN).whose == "usual"


def test_the_trimmer_s_weeks_win_over_both() -> None:
    """The word of the last visit, with who gave it and why."""
    last = visit("2026-10-14", next={"weeks": 6.5, "reason": "the flare"})
    found = told(last, vet_plan={**PLAN, "weeks": 4}, usual_weeks=5)

    assert (found.best, found.whose) == (date(2026, 11, 29), "trimmer")
    assert found.reason == "6.5 weeks after the last visit, as Wren Ashdown set it that day: the flare"


def test_the_trimmer_s_day_is_taken_as_it_is() -> None:
    """Outside the usual range too: the window reaches to it and not beyond."""
    found = told(visit("2026-10-14", next={"date": "2027-01-20"}))

    assert (found.earliest, found.best, found.latest) == (date(2027, 1, 13), date(2027, 1, 20), date(2027, 1, 20))
    assert found.reason == "the day that Wren Ashdown set at the last visit"
    assert window(visit("2026-10-14", next={"date": "2026-10-28"})) == ("10-28", "10-28", "11-04")


def test_only_the_word_of_the_last_visit_counts() -> None:
    """An earlier one is spent."""
    found = after([visit("2026-09-02", next={"weeks": 20}), LAST])

    assert (found.best, found.whose) == (date(2026, 11, 25), "usual")


@pytest.mark.parametrize(("day", "best"), [("2027-04-30", "05-28"), ("2027-05-01", "06-12")])
def test_a_foal_that_turns_one_is_visited_as_a_grown_horse(day: str, best: str) -> None:
    """The class is that of the day of the last visit: four weeks before its birthday, six from then on."""
    later = date(2028, 1, 1)

    assert window(visit(day), later, born="2026-05-01")[1] == best


def test_the_window_of_a_foal_stays_that_of_the_day_it_was_visited() -> None:
    """It has turned one since; its window still ends six weeks after the visit, not eight."""
    found = window(visit("2027-04-30"), date(2028, 1, 1), by=ways(leeway_days=28), born="2026-05-01")

    assert found == ("05-21", "05-28", "06-11")


@pytest.mark.parametrize(("today", "expected"), [("2026-12-01", 0), ("2026-12-02", 0), ("2026-12-03", 1)])
def test_overdue_counts_from_the_latest_day(today: str, expected: int) -> None:
    """The latest day itself is not late."""
    assert told(today=date.fromisoformat(today)).overdue_days == expected


def test_nothing_is_due_for_a_horse_that_left_or_was_never_visited() -> None:
    """There is no window then."""
    assert summary(LAST, left={"date": "2026-11-01"}).due is None
    assert summary().due is None


WEEKS = st.floats(1, 26, allow_nan=False)
WORDS = st.one_of(
    st.none(),
    st.fixed_dictionaries({"weeks": st.floats(0.5, 52)}),
    st.fixed_dictionaries({"date": st.dates(date(2026, 10, 15), date(2027, 10, 13))}),
)


@settings(max_examples=150, deadline=None)
@given(
    kind=st.sampled_from(["horse", "donkey", "mule"]),
    born=st.one_of(st.none(), st.dates(date(2026, 1, 1), date(2026, 10, 14)), st.just(date(2010, 1, 1))),
    usual=st.one_of(st.none(), WEEKS),
    plan=st.one_of(st.none(), st.floats(0.5, 26)),
    word=WORDS,
    leeway=st.integers(0, 28),
    passed=st.integers(0, 400),
)
def test_the_best_day_lies_in_the_window(
    kind: str, born: Any, usual: Any, plan: Any, word: Any, leeway: int, passed: int
) -> None:
    """Whatever was recorded: earliest, best and latest are in order, no wider than the leeway, and late is late."""
    today = LAST.date + timedelta(days=passed)
    vet = {**PLAN, "weeks": plan} if plan else None
    found = told(
        visit("2026-10-14", next=word),
        today,
        ways(leeway_days=leeway),
        kind=kind,
        born=born,
        usual_weeks=usual,
        vet_plan=vet,
    )

    assert found.earliest <= found.best <= found.latest
    assert found.latest - found.best <= timedelta(days=leeway)
    assert found.best - found.earliest <= timedelta(days=leeway)
    assert (found.overdue_days > 0) == (today > found.latest)
    assert found.reason
    assert found.earliest_reason
    assert found.latest_reason


def grown(rate: float, cycles: int = 8, days: int = 42) -> list[Visit]:
    """Visits of a horse that grows evenly, the last one on 14 October 2026, trimmed to 80 mm each time."""
    last = date(2026, 10, 14)
    dates = [last - timedelta(days=days * count) for count in range(cycles, -1, -1)]
    return toes(*((day.isoformat(), 80 + rate * days, 80) for day in dates))


def test_growth_names_the_day_on_which_the_allowance_is_reached() -> None:
    """At 0.3 mm a day 12 mm take forty days; what is known of the rate opens the window."""
    found = after(grown(0.3), by=ways(allowances={"adult": 12}, leeway_days=0))

    assert abs((found.best - date(2026, 11, 23)).days) <= 1
    assert found.whose == "growth"
    assert found.earliest < found.best < found.latest
    assert "as much as this practice allows adult horses and ponies" in found.reason
    assert found.earliest_reason.startswith("if it grows as fast as 10")
    assert found.latest_reason.startswith("if it grows as slowly as 7")


def test_a_season_that_nobody_knows_widens_the_window() -> None:
    """Five cycles show none: what one may do to growth adds to the error of the rate, and moves no day."""
    growth = summary(*grown(0.3, cycles=5)).growth

    assert growth.season is None
    assert growth.to_come.mean == pytest.approx(growth.together.mean)
    assert growth.to_come.sd == pytest.approx(math.hypot(growth.together.sd, 0.09 * growth.together.mean), rel=0.01)


def test_a_season_that_was_found_stands_in_its_place() -> None:
    """Two years of cycles that swing by a fifth show their season; nothing is added for one that nobody knows."""
    true, days = Yearly(0.26, 0.2, 15), range(0, 24 * 42, 42)
    first = date(2024, 1, 1)
    lengths = [80 + true.grown(day - 42, day) for day in days]
    taken = [((first + timedelta(days=day)).isoformat(), long, 80) for day, long in zip(days, lengths, strict=True)]
    growth = summary(*toes(*taken)).growth

    assert growth.season is not None
    assert growth.to_come == growth.together


def test_without_an_allowance_a_horse_of_usual_growth_gets_the_usual_interval() -> None:
    """The allowance is then what its class grows in the usual weeks; who grows faster is due sooner."""
    usual, fast, slow = (after(grown(rate)).best for rate in (0.26, 0.32, 0.21))

    assert abs((usual - date(2026, 11, 25)).days) <= 1
    assert fast < usual < slow


def test_growth_unknown_is_the_usual_interval() -> None:
    """One visit tells no growth."""
    assert after(grown(0.3, cycles=0)).whose == "usual"


@pytest.mark.parametrize(("rate", "best"), [(0.7, "11-11"), (0.05, "12-09"), (0.0, "12-09"), (-0.05, "12-09")])
def test_growth_never_leads_out_of_the_range_of_the_class(rate: float, best: str) -> None:
    """Four weeks at the least and eight at the most, also where nothing grows or more wears off than grows."""
    found = after(grown(rate))

    assert f"{found.best:%m-%d}" == best
    assert date(2026, 11, 11) <= found.earliest <= found.best <= found.latest <= date(2026, 12, 9)


def test_few_cycles_open_the_window_wider_than_many() -> None:
    """With one cycle the growth is hardly known; the leeway is the least that is left."""
    one, many = (after(grown(0.26, cycles=count), by=ways(leeway_days=0)) for count in (1, 9))

    assert one.latest - one.earliest > many.latest - many.earliest
    wide = after(grown(0.26, cycles=9), by=ways(leeway_days=10))
    assert (wide.best - wide.earliest).days >= 10


def test_a_horse_s_own_interval_and_the_trimmer_s_word_win_over_growth() -> None:
    """Growth is asked where nobody has spoken."""
    visits = grown(0.3)
    last = visits[-1].model_copy(update={"next": visit("2026-10-14", next={"weeks": 5}).next})

    assert after(visits, usual_weeks=7).whose == "usual"
    assert after([*visits[:-1], last]).whose == "trimmer"
    assert after(visits, vet_plan={**PLAN, "weeks": 4}).whose == "vet"


FLARED = visit("2026-10-14", left_fore={"wall": {"toe": {"flare": 6}}})


@pytest.mark.parametrize(
    ("rule", "whose", "best"),
    [
        ({"finding": "flare", "weeks": 4}, "practice", "11-11"),
        ({"finding": "flare", "from_mm": 6, "weeks": 4}, "practice", "11-11"),
        ({"finding": "flare", "from_mm": 7, "weeks": 4}, "usual", "11-25"),
        ({"finding": "infection", "weeks": 4}, "usual", "11-25"),
        ({"finding": "flare", "weeks": 8}, "usual", "11-25"),
    ],
)
def test_a_practice_comes_sooner_after_a_finding_of_its_own_rules(rule: dict[str, Any], whose: str, best: str) -> None:
    """A rule shortens, from its size on; it never lengthens."""
    found = told(FLARED, by=ways(sooner=[rule]))

    assert (found.whose, f"{found.best:%m-%d}") == (whose, best)
    if whose == "practice":
        assert found.latest == found.best
        assert found.reason.endswith("comes sooner after: flare, 6 mm")


def test_the_trimmer_s_word_wins_over_a_rule_of_the_practice() -> None:
    """Who saw the foot knows better than the rule."""
    flared = FLARED.model_copy(update={"next": visit("2026-10-14", next={"weeks": 6}).next})

    assert told(flared, by=ways(sooner=[{"finding": "flare", "weeks": 4}])).whose == "trimmer"


def test_growth_counts_from_the_last_trim() -> None:
    """A look without a trim moves the range of the class and not the growth."""
    visits = [*grown(0.26), visit("2026-10-28", trimmed=False)]
    found = after(visits)

    assert (found.best, found.earliest) == (date(2026, 11, 25), date(2026, 11, 25))
    assert "seldom need a visit before" in found.earliest_reason


def test_a_slow_season_moves_the_day_on() -> None:
    """The same growth takes longer into the winter than the mean of the year would have it."""
    winter = Season(swing=0.3, slowest=15)
    most = date(2027, 3, 1)

    even = day_grown(date(2026, 11, 1), 11, 0.26, None, most)
    slow = day_grown(date(2026, 11, 1), 11, 0.26, winter, most)

    assert even == date(2026, 12, 13)
    assert 8 <= (slow - even).days <= 20
    assert 0.26 * winter.growing_days(date(2026, 11, 1), slow) == pytest.approx(11, abs=0.15)


def test_a_best_day_that_is_a_public_holiday_is_named() -> None:
    """Six weeks after 13 November 2026 is Christmas Day; elsewhere, and where no country is named, it is a day."""
    last = visit("2026-11-13")
    day = date(2026, 11, 14)

    assert told(last, today=day, by=ways(country="GB")).holiday == "Christmas Day"
    assert told(last, today=day, by=ways(country="JP")).holiday is None
    assert told(last, today=day).holiday is None

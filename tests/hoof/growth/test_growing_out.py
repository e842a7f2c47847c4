"""Marks on their way down the wall: when they reach the ground, and whether they keep to what was expected."""

from __future__ import annotations

import math
from datetime import date, timedelta
from typing import Any

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.hoof.growth.growing_out import OF_THE_TOE, GrowingOut, days_to_cover, growing_out
from recordgen.hoof.growth.rate import Rate
from recordgen.records.models.visit import Visit
from tests.support.horse_records import summary, visit

RATE = 0.26
START = date(2026, 1, 7)


def seen(count: int, *marks: dict[str, Any], **found: Any) -> Visit:
    """A visit some six weeks after the first, of a toe of 80 mm that grows 0.26 mm a day."""
    lengths = {"before": {"toe_length": 80 + RATE * 42}, "after": {"toe_length": 80, **found.pop("after", {})}}
    day = START + timedelta(days=42 * count)
    return visit(day.isoformat(), left_fore={**lengths, "marks": list(marks), **found})


def mark(below: float, zone: str = "toe", kind: str = "event ring") -> dict[str, Any]:
    """A mark so many mm below the hairline."""
    return {"kind": kind, "zone": zone, "below_hairline": round(below, 1)}


def out(*visits: Visit, days: int = 0) -> tuple[GrowingOut, ...]:
    """The marks of the left fore some days after the last of these visits."""
    today = visits[-1].date + timedelta(days=days)
    return summary(*visits, today=today).feet["left_fore"].growing_out


def test_a_ring_reaches_the_ground_when_growth_has_covered_the_way() -> None:
    """From 28 mm to 80 at 0.26 mm a day: 200 days, and an interval about it."""
    (ring,) = out(*(seen(count) for count in range(8)), seen(8, mark(28)))

    assert abs((ring.about - ring.last.day).days - 200) <= 4
    assert ring.latest is not None
    assert ring.earliest < ring.about < ring.latest
    assert (ring.height_mm, ring.height_measured) == (80, True)


def test_it_stands_where_it_was_expected_or_does_not() -> None:
    """Eleven millimetres further after six weeks is as expected; where it stood before is not."""
    before = [seen(count) for count in range(8)]
    (on_course,) = out(*before, seen(8, mark(10)), seen(9, mark(21)))
    (stopped,) = out(*before, seen(8, mark(10)), seen(9, mark(10)))

    assert on_course.expected_mm is not None
    assert on_course.expected_mm[1] == pytest.approx(10 + 42 * RATE, abs=0.3)
    assert (on_course.as_expected, stopped.as_expected) == (True, False)
    assert [one.below_hairline_mm for one in on_course.sightings] == [10, 21]


@pytest.mark.parametrize("rate_sd", [0.0, 0.05])
def test_the_place_expected_is_as_uncertain_as_both_readings_and_the_rate(rate_sd: float) -> None:
    """1.96 standard deviations: of two readings to 1 mm each, and of the rate over the days, which add in squares."""
    rate = Rate(((1.0, RATE, rate_sd),), 8)
    (ring,) = growing_out("left_fore", [seen(0, mark(10)), seen(1, mark(21))], rate, lambda _: rate, START)
    low, middle, high = ring.expected_mm or (0, 0, 0)

    assert (middle - low, high - middle) == pytest.approx((1.96 * math.hypot(2**0.5, 42 * rate_sd),) * 2)


def test_a_first_sighting_has_nothing_to_keep_to() -> None:
    """Neither as expected nor otherwise."""
    (ring,) = out(seen(0), seen(1, mark(10)))

    assert ring.as_expected is None


def test_two_rings_are_told_apart_by_what_grew_between() -> None:
    """The nearer one is the same ring."""
    rings = out(*(seen(n) for n in range(6)), seen(6, mark(10), mark(40)), seen(7, mark(51), mark(21)))

    assert [[one.below_hairline_mm for one in ring.sightings] for ring in rings] == [[40, 51], [10, 21]]


def test_marks_of_two_kinds_or_zones_are_two() -> None:
    """Even at one height."""
    marks = [mark(20), mark(20, kind="abscess line"), mark(20, "lateral quarter")]

    assert len(out(seen(0), seen(1, *marks))) == 3


def test_what_has_grown_out_is_no_longer_told() -> None:
    """Once its latest day is past; before that it may still be there."""
    visits = [*(seen(count) for count in range(8)), seen(8, mark(75))]

    assert len(out(*visits, days=10)) == 1
    assert out(*visits, days=200) == ()


@pytest.mark.parametrize(
    ("after", "expected", "measured"),
    [
        ({}, 80 * 7 / 12, False),
        ({"wall_height": {"lateral": 52}}, 52, True),
    ],
)
def test_the_height_of_a_quarter(after: dict[str, Any], expected: float, measured: bool) -> None:
    """As measured, or by proportion to the toe and told so with a wider interval."""
    (ring,) = out(*(seen(n) for n in range(6)), seen(6, mark(5, "lateral quarter"), after=after))

    assert (ring.height_mm, ring.height_measured) == (pytest.approx(expected), measured)


@pytest.mark.parametrize("side", ["medial", "lateral"])
def test_the_wall_is_as_high_as_the_months_say_in_which_it_is_renewed(side: str) -> None:
    """Where only the toe was measured; the toe quarter is midway between its neighbours.

    Source: Lungwitz & Adams, A Text-Book of Horseshoeing, section F: toe 11 to 13 months, sides 6 to 8, back 3 to 5.
    """
    toe, quarter, heel = (sum(months) / 2 for months in ((11, 13), (6, 8), (3, 5)))
    months = {"toe quarter": (toe + quarter) / 2, "quarter": quarter, "heel": heel}
    rings = out(seen(0), seen(1, *(mark(5, f"{side} {zone}") for zone in months)))

    assert {ring.zone: ring.height_mm for ring in rings} == {
        f"{side} {zone}": pytest.approx(80 * share / toe) for zone, share in months.items()
    }


def test_a_height_by_proportion_is_less_certain() -> None:
    """Its interval is wider than that of the same height measured."""
    widths = []
    for after in ({}, {"wall_height": {"lateral": 80 * 7 / 12}}):
        (ring,) = out(*(seen(n) for n in range(6)), seen(6, mark(5, "lateral quarter"), after=after))
        assert ring.latest is not None
        widths.append((ring.latest - ring.earliest).days)

    assert widths[0] > 1.5 * widths[1]


def test_a_heel_is_taken_along_the_wall() -> None:
    """Straight down 30 mm at 45 degrees are 42 mm along it."""
    (ring,) = out(seen(0), seen(1, mark(5, "lateral heel"), after={"heel_height": {"lateral": 30}, "heel_angle": 45}))

    assert ring.height_mm == pytest.approx(30 * math.sqrt(2))


def test_a_crack_from_the_ground_counts_by_its_end() -> None:
    """25 mm long in a toe of 80: its end stands 55 mm below the hairline; a marked end goes before."""
    crack = {"toe": {"crack": {"length": 25, "reaches": "ground"}}}
    (by_length,) = out(seen(0), seen(1, wall=crack))
    (by_mark,) = out(seen(0), seen(1, mark(50, kind="crack end"), wall=crack))

    assert (by_length.kind, by_length.last.below_hairline_mm) == ("crack end", 55)
    assert by_mark.last.below_hairline_mm == 50


@pytest.mark.parametrize("crack", [{"length": 25}, {"length": 25, "reaches": "hairline"}, {"reaches": "ground"}])
def test_a_crack_of_unknown_end_is_not_forecast(crack: dict[str, Any]) -> None:
    """It may run anywhere."""
    assert out(seen(0), seen(1, wall={"toe": {"crack": crack}})) == ()


def test_a_crack_that_climbed_is_told_where_it_is_now() -> None:
    """Not where it would have been."""
    visits = [seen(count) for count in range(6)]
    (crack,) = out(*visits, seen(6, mark(40, kind="crack end")), seen(7, mark(30, kind="crack end")))

    assert crack.last.below_hairline_mm == 30


def test_growth_marks_are_no_defects() -> None:
    """They are made to be measured."""
    assert out(seen(0), seen(1, mark(20, kind="growth mark"))) == ()


def test_without_a_toe_length_nothing_is_forecast() -> None:
    """Nobody knows how high the wall is."""
    assert out(visit("2026-01-07", left_fore={"marks": [mark(20)]})) == ()


def test_a_mark_below_the_ground_is_due_now() -> None:
    """A mark read lower than the toe is long has arrived."""
    (ring,) = out(*(seen(n) for n in range(6)), seen(6, mark(85)))

    assert ring.about == ring.last.day


def test_growth_that_may_be_nought_has_no_latest_day() -> None:
    """An honest interval is open then."""
    assert days_to_cover(50, 1.4, Rate(((1.0, 0.05, 0.05),), 1))[1] == math.inf


@given(st.floats(0, 150), st.floats(0.5, 10), st.floats(0.1, 0.5), st.floats(0.001, 0.04))
def test_the_interval_of_days_holds_what_simulation_finds(way: float, spread: float, mean: float, sd: float) -> None:
    """Rate and way drawn at random: the days between hold about 95 in 100 of the quotients."""
    low, high = days_to_cover(way, spread, Rate(((1.0, mean, sd),), 9))
    rng = np.random.default_rng(1)
    drawn = (way + spread * rng.normal(size=4000)) / (mean + sd * rng.normal(size=4000))
    inside = np.mean((np.maximum(drawn, 0) >= low - 1e-9) & (drawn <= high))

    assert 0.9 <= inside <= 1
    assert 0 <= low <= way / mean <= high


def width_days(zone: str, **after: Any) -> float:
    """How wide the interval of a ring's arrival is that stands at the hairline, with growth as good as known, days."""
    visits = [seen(count) for count in range(60)]
    (ring,) = out(*visits, seen(60, mark(0, zone), after=after))
    assert ring.latest is not None
    return (ring.latest - ring.earliest).days


def test_the_error_of_two_readings_is_in_the_day_a_mark_arrives() -> None:
    """Where the wall was measured: 1.96 times the root of two millimetres, to either side, over the rate.

    Derived from: the error of a difference of two readings of a millimetre each, as 95 %. What growth itself may be out
    by comes on top, so the interval is a little wider.
    """
    least = 2 * 1.96 * math.sqrt(2) / RATE

    assert least <= width_days("toe") < 1.6 * least


def test_a_height_by_proportion_is_out_by_an_eighth() -> None:
    """A heel that nobody measured: the error of its height, an eighth of it, goes into the day. Judgement."""
    measured = width_days("lateral heel", heel_height={"lateral": 32.0})
    guessed = width_days("lateral heel")
    share = OF_THE_TOE["lateral heel"]
    least = 2 * 1.96 * math.hypot(math.sqrt(2), 0.125 * share * 80) / RATE

    assert measured < least <= guessed < 1.6 * least

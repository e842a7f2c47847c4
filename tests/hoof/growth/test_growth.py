"""Growth of a horse: each foot, all feet together, a season, and feet growing apart."""

from __future__ import annotations

from datetime import date, timedelta
from typing import Any

import numpy as np
import pytest
from scipy import stats

from recordgen.hoof.growth.growth import HorseGrowth
from recordgen.hoof.growth.season import Season, growing_days
from recordgen.records.models.names import FEET, CareClass
from recordgen.records.models.visit import Visit
from tests.support.horse_records import REFERENCE, summary, toes, visit, ways


def growing(
    rates: dict[str, float], cycles: int = 8, days: int = 42, noise_mm: float = 0, season: Season | None = None
) -> list[Visit]:
    """Visits of a horse whose feet grow at these rates, mm a day, trimmed to 80 mm each time; noise is shared."""
    rng = np.random.default_rng(3)
    start = date(2024, 2, 1)
    made = []
    for count in range(cycles + 1):
        day = start + timedelta(days=days * count)
        grew = growing_days(season, day - timedelta(days=days), day)
        shared = rng.normal(0, noise_mm)
        feet: dict[str, Any] = {
            foot: {"before": {"toe_length": round(80 + rate * grew + shared, 1)}, "after": {"toe_length": 80}}
            for foot, rate in rates.items()
        }
        made.append(visit(day.isoformat(), **feet))
    return made


def growth(*visits: Visit, **values: Any) -> HorseGrowth:
    """Knowledge of such a horse."""
    return summary(*visits, **values).growth


def test_four_feet_are_one_observation_a_cycle() -> None:
    """The feet share whatever life did between two visits; so together they rest on as many cycles as one foot."""
    found = growth(*growing(dict.fromkeys(FEET, 0.3)))

    assert (found.together.cycles, found.feet["left_fore"].net.cycles) == (8, 8)
    assert found.together.mean == pytest.approx(0.3, abs=0.005)
    one = found.feet["left_fore"].net
    assert one.sd / 2 < found.together.sd < one.sd


def test_a_foot_measured_once_has_the_rate_of_its_class() -> None:
    """And rests on no cycle; a foot never looked at has none."""
    found = growth(*toes(("2026-03-01", 90, 80)))

    assert found.feet["left_fore"].net.cycles == 0
    assert found.feet["left_fore"].net.mean == pytest.approx(REFERENCE.classes["adult"].growth.mm_per_day)
    assert "right_hind" not in found.feet


@pytest.mark.parametrize(("born", "group"), [("2026-01-15", "foal"), ("2024-11-01", "adult"), ("2000-05-01", "aged")])
def test_what_is_expected_goes_by_class(born: str, group: CareClass) -> None:
    """Of a foal more than of a grown horse, and less of an old one."""
    found = growth(visit("2026-11-20", left_fore={}), born=born)

    assert found.usual.mm_per_day == REFERENCE.classes[group].growth.mm_per_day


@pytest.mark.parametrize(("born", "weeks"), [("2015-05-01", 2 * 8), ("2026-01-15", 2 * 6)])
def test_a_cycle_twice_as_long_as_its_class_may_wait_is_the_longest(born: str, weeks: int) -> None:
    """A grown horse may wait eight weeks and a foal six: over more than twice that somebody else may have trimmed.

    Twice: Judgement. The weeks: as the table of classes tells.
    """
    last = date(2026, 11, 20)
    told = []
    for days in (7 * weeks, 7 * weeks + 1):
        first = last - timedelta(days=days)
        mm = round(80 + 0.28 * days, 1)
        found = growth(*toes((first.isoformat(), 90, 80), (last.isoformat(), mm, 80)), born=born)
        told.append([one.why for one in found.feet["left_fore"].left_out])

    assert told == [[], ["too long"]]


def test_a_slip_changes_the_estimate_little() -> None:
    """It is named and left out."""
    visits = growing({"left_fore": 0.26}, cycles=9)
    slip = visits[4].model_dump(exclude_unset=True)
    slip["feet"]["left_fore"]["before"]["toe_length"] += 20
    with_slip = growth(*visits[:4], Visit.model_validate(slip), *visits[5:])

    assert [one.why for one in with_slip.feet["left_fore"].left_out] == ["too fast"]
    assert with_slip.feet["left_fore"].net.mean == pytest.approx(growth(*visits).feet["left_fore"].net.mean, abs=0.003)


def test_a_foot_that_grows_apart_is_told() -> None:
    """Slower than the other three in every cycle, beyond what two readings can be out by."""
    (apart,) = [one for one in growth(*growing(apart_rates(0.16))).apart if one.foot == "left_fore"]

    assert apart.mm_per_day == pytest.approx(-0.1, abs=0.03)
    assert apart.high < 0
    assert apart.cycles == 8


@pytest.mark.parametrize(("own", "cycles"), [(0.25, 8), (0.16, 2)])
def test_a_foot_apart_is_not_told_for_little_or_too_soon(own: float, cycles: int) -> None:
    """A hundredth of a millimetre a day, or two cycles."""
    assert growth(*growing(apart_rates(own), cycles=cycles)).apart == ()


def apart_rates(own: float) -> dict[str, float]:
    """Three feet alike and one of its own."""
    return {"left_fore": own, "right_fore": 0.26, "left_hind": 0.26, "right_hind": 0.26}


def test_a_foot_is_seldom_told_apart_by_chance() -> None:
    """Four feet that grow alike, read to the millimetre, in 100 simulated horses."""
    rng = np.random.default_rng(5)
    told = 0
    for _ in range(100):
        visits = growing(dict.fromkeys(FEET, 0.26), cycles=6)
        told += bool(growth(*(_read_anew(one, rng) for one in visits)).apart)

    assert told <= 6


def _read_anew(one: Visit, rng: np.random.Generator) -> Visit:
    values = one.model_dump(exclude_unset=True)
    for found in values["feet"].values():
        found["before"]["toe_length"] = round(found["before"]["toe_length"] + rng.normal(0, 1))
        found["after"]["toe_length"] = round(found["after"]["toe_length"] + rng.normal(0, 1))
    return Visit.model_validate(values)


def test_a_season_is_part_of_what_is_expected() -> None:
    """Two years of a horse that grows by three tenths less in January: less is expected until February."""
    found = growth(*growing(dict.fromkeys(FEET, 0.26), cycles=18, noise_mm=0.5, season=Season(0.3, 15)))

    assert found.season is not None
    winter = found.expected_mm(date(2026, 12, 20), date(2027, 1, 31))
    summer = found.expected_mm(date(2026, 6, 20), date(2026, 8, 1))
    assert summer / winter == pytest.approx(1.3 / 0.7, abs=0.25)


def test_wear_is_a_rate_of_its_own() -> None:
    """A mark came down 0.3 mm a day while the toe grew by 0.2: 0.1 wore off."""
    visits = []
    for count in range(7):
        found = {
            "before": {"toe_length": 80 + 0.2 * 42},
            "after": {"toe_length": 80},
            "marks": [{"kind": "growth mark", "below_hairline": round(10 + 0.3 * 42 * (count % 4), 1)}],
        }
        visits.append(visit((date(2026, 1, 1) + timedelta(days=42 * count)).isoformat(), left_fore=found))
    foot = growth(*visits).feet["left_fore"]

    assert foot.true is not None
    assert foot.wear is not None
    assert foot.true.mean == pytest.approx(0.3, abs=0.01)
    assert foot.wear.mean == pytest.approx(0.1, abs=0.01)


def test_a_short_last_cycle_is_told_as_such() -> None:
    """Four weeks are long enough."""
    assert growth(*growing({"left_fore": 0.26}, cycles=3, days=28)).short is None
    short = growth(*growing({"left_fore": 0.26}, cycles=3, days=27)).short
    assert short is not None
    assert short.days == 27


def test_a_steady_foot_grows_at_the_slope_of_its_lengths() -> None:
    """Trims taken back, the lengths of a foot that grows evenly lie on a line; its slope is the rate."""
    taken = [("2026-03-01", 80.0, 80.0), ("2026-03-31", 89.0, 82.0), ("2026-05-20", 97.0, 80.0)]
    line = stats.linregress([0, 30, 80], [80, 89, 104])

    found = growth(*toes(*taken)).feet["left_fore"].net

    assert found.low < line.slope < found.high
    assert found.mean == pytest.approx(line.slope, abs=0.012)


def test_a_coarser_way_of_measuring_makes_the_interval_wider() -> None:
    """From photographs a length is out by twice as much."""
    visits = growing({"left_fore": 0.26}, cycles=2)
    rule, photograph = (
        growth(*visits, by=ways(methods={"toe_length": way})).together.sd for way in ("rule", "photograph")
    )

    assert photograph > 1.3 * rule


@pytest.mark.parametrize(("faster", "told"), [(0.0145, False), (0.0155, True)])
def test_one_in_two_hundred_is_the_bar_for_a_foot_that_grows_apart(faster: float, told: bool) -> None:
    """A difference that 95 % would tell (from 0.0103 mm a day here) is not told yet: four feet are looked at."""
    rates: dict[str, float] = {**dict.fromkeys(FEET, 0.26), "left_fore": 0.26 + faster}
    apart = [one.foot for one in growth(*growing(rates)).apart]

    assert ("left_fore" in apart) is told

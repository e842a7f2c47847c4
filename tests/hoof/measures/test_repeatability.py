"""A practice's own repeated readings in place of assumed errors."""

from __future__ import annotations

import math
from typing import Any

import numpy as np
import pytest
from scipy import stats

from recordgen.hoof.context import Context
from recordgen.hoof.measures.repeatability import Own, list_errors, own_errors, with_own
from recordgen.records.models.visit import Visit
from tests.support.horse_records import REFERENCE, practice, summary, visit

# Sets of two and three readings of toe length, mm.
SETS: list[tuple[float, ...]] = [
    (88, 89),
    (80, 80, 81),
    (76, 75),
    (91, 93, 92),
    (84, 84),
    (79, 80),
    (87, 86, 87),
    (82, 83),
]


def again(count: int, readings: tuple[float, ...], moment: str = "after", **values: Any) -> Visit:
    """A visit at which the toe of the left fore was measured several times over."""
    first, *others = ({"toe_length": value} for value in readings)
    return visit(f"2026-{count % 12 + 1:02}-14", left_fore={moment: first, "repeat": {moment: others}}, **values)


def visits(sets: list[tuple[float, ...]]) -> list[Visit]:
    """A visit for each set."""
    return [again(count, readings) for count, readings in enumerate(sets)]


def test_the_sd_is_pooled_within_feet() -> None:
    """The root of the mean square within sets, as one-way analysis of variance has it.

    Source: Bland & Altman 1996, BMJ 312:1654. Derived from: numpy's variances, weighed by their degrees of freedom.
    """
    own = own_errors(REFERENCE, {}, visits(SETS))["toe_length", "rule"]
    squares = sum(np.var(one, ddof=1) * (len(one) - 1) for one in SETS)
    freedom = sum(len(one) - 1 for one in SETS)

    assert own.sd == pytest.approx(math.sqrt(squares / freedom))
    assert (own.sets, own.freedom, own.counts) == (8, 11, True)


def test_pairs_alone_give_the_root_of_half_the_mean_square_difference() -> None:
    """For duplicates the same is the root of the sum of squared differences over twice their number.

    Source: Bland & Altman 1996, BMJ 312:1654.
    """
    pairs = [one[:2] for one in SETS]
    own = own_errors(REFERENCE, {}, visits(pairs))["toe_length", "rule"]

    assert own.sd == pytest.approx(math.sqrt(sum((a - b) ** 2 for a, b in pairs) / (2 * len(pairs))))


def test_enough_readings_of_one_s_own_replace_what_is_assumed() -> None:
    """The smallest real change follows; its source says whose readings they are."""
    ways = Context.of(practice(), REFERENCE, visits(SETS))
    taken = [visit("2026-09-02", left_fore={"after": {"toe_length": 80}})]
    found = summary(*taken, by=ways).feet["left_fore"].measures["toe_length"]
    method = ways.reference.measures["toe_length"].methods["rule"]
    own = own_errors(REFERENCE, {}, visits(SETS))["toe_length", "rule"]

    assert found.smallest_real_change == pytest.approx(1.96 * math.sqrt(2) * own.sd)
    assert (method.assumed, method.source) == (False, "This practice's own: 19 readings in 8 sets")


@pytest.mark.parametrize("sets", [SETS[:6], [(80, 80)] * 12, [(80,)] * 12])
def test_too_few_readings_change_nothing(sets: list[tuple[float, ...]]) -> None:
    """Eight degrees of freedom, readings that never differ, or none twice: the table's own figure stands."""
    own = own_errors(REFERENCE, {}, visits(sets))

    assert with_own(REFERENCE, own).measures["toe_length"].methods == REFERENCE.measures["toe_length"].methods


def test_each_way_of_measuring_is_told_apart() -> None:
    """Readings by photograph say nothing of the rule."""
    own = own_errors(REFERENCE, {}, [again(1, (88, 84), methods={"toe_length": "photograph"})])

    assert list(own) == [("toe_length", "photograph")]


def test_moments_are_not_mixed() -> None:
    """Before and after the trim are two sets: what the trim took is no error."""
    found = {
        "before": {"toe_length": 90},
        "after": {"toe_length": 80},
        "repeat": {"before": [{"toe_length": 91}], "after": [{"toe_length": 80}]},
    }
    own = own_errors(REFERENCE, {}, [visit("2026-10-14", left_fore=found)])["toe_length", "rule"]

    assert (own.sets, own.sd) == (2, pytest.approx(0.5))


def test_what_is_told_covers_every_measure_that_is_taken() -> None:
    """One row a way, with its source; the usual way of the practice is marked."""
    rows = list_errors(REFERENCE, {"toe_angle": "gauge"}, [])
    taken = {name for name, words in REFERENCE.measures.items() if words.path or words.traced}

    assert {row.measure for row in rows} == taken
    assert [row.way for row in rows if row.measure == "toe_angle" and row.usual] == ["gauge"]
    assert all(row.smallest_real_change == pytest.approx(1.96 * math.sqrt(2) * row.sd) for row in rows)
    assert all(row.source for row in rows)


@pytest.mark.parametrize(("freedom", "counts"), [(9, False), (10, True)])
def test_from_ten_degrees_of_freedom_on_an_error_of_ones_own_counts(freedom: int, counts: bool) -> None:
    """Below that it is less sure than an assumed one: at ten its 95 % interval reaches from 0.7 to 1.75 times it.

    Derived from: the chi-squared distribution, by scipy.
    """
    low, high = (math.sqrt(10 / stats.chi2(10).ppf(share)) for share in (0.975, 0.025))

    assert Own(1.0, 5, freedom).counts is counts
    assert (low, high) == pytest.approx((0.7, 1.75), abs=0.01)

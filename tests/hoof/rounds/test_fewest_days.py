"""The fewest days for the horses of one place, held against every choice of days."""

from __future__ import annotations

import math
import random
from collections import Counter
from collections.abc import Sequence
from itertools import combinations_with_replacement

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st

from recordgen.hoof.rounds.fewest_days import Span, all_met, fewest_days, most_met
from tests.support.exhaustive_rounds import least_days, met_on


def held_against_every_way(spans: Sequence[Span], days: int, most: int) -> None:
    """Checks that most horses are met, and those on the fewest days."""
    met = most_met(spans, most)
    kept = [spans[horse] for horse in met]
    chosen = fewest_days(kept, most)

    assert len(met) == met_on(range(days), spans, most)
    assert met_on(chosen, kept, most) == len(kept)
    assert len(set(chosen)) == len(chosen) == least_days(kept, days, most)


@pytest.mark.parametrize("most", [1, 2, 3])
@pytest.mark.parametrize("horses", [1, 2, 3, 4])
def test_each_set_of_few_horses_is_met_on_the_fewest_days(horses: int, most: int) -> None:
    """Every set of up to four spans in four days, without exception: 3000 sets."""
    spans = [Span(first, last) for first in range(4) for last in range(first, 4)]

    for chosen in combinations_with_replacement(spans, horses):
        held_against_every_way(chosen, 4, most)


def test_sets_drawn_by_lot_are_met_on_the_fewest_days() -> None:
    """Eight hundred sets of up to seven horses in seven days, some of which no day suits."""
    lot = random.Random(20261201)
    for _ in range(800):
        firsts = [lot.randrange(7) for _ in range(lot.randrange(8))]
        spans = [Span(first, lot.randrange(first - 1, 7)) for first in firsts]

        held_against_every_way(spans, 7, lot.randint(1, 3))


SPANS = st.tuples(st.integers(0, 40), st.integers(0, 15)).map(lambda pair: Span(pair[0], pair[0] + pair[1]))


@settings(max_examples=60, deadline=None)
@given(st.lists(SPANS, max_size=7), st.integers(1, 3))
def test_sets_that_look_for_trouble_are_met_on_the_fewest_days(spans: list[Span], most: int) -> None:
    """The same, with spans folded into seven days."""
    held_against_every_way([Span(first % 7, min(6, first % 7 + last - first)) for first, last in spans], 7, most)


@settings(max_examples=100, deadline=None)
@given(st.lists(SPANS, max_size=80), st.integers(1, 9))
def test_each_horse_goes_inside_its_span_and_no_day_holds_too_many(spans: list[Span], most: int) -> None:
    """With as many days as anybody needs: at the least as many as the horses fill, at the most one for each."""
    met = most_met(spans, most)
    kept = [spans[horse] for horse in met]
    days = fewest_days(kept, most)

    assert all(spans[horse].first <= day <= spans[horse].last for horse, day in met.items())
    assert max(Counter(met.values()).values(), default=0) <= most
    assert math.ceil(len(kept) / most) <= len(days) <= len(kept)


@settings(max_examples=50, deadline=None)
@given(st.lists(SPANS, max_size=30), st.integers(1, 4), st.randoms(use_true_random=False))
def test_the_order_of_the_horses_does_not_matter(spans: list[Span], most: int, lot: random.Random) -> None:
    """As many are met, on as many days."""
    shuffled = lot.sample(spans, len(spans))

    assert len(most_met(shuffled, most)) == len(most_met(spans, most))
    if all_met(spans, most):
        assert fewest_days(shuffled, most) == fewest_days(spans, most)


def test_nobody_goes_before_some_horse_can_wait_no_longer() -> None:
    """Three horses and two days: the first day waits for the horse whose span ends first, and takes who is ready."""
    assert fewest_days([Span(0, 3), Span(2, 5), Span(4, 9)], 8) == [3, 9]


def test_a_day_that_is_full_sends_the_longest_ready_a_day_sooner() -> None:
    """Three end on the same day and two fit: the one ready first goes the day before."""
    assert fewest_days([Span(2, 4), Span(0, 4), Span(4, 4)], 2) == [3, 4]


def test_a_span_without_a_day_meets_nobody() -> None:
    """The others are met."""
    assert most_met([Span(3, 2), Span(1, 1)], 1) == {1: 1}


def test_days_for_all_are_not_found_where_not_all_can_be_met() -> None:
    """Whoever asks must leave somebody out first."""
    with pytest.raises(ValueError, match="not every horse"):
        fewest_days([Span(0, 0), Span(0, 0)], 1)


def test_nobody_needs_no_day() -> None:
    """No horse, no day."""
    assert (most_met([], 3), fewest_days([], 3)) == ({}, [])

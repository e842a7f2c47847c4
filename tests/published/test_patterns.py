"""Shares of horses and their intervals against printed figures, and the survey beside which they are told."""

from __future__ import annotations

from collections.abc import Callable, Iterator
from math import comb

import pytest
from scipy.stats import binomtest

from recordgen.hoof.stable.prevalence import Share
from recordgen.hoof.stable.proportions import newcombe, stand, wilson
from tests.support.horse_records import REFERENCE

SHARES = [number / 40 for number in range(1, 40)]
HOLZHAUER = "Holzhauer et al. 2017, Prev Vet Med, doi 10.1016/j.prevetmed.2017.02.013"


@pytest.mark.parametrize(
    ("finding", "name", "percent"),
    [
        ("infection", "thrush", 45.0),
        ("separation", "widening of the white line", 11.8),
        ("crack", "cracks in the surface of the wall", 30.4),
        ("bruise", "bruises of the sole", 24.7),
        ("ring", "growth rings", 26.3),
    ],
)
def test_the_survey_of_942_horses(finding: str, name: str, percent: float) -> None:
    """The figure is the one of the survey's finding that is nearest to ours.

    Source: Holzhauer et al. 2017, Prev Vet Med, doi 10.1016/j.prevetmed.2017.02.013, abstract.
    """
    words = REFERENCE.patterns[finding]

    assert words.published is not None
    assert (words.published.name, words.published.percent, words.published.of) == (name, percent, 942)
    assert words.source.startswith(HOLZHAUER)


def test_cracks_through_the_wall_are_told_beside_those_in_its_surface() -> None:
    """Ours holds both; the survey counted them apart, 16.4 % through the wall.

    Source: Holzhauer et al. 2017, Prev Vet Med, doi 10.1016/j.prevetmed.2017.02.013, abstract.
    """
    assert "16.4 % had cracks through the wall" in REFERENCE.patterns["crack"].source


def test_what_was_not_surveyed_has_no_figure() -> None:
    """Broken edges and sensitive soles are not among its twelve findings.

    Source: Holzhauer et al. 2017, Prev Vet Med, doi 10.1016/j.prevetmed.2017.02.013, abstract.
    """
    without = {finding for finding, words in REFERENCE.patterns.items() if words.published is None}

    assert without == {"chip", "sensitive"}


@pytest.mark.parametrize(
    ("counts", "low", "high"),
    [
        ((56, 70, 48, 80), 0.0524, 0.3339),
        ((9, 10, 3, 10), 0.1705, 0.8090),
        ((6, 7, 2, 7), 0.0582, 0.8062),
        ((5, 56, 0, 29), -0.0381, 0.1926),
        ((0, 10, 0, 20), -0.1611, 0.2775),
        ((0, 10, 0, 10), -0.2775, 0.2775),
        ((10, 10, 0, 20), 0.6791, 1.0),
        ((10, 10, 0, 10), 0.6075, 1.0),
    ],
)
def test_newcombes_examples(counts: tuple[int, int, int, int], low: float, high: float) -> None:
    """Method 10 for the eight pairs of shares of his table II.

    Source: From memory, not read: Newcombe 1998, Statistics in Medicine 17:873-890, table II. The first two as the
    tests of a statistics package repeat them.
    """
    assert newcombe(*counts) == pytest.approx((low, high), abs=5e-5)


@pytest.mark.parametrize(
    ("count", "of", "low", "high"),
    [(81, 263, 0.2553, 0.3662), (15, 148, 0.0624, 0.1605), (0, 20, 0, 0.1611), (1, 29, 0.0061, 0.1718)],
)
def test_wilsons_interval_as_printed(count: int, of: int, low: float, high: float) -> None:
    """Method 3 for four shares.

    Source: From memory, not read: Newcombe 1998, Statistics in Medicine 17:857-872, table I.
    """
    assert wilson(count, of) == pytest.approx((low, high), abs=5e-5)


@pytest.mark.parametrize("confidence", [0.9, 0.95, 0.99])
@pytest.mark.parametrize("of", [1, 4, 9, 60])
def test_wilson_agrees_with_an_independent_calculation(of: int, confidence: float) -> None:
    """Each share of so many horses.

    Source: SciPy, binomtest, method wilson.
    """
    for count in range(of + 1):
        expected = binomtest(count, of).proportion_ci(confidence, "wilson")
        assert wilson(count, of, confidence) == pytest.approx((expected.low, expected.high), abs=1e-9)


def chance(count: int, of: int, share: float) -> float:
    """How often so many of so many come up by chance."""
    return comb(of, count) * share**count * (1 - share) ** (of - count)


@pytest.mark.parametrize("of", [4, 9, 20])
def test_wilson_covers_nineteen_times_in_twenty(of: int) -> None:
    """Every outcome weighed: 95 % over all true shares, nowhere far below.

    Derived from: the definition of an interval of 95 %.
    """
    intervals = [wilson(count, of) for count in range(of + 1)]
    covered = [
        sum(chance(count, of, share) for count, (low, high) in enumerate(intervals) if low <= share <= high)
        for share in SHARES
    ]

    assert sum(covered) / len(covered) == pytest.approx(0.955, abs=0.01)
    assert min(covered) > 0.83


def pairs(of: int, other_of: int) -> Iterator[tuple[int, int]]:
    """Every outcome of two stables."""
    return ((count, other) for count in range(of + 1) for other in range(other_of + 1))


def how_often(of: int, other_of: int, true: tuple[float, float], happens: Callable[[int, int], bool]) -> float:
    """How often something happens among all outcomes of two true shares."""
    return sum(
        chance(count, of, true[0]) * chance(other, other_of, true[1])
        for count, other in pairs(of, other_of)
        if happens(count, other)
    )


def covered(of: int, other_of: int, true: tuple[float, float]) -> float:
    """How often the interval of a difference holds the true one."""

    def holds(count: int, other: int) -> bool:
        low, high = newcombe(count, of, other, other_of)
        return low <= true[0] - true[1] <= high

    return how_often(of, other_of, true, holds)


@pytest.mark.parametrize(("of", "other_of"), [(4, 9), (9, 9), (9, 40)])
def test_newcombe_covers_nineteen_times_in_twenty(of: int, other_of: int) -> None:
    """Every outcome weighed, over pairs of true shares: about 95 %, nowhere far below.

    Derived from: the definition of an interval of 95 %.
    """
    found = [covered(of, other_of, (one, two)) for one in SHARES[::6] for two in SHARES[::6]]

    assert sum(found) / len(found) == pytest.approx(0.955, abs=0.015)
    assert min(found) > 0.88


def worst(of: int, other_of: int, said: Callable[[Share, Share], bool]) -> float:
    """How often two stables that are alike are told apart, at the true share where that happens most."""

    def happens(count: int, other: int) -> bool:
        return said(Share(count, of, of), Share(other, other_of, other_of))

    return max(how_often(of, other_of, (share, share), happens) for share in SHARES[::3])


@pytest.mark.parametrize(("of", "other_of"), [(4, 4), (5, 9), (9, 9), (12, 12), (9, 60)])
def test_a_pattern_is_seldom_said_where_there_is_none(of: int, other_of: int) -> None:
    """Two stables that are alike are told apart at most 7 times in 100, whatever their share.

    Derived from: every outcome weighed.
    """
    assert worst(of, other_of, lambda here, other: stand(here, other) is not None) < 0.07


def test_a_share_taken_for_exact_would_be_wrong_four_times_as_often() -> None:
    """Nine horses against nine: as if the interval here alone had to exclude the other share.

    Derived from: every outcome weighed.
    """

    def excluded(here: Share, other: Share) -> bool:
        return here.count >= 3 and wilson(here.count, 9)[0] > other.count / 9

    def told(here: Share, other: Share) -> bool:
        return stand(here, other) == "more"

    assert worst(9, 9, excluded) / worst(9, 9, told) > 4

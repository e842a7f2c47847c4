"""Claims of a page of changes, by one rule."""

from __future__ import annotations

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy.stats import false_discovery_control

from recordgen.hoof.claims.claims import Series, claims_of
from recordgen.hoof.claims.differences import differences_of
from recordgen.hoof.claims.discoveries import discoveries
from recordgen.hoof.claims.wavering import wavering
from tests.support.simulated_claims import Horses, told

DAYS = tuple(date(2025, 1, 6) + timedelta(weeks=6 * count) for count in range(12))
CHANCES = st.lists(st.floats(0, 1), min_size=1, max_size=60)


def series(*values: float, of: str = "toe_length", sd: float = 1.0, **others: tuple[str, ...]) -> Series[str]:
    """The readings of one measure six weeks apart."""
    return Series(of, of, DAYS[: len(values)], values, (sd,) * len(values), **others)


@given(CHANCES, st.floats(0.01, 0.3))
def test_the_bar_is_that_of_benjamini_and_hochberg(chances: list[float], share: float) -> None:
    """Told is what scipy's adjusted chances put at the share or below. Source: scipy.stats.false_discovery_control."""
    adjusted = false_discovery_control(chances, method="bh")
    clear = [abs(one - share) > 1e-9 for one in adjusted]
    found = discoveries(chances, share)

    assert [one for one, sure in zip(found, clear, strict=True) if sure] == [
        bool(one <= share) for one, sure in zip(adjusted, clear, strict=True) if sure
    ]


def test_a_step_is_told_with_its_day_and_its_size() -> None:
    """Since the first reading after it, from the mean before to the mean after."""
    (claim,) = claims_of([series(80, 81, 80, 80, 86, 86, 85, 86)]).real

    assert (claim.kind, claim.before, claim.since, claim.latest) == ("step", DAYS[3], DAYS[4], DAYS[7])
    assert claim.change == pytest.approx(5.5, abs=0.6)
    assert claim.low < 5.5 < claim.high


def test_a_trend_is_told_with_how_fast_it_goes() -> None:
    """A millimetre a visit of six weeks is 0.72 mm a month."""
    (claim,) = claims_of([series(*range(80, 91))]).real

    assert claim.kind == "trend"
    assert claim.a_month == pytest.approx(30.4375 / 42, rel=0.15)
    assert claim.low < 10 < claim.high


def test_what_wavers_within_its_error_is_not_told() -> None:
    """Nothing is claimed of readings that differ by no more than their errors, nor of equal ones."""
    found = claims_of([series(80, 81, 79, 80, 81), series(50, 50, 50, 50, 50, of="sole_depth")])

    assert (found.real, found.maybe, found.looked_at) == ((), (), 2)


@pytest.mark.parametrize("values", [(), (80,)])
def test_fewer_than_two_readings_are_not_looked_at(values: tuple[float, ...]) -> None:
    """They can show no change, and raise no bar for others."""
    assert claims_of([series(*values)]).looked_at == 0


def test_two_readings_far_apart_are_told() -> None:
    """With two the difference alone speaks: 8 mm is more than a page of errors gives."""
    (claim,) = claims_of([series(80, 88), *(series(50, 50, of=str(count)) for count in range(35))]).real

    assert (claim.of, claim.since) == ("toe_length", DAYS[1])


def test_the_more_a_page_looks_at_the_higher_its_bar() -> None:
    """A difference that is told alone is only remarked on among forty others that do not change."""
    one, others = series(80, 80, 80, 83, 83), [series(50, 51, 50, 50, 51, of=str(count)) for count in range(40)]

    assert claims_of([one]).real
    assert [claim.of for claim in claims_of([one, *others]).maybe] == ["toe_length"]


def test_remarks_say_how_many_chance_makes() -> None:
    """One in twenty of what was looked at and is not told."""
    page = [series(50, 51, 50, 50, 51, of=str(count)) for count in range(40)]

    assert claims_of(page).by_chance == pytest.approx(2)


def test_another_way_of_measuring_is_no_change() -> None:
    """The rule and the gauge may differ all the time; what is read in one way is compared with its like alone."""
    ways = ("protractor",) * 4 + ("gauge",) * 4

    assert claims_of([series(50, 50, 50, 50, 56, 56, 56, 56, ways=ways)]).real == ()
    (claim,) = claims_of([series(50, 50, 50, 50, 56, 56, 62, 62, ways=ways)]).real
    assert (claim.since, round(claim.change)) == (DAYS[6], 6)


def test_an_unsteady_horse_raises_the_errors() -> None:
    """Where the other feet's readings waver by three times their error, so do those of this foot; equal ones do not."""
    rng = np.random.default_rng(5)
    page = [series(*rng.normal(80, 3, 12)) for _ in range(4)]

    assert wavering(page) == pytest.approx([3] * 4, rel=0.4)
    assert wavering([series(80, 80, 80, 80)] * 4) == [1] * 4


def test_a_change_does_not_hide_itself_as_wavering() -> None:
    """A step of one foot, or a trend of all of them, leaves the errors as they are."""
    still = [series(80, 81, 80, 79, 80, 81, 80, 79) for _ in range(3)]

    assert wavering([series(80, 81, 80, 79, 90, 91, 90, 89), *still])[0] == 1
    assert wavering([series(*range(80, 92))] * 4) == [1] * 4


def test_what_rose_and_fell_again_is_told_one_way() -> None:
    """The interval lies on one side of nothing, as the change that is told does."""
    (claim,) = claims_of([series(0, 0, 0, 6, 6, 5, 3, 2, of="flare")]).real

    assert claim.low * claim.high > 0


@pytest.mark.parametrize(
    ("values", "real"),
    [((2,), False), ((5,), True), ((2, 2, 2, 2, 2, 2), True), ((9, 9, 9, 0), False), ((0, 0, 0, 5), True)],
)
def test_a_difference_is_told_as_it_stands_now(values: tuple[float, ...], real: bool) -> None:
    """Over all readings since it last changed; among nine others that are nothing."""
    others = [series(0.0, of=str(count)) for count in range(9)]
    found = differences_of([series(*values), *others])[0]

    assert found.real is real
    assert (found.low > 0) >= real


def test_of_a_difference_that_grows_the_last_reading_alone_speaks() -> None:
    """Readings on the way there tell nothing of how it stands now."""
    (found,) = differences_of([series(0, 3, 6, 9, 12, 15)])

    assert found.since == found.latest
    assert found.low < 15 < found.high


def test_differences_keep_false_ones_down() -> None:
    """Of simulated pages of twelve pairs that are alike, 7 in 100 tell one. Bound: with three of its errors."""
    rng = np.random.default_rng(8)
    pages = [[series(*rng.normal(0, 1, 6), of=str(count)) for count in range(12)] for _ in range(250)]

    assert np.mean([any(one.real for one in differences_of(page)) for page in pages]) <= 0.07 + 3 * 0.016


def test_simulated_horses_are_told_what_changed_and_little_else() -> None:
    """On few horses here, on many in `python -m tests.benchmarks`: false pages, power, and intervals that hold.

    Bounds: the aims, wider by what 60 horses leave to chance. Judgement.
    """
    found = told(Horses(60, seed=11))

    assert found.false_pages <= 0.12
    assert found.maybe == pytest.approx(found.maybe_said, abs=0.3)
    assert found.flare[2] >= 0.62
    assert found.still >= 0.8
    assert found.growing[4] >= 0.65
    assert found.held >= 0.88


@pytest.mark.parametrize("horses", [Horses(40, 2, together=0.5), Horses(40, 3, missing=0.3, gaps=(20, 80, 33) * 4)])
def test_feet_that_move_together_and_gaps_bring_no_more_false_claims(horses: Horses) -> None:
    """Errors that all feet share in a visit, uneven gaps and missing readings keep false pages down."""
    pages = horses.pages(horses.readings(), 9)

    assert np.mean([bool(page.real) for page in pages]) <= 0.2

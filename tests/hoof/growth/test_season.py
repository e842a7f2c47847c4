"""A season in growth, claimed only where the record holds one."""

from __future__ import annotations

from datetime import date, timedelta

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st
from scipy import integrate
from scipy.stats import norm

from recordgen.hoof.growth.rate import Observation
from recordgen.hoof.growth.season import EPOCH, YEAR_DAYS, Season, growing_days, season_of
from recordgen.hoof.tracing.foot_frame import Floats

Spans = list[tuple[date, date]]
START = date(2024, 2, 1)


def grown(
    count: int, season: Season | None, noise_mm: float, seed: int = 1, days: int = 42
) -> tuple[Spans, list[Observation]]:
    """Cycles of a horse that grows 0.26 mm a day over the year."""
    rng = np.random.default_rng(seed)
    spans = [(START + timedelta(days=days * n), START + timedelta(days=days * (n + 1))) for n in range(count)]
    growth = [0.26 * growing_days(season, *span) + rng.normal(0, noise_mm) for span in spans]
    return spans, [Observation(days, mm, 4) for mm in growth]


def test_a_clear_season_is_found() -> None:
    """Its swing and its slowest day, from two years of cycles."""
    found = season_of(*grown(18, Season(0.3, 20), 0.8))

    assert found is not None
    assert found.swing == pytest.approx(0.3, abs=0.06)
    assert abs(found.slowest - 20) <= 20
    assert found.slowest_day(2027).month in (1, 2)


def test_a_season_is_seldom_claimed_where_there_is_none() -> None:
    """In no more than about five horses of a hundred."""
    claimed = sum(season_of(*grown(18, None, 1.5, seed)) is not None for seed in range(200))

    assert claimed <= 14


def corrected_criterion(growth: Floats, *columns: Floats) -> float:
    """AICc of a fit without weights, by the likelihood of what it leaves. Source: Burnham & Anderson, section 2.4."""
    design = np.column_stack(columns)
    left = growth - design @ np.linalg.pinv(design) @ growth
    count, parameters = len(growth), len(columns) + 1
    likelihood = norm.logpdf(left, scale=np.sqrt(np.mean(left**2))).sum()
    return float(2 * parameters - 2 * likelihood + 2 * parameters * (parameters + 1) / (count - parameters - 1))


@pytest.mark.parametrize("count", [9, 14, 25])
def test_a_season_is_told_from_the_bar_of_the_criterion_on(count: int) -> None:
    """Where a wave explains growth better by 2 or more, by densities and integrals of scipy; below that it is not."""
    spans, noise = grown(count, None, 0.6)
    ends = [[(day - START).days * 2 * np.pi / YEAR_DAYS for day in span] for span in spans]
    waves = [np.array([integrate.quad(wave, *end)[0] for end in ends]) for wave in (np.cos, np.sin)]
    told, better = [], []
    for swing in np.linspace(0, 7, 36):
        growth = np.array([one.growth_mm for one in noise]) + swing * waves[0]
        days = np.full(count, 42.0)
        told.append(season_of(spans, [Observation(42, mm) for mm in growth]) is not None)
        better.append(corrected_criterion(growth, days) - corrected_criterion(growth, days, *waves))

    assert told == [gain >= 2 for gain in better]
    assert len(set(told)) == 2


@pytest.mark.parametrize(("count", "days"), [(7, 56), (8, 42)])
def test_less_than_eight_cycles_or_a_year_hold_no_season(count: int, days: int) -> None:
    """However clear it seems."""
    assert season_of(*grown(count, Season(0.5, 20), 0.01, days=days)) is None


def test_eight_cycles_of_a_whole_year_may_hold_one() -> None:
    """Where it is clear enough."""
    assert season_of(*grown(8, Season(0.5, 20), 0.1, days=46)) is not None


def test_growth_that_would_stand_still_is_no_season() -> None:
    """A swing of nine tenths is something else."""
    assert season_of(*grown(18, Season(0.9, 20), 0.1)) is None


@given(st.dates(date(2000, 1, 1), date(2040, 1, 1)), st.integers(0, 400), st.floats(0, 0.6), st.integers(0, 365))
def test_growing_days_are_the_integral_of_the_season(start: date, days: int, swing: float, slowest: int) -> None:
    """As numerical integration has it."""
    found = Season(swing, slowest).growing_days(start, start + timedelta(days=days))
    first = (start - EPOCH).days
    turn = 2 * np.pi / YEAR_DAYS
    expected, _ = integrate.quad(lambda day: 1 - swing * np.cos(turn * (day - slowest)), first, first + days)

    assert found == pytest.approx(expected, abs=1e-6)


def test_a_whole_year_has_its_own_days() -> None:
    """Summer gives what winter lacks."""
    season = Season(0.4, 15)

    assert season.growing_days(date(2026, 1, 1), date(2030, 1, 1)) == pytest.approx(1461)
    assert season.growing_days(date(2026, 1, 1), date(2026, 2, 1)) < 20
    assert season.growing_days(date(2026, 7, 1), date(2026, 8, 1)) > 42


def test_without_a_season_the_calendar_counts() -> None:
    """Every day alike."""
    assert growing_days(None, date(2026, 1, 1), date(2026, 2, 1)) == 31

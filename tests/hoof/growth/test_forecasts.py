"""Forecasts of earlier visits, and what came."""

from __future__ import annotations

from datetime import date

import pytest

from recordgen.hoof.growth.forecasts import Forecast, PastForecasts
from tests.support.horse_records import summary, toes, visit

VISITS = toes(
    ("2026-03-01", 90, 80),
    ("2026-04-12", 91, 80),
    ("2026-05-31", 92, 80),
    ("2026-07-12", 91, 80),
)


def test_each_visit_but_the_last_forecast_the_next() -> None:
    """By what was known then: the first by the usual interval, later ones by growth."""
    made = summary(*VISITS).past_forecasts.forecasts

    assert [(one.made.month, one.came.month) for one in made] == [(3, 4), (4, 5), (5, 7)]
    assert made[0].about == date(2026, 4, 12)
    assert made[0].days_late == 0
    assert made[1].days_late > 0


def test_growth_is_compared_with_what_was_expected_then() -> None:
    """Before any cycle that is what is usual for the class: 0.26 mm a day, over 42 days 10.9 mm; 11 had grown."""
    first = summary(*VISITS).past_forecasts.forecasts[0]

    assert first.expected_mm == pytest.approx(0.26 * 42)
    assert first.grown_mm == 11
    assert first.growth_error_mm == pytest.approx(11 - 0.26 * 42)


def test_a_later_visit_changes_no_earlier_forecast() -> None:
    """A forecast knows nothing of what came after it."""
    assert summary(*VISITS[:3]).past_forecasts.forecasts == summary(*VISITS).past_forecasts.forecasts[:2]


def test_means_are_of_absolute_errors() -> None:
    """Three days early and five late are four days out; growth not measured is left out of its mean."""
    day = date(2026, 3, 1)
    past_forecasts = PastForecasts(
        (
            Forecast(day, date(2026, 4, 12), date(2026, 4, 9), 11, 9),
            Forecast(day, date(2026, 4, 12), date(2026, 4, 17), 11, None),
        )
    )

    assert (past_forecasts.mean_days, past_forecasts.mean_mm) == (4, 2)


def test_a_new_horse_has_fared_in_no_way() -> None:
    """Neither of one visit nor of none is there anything to tell."""
    assert summary(VISITS[0]).past_forecasts.mean_days is None
    assert summary().past_forecasts == PastForecasts(())


def test_a_trim_without_lengths_is_a_day_without_growth() -> None:
    """The day is compared, the growth is not."""
    (made,) = summary(VISITS[0], visit("2026-04-14")).past_forecasts.forecasts

    assert (made.days_late, made.grown_mm, made.growth_error_mm) == (2, None, None)


def test_two_visits_of_one_day_forecast_nothing_between_them() -> None:
    """The evening was not forecast in the morning."""
    assert summary(*toes(("2026-03-01", 90, 82), ("2026-03-01", 82, 80))).past_forecasts.forecasts == ()

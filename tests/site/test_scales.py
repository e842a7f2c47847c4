"""Readings placed on short scales."""

from __future__ import annotations

from datetime import date, timedelta
from types import SimpleNamespace
from typing import Any, cast

import pytest

from recordgen.hoof.growth.forecasts import Forecast, PastForecasts
from recordgen.hoof.practice.work import MonthOfWork
from recordgen.site.drawings.scales import aim_scale, forecast_rows, month_bars
from tests.support.horse_records import summary, toes

DAY = date(2026, 10, 1)


@pytest.mark.parametrize(
    ("aim", "left", "width", "at"),
    [({"under": 78}, 0, 62.4, 80), ({"over": 110}, 80, 20, 72.73)],
)
def test_a_reading_stands_beside_its_aim(aim: dict[str, float], left: float, width: float, at: float) -> None:
    """A toe of 100 mm: beyond 78, or short of 110, with a quarter more room than the larger of both."""
    found = summary(*toes(("2026-10-01", None, 100)), aims=[{"measure": "toe_length", **aim}])
    scale = aim_scale(found.aims[0])

    assert (scale.held.left, scale.held.width, scale.at) == pytest.approx((left, width, at), abs=0.02)


def forecast(error: float | None) -> Forecast:
    """A forecast of 8 mm that was wrong by so much."""
    return Forecast(DAY, DAY, DAY + timedelta(days=3), 8, None if error is None else 8 + error)


def test_errors_of_growth_lie_about_the_middle() -> None:
    """3 mm less at the left end, as expected in the middle; what lies beyond is counted, what is unknown left out."""
    horse = cast(Any, SimpleNamespace(past_forecasts=PastForecasts(tuple(map(forecast, (-3.0, 0.0, 1.5, 10.0, None))))))
    (row,) = forecast_rows([horse])

    assert (row.at, row.beyond) == ((0, 50, 75), 1)


def test_a_horse_without_measured_forecasts_has_no_row() -> None:
    """A new horse, and one whose toes were not measured."""
    horses = [cast(Any, SimpleNamespace(past_forecasts=PastForecasts(made))) for made in ((), (forecast(None),))]

    assert forecast_rows(horses) == []


def test_months_are_as_high_as_their_work() -> None:
    """By the fullest month; without any work nothing is divided by nothing."""
    months = [MonthOfWork(DAY, visits, visits, visits) for visits in (4, 0, 8)]

    assert [bar.height for bar in month_bars(months)] == [50, 0, 100]
    assert [bar.height for bar in month_bars(months[1:2])] == [0]

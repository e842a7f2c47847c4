"""The growth still to come in a panel of toe length."""

from __future__ import annotations

from dataclasses import replace
from datetime import date, timedelta
from typing import Any

import pytest

from recordgen.cache.spelling import canonical
from recordgen.hoof.measures.readings import Reading
from recordgen.pictures.charts.forecast import BEST_SIZE, ForecastCone
from recordgen.pictures.charts.limits import shared_scale, shared_span
from recordgen.pictures.charts.panel_size import BOTTOM, LEFT, RIGHT, TOP
from recordgen.pictures.charts.through_time import toe_length_panel
from recordgen.records.models.names import FEET, Foot
from tests.support.svg import group_titled, middle_of, root_of, strokes_of
from tests.support.text_boxes import outside, touching

START, BEST, END = date(2026, 4, 26), date(2026, 6, 7), date(2026, 6, 21)
FORECAST = ForecastCone(START, 79, BEST, END, (0.2, 0.3, 0.4))
VISITS = [Reading(date(2026, 3, 15), 90, 81), Reading(START, 91, 79)]
SPAN, SCALE = (date(2026, 1, 1), date(2026, 12, 31)), (70.0, 110.0)


def at(day: date, value: float) -> tuple[float, float]:
    """Where a value of a day stands."""
    (first, last), (low, high) = SPAN, SCALE
    across = LEFT + (RIGHT - LEFT) * (day - first).days / (last - first).days
    return across, BOTTOM - (BOTTOM - TOP) * (value - low) / (high - low)


def panel(forecast: ForecastCone | None = FORECAST, foot: Foot = "left_fore") -> str:
    """A toe length panel on fixed axes with a forecast."""
    return toe_length_panel(foot, VISITS, (), SPAN, SCALE, "toe length", forecast=forecast)


def near(*points: tuple[float, float]) -> list[object]:
    """Points as a picture tells them, to a tenth of a unit."""
    return [pytest.approx(point, abs=0.11) for point in points]


def test_the_cone_opens_from_the_length_after_the_trim() -> None:
    """From 79 mm it spans 0.2 to 0.4 mm a day on its last day."""
    (cone,) = strokes_of(panel(), fill="var(--lf)")
    low, high = 79 + 0.2 * 56, 79 + 0.4 * 56

    assert cone == near(at(START, 79), at(END, high), at(END, low))


@pytest.mark.parametrize("foot", FEET)
def test_the_middle_is_a_dashed_line_in_the_colour_of_the_foot(foot: Foot) -> None:
    """It is lighter and finer dashed than what was measured, for every foot."""
    colour = {"left_fore": "lf", "right_fore": "rf", "left_hind": "lh", "right_hind": "rh"}[foot]
    (middle,) = strokes_of(panel(foot=foot), stroke_dasharray="1.8,2.4")

    assert strokes_of(panel(foot=foot), stroke_dasharray="1.8,2.4", stroke=f"var(--{colour})") == [middle]
    assert middle == near(at(START, 79), at(END, 79 + 0.3 * 56))


def test_the_best_day_is_marked_on_the_time_axis() -> None:
    """A small lozenge stands on the axis below its day."""
    (lozenge,) = strokes_of(panel(), fill="var(--ink)")
    across, down = zip(*lozenge, strict=True)

    assert (min(across) + max(across)) / 2 == pytest.approx(at(BEST, 0)[0], abs=0.11)
    assert (min(down) + max(down)) / 2 == pytest.approx(BOTTOM, abs=0.11)
    assert max(down) - min(down) == pytest.approx(BEST_SIZE * 2**0.5, abs=0.2)


def test_without_a_forecast_nothing_of_it_is_drawn() -> None:
    """A panel without one stays as it was."""
    assert strokes_of(panel(None), fill="var(--lf)") == strokes_of(panel(None), stroke_dasharray="1.8,2.4") == []


def test_a_forecast_tells_its_words_as_typed() -> None:
    """Pointing at the cone shows what was said of it."""
    picture = panel(replace(FORECAST, text="86 <b>to</b> 91 & more"))

    assert middle_of(group_titled(picture, "86 <b>to</b> 91 & more"))[0] > at(START, 0)[0]


@pytest.mark.parametrize(
    "change",
    [
        {"mm_per_day": (0.3, 0.2, 0.4)},
        {"mm_per_day": (0.2, float("nan"), 0.4)},
        {"start_mm": float("inf")},
        {"best": START - timedelta(1)},
        {"best": END + timedelta(1)},
    ],
)
def test_what_cannot_be_drawn_is_refused(change: dict[str, Any]) -> None:
    """Rates or days out of order and what is no number are told, not drawn."""
    with pytest.raises(ValueError, match=r"out of order|not a number"):
        replace(FORECAST, **change)


def test_a_forecast_of_one_day_and_one_rate_is_drawn() -> None:
    """With no days ahead the cone is a point; with one rate it is a line."""
    last = replace(FORECAST, best=START, end=START)
    sure = replace(FORECAST, mm_per_day=(0.3, 0.3, 0.3))

    assert set(strokes_of(panel(last), fill="var(--lf)")[0]) == {tuple(round(number, 1) for number in at(START, 79))}
    assert len(set(strokes_of(panel(sure), fill="var(--lf)")[0])) == 2


def test_shared_axes_hold_the_forecast() -> None:
    """The last day and the highest length lie inside the axes that all four feet share."""
    feet: dict[Foot, list[Reading]] = {"left_fore": VISITS}
    low, high = shared_scale(feet, more=FORECAST.reach)
    first, last = shared_span(feet, until=END)

    assert FORECAST.reach == pytest.approx((90.2, 101.4))
    assert low < 79
    assert high > 101.4
    assert first < date(2026, 3, 15) < END < last


def test_axes_without_a_forecast_are_as_before() -> None:
    """Nothing more to hold changes nothing."""
    feet: dict[Foot, list[Reading]] = {"left_fore": VISITS}

    assert shared_scale(feet, more=()) == shared_scale(feet)
    assert shared_span(feet, until=None) == shared_span(feet)


def test_words_stand_clear_and_the_picture_is_always_the_same() -> None:
    """The lozenge adds no words that could touch others; the same forecast gives the same bytes and one name."""
    assert panel() == panel()
    assert (touching(panel()), outside(panel())) == (touching(panel(None)), [])
    assert panel().count(' id="') == 1
    assert root_of(panel())[0].text == "toe length"
    assert canonical(FORECAST) == canonical(replace(FORECAST))

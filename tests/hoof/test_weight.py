"""Weight from a tape."""

from datetime import date
from typing import Any

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.hoof.weight import (
    FOUR_MEASURES,
    Weight,
    neck_ratio,
    round_area_cm2,
    sole_area_cm2,
    weight_kg,
    weight_of,
    weight_of_four_kg,
    weight_over_area,
)
from recordgen.records.models.visit import Visit
from tests.support.horse_records import horse, summary, visit


@given(st.floats(50, 280), st.floats(40, 280))
def test_twice_the_girth_is_four_times_the_weight(girth: float, length: float) -> None:
    """The girth counts squared, the length once."""
    once = weight_kg(girth, length)

    assert weight_kg(2 * girth, length) == pytest.approx(4 * once)
    assert weight_kg(girth, 2 * length) == pytest.approx(2 * once)


@pytest.mark.parametrize(("girth", "length"), [(0, 160), (180, 0), (-180, 160), (180, -160)])
def test_no_weight_without_a_girth_and_a_length(girth: float, length: float) -> None:
    """Zero and less are refused."""
    with pytest.raises(ValueError, match="above zero"):
        weight_kg(girth, length)


def test_weight_of_the_latest_visit_that_has_both() -> None:
    """A girth alone tells no weight; the visit before is taken, and its own length."""
    visits = [
        visit("2026-03-01", condition={"girth": 170, "length": 150}),
        visit("2026-06-01", condition={"girth": 180, "length": 165}),
        visit("2026-10-01", condition={"girth": 200, "henneke": 5}),
    ]

    found = summary(*visits).weight
    assert found is not None
    assert found.kg == weight_kg(180, 165)
    assert summary(visits[2]).weight is None


def estimated(*visits: Visit, **values: Any) -> Weight | None:
    """The weight of a horse with these visits."""
    return weight_of(horse(**values), visits)


def taken(day: str = "2026-10-01", **more: float) -> Visit:
    """A visit at which girth and length were taken, and perhaps more."""
    return visit(day, condition={"girth": 150, "length": 130, **more})


def test_an_estimate_tells_its_day_and_its_formula() -> None:
    """Of the latest visit that has both measures."""
    assert estimated(taken(), visit("2026-11-01", condition={"girth": 152})) == Weight(
        weight_kg(150, 130),
        date(2026, 10, 1),
        "girth and length",
        "Carroll & Huntington 1988, Equine Vet J 20(1):41-45",
    )


@pytest.mark.parametrize(
    ("values", "four"),
    [
        ({"kind": "pony", "height": 130}, True),
        ({"kind": "pony"}, False),
        ({"kind": "horse", "height": 160}, False),
    ],
)
def test_a_pony_is_estimated_from_four_measures_where_all_are_there(values: dict[str, Any], four: bool) -> None:
    """Its height stands in its file, its neck in the visit; the build of a horse is not recorded."""
    found = estimated(taken(neck=80), **values)
    without = estimated(taken(), **values)

    assert found is not None
    assert without is not None
    assert (found.made_from == "girth, length, height and neck") is four
    assert found.kg == (weight_of_four_kg("pony", 150, 130, 130, 80) if four else weight_kg(150, 130))
    assert without.made_from == "girth and length"


@pytest.mark.parametrize(
    "values", [{"kind": "donkey"}, {"kind": "mule"}, {"born": "2026-04-01"}, {"born": "2025-04-01"}]
)
def test_no_formula_without_a_source(values: dict[str, Any]) -> None:
    """Donkeys, mules, foals and yearlings are not estimated."""
    assert estimated(taken(neck=80), height=130, **values) is None


def test_no_weight_without_a_tape() -> None:
    """Neither from no visit, nor from a score."""
    assert estimated() is None
    assert estimated(visit("2026-10-01", condition={"henneke": 5})) is None


@pytest.mark.parametrize("build", FOUR_MEASURES)
def test_more_of_any_measure_is_more_weight(build: Any) -> None:
    """Each of the four counts upwards."""
    taken = [180.0, 165.0, 155.0, 100.0]
    bigger = [[value * 1.1 if count == at else value for count, value in enumerate(taken)] for at in range(4)]

    assert all(weight_of_four_kg(build, *more) > weight_of_four_kg(build, *taken) for more in bigger)


@pytest.mark.parametrize(
    "asked",
    [
        lambda: weight_of_four_kg("pony", 150, 130, 0, 80),
        lambda: neck_ratio(0, 150),
        lambda: sole_area_cm2(130, 0),
        lambda: round_area_cm2(0),
        lambda: weight_over_area(0, 130),
        lambda: weight_over_area(450, -1),
    ],
)
def test_nothing_is_made_of_nothing(asked: Any) -> None:
    """Zero and less are refused."""
    with pytest.raises(ValueError, match="above zero"):
        asked()


def test_a_wider_sole_carries_less_on_each_part() -> None:
    """Twice the area, half the weight on it."""
    assert weight_over_area(450, sole_area_cm2(130, 120)) == pytest.approx(
        2 * weight_over_area(450, sole_area_cm2(260, 120))
    )

"""The shared cases as Python tells them; tests/browser/test_trace_figures.py asks the screen's scripts the same."""

from __future__ import annotations

import pytest
import shapely

from recordgen.hoof.tracing.figures import landmarks, plain_values, tapped_points
from tests.tapped.cases import typed_again, written

CASES = written()


def test_there_are_twenty_cases_of_three_views() -> None:
    """Soles drawn smooth and straight, with and without a scale, turned and mirrored; sides and fronts."""
    assert len(CASES) == 20
    assert {case["view"] for case in CASES.values()} == {"sole", "side", "front"}


@pytest.mark.parametrize("name", CASES)
def test_python_tells_the_figures_of_the_table(name: str) -> None:
    """To three decimals; a change of the rules writes the table anew, and the scripts must follow."""
    case = CASES[name]

    assert plain_values(typed_again(case)) == pytest.approx(case["figures"], abs=2e-3)


@pytest.mark.parametrize("name", ["hind", "odd", "turned", "usual to the ridge"])
def test_the_area_is_that_of_a_general_library(name: str) -> None:
    """Of the line as drawn, in mm². Source: shapely.area."""
    tracing = typed_again(CASES[name])
    wall = landmarks(tracing, tapped_points(tracing))["wall"]

    assert shapely.Polygon(wall).area == pytest.approx(CASES[name]["figures"]["sole_area_mm2"], rel=1e-4)

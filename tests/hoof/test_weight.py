"""Weight from a tape."""

import pytest
from hypothesis import given
from hypothesis import strategies as st

from recordgen.hoof.weight import weight_kg
from tests.hoof.building import summary, visit


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

    assert summary(*visits).weight_kg == weight_kg(180, 165)
    assert summary(visits[2]).weight_kg is None

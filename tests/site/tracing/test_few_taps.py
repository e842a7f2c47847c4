"""A horse's page by a few taps: where no scale lay on the foot, and where the line left the usual outlines."""

from __future__ import annotations

from typing import Any

import pytest
from bs4 import BeautifulSoup

from tests.support.sole_shapes import FORE, Bulge, Sole
from tests.support.tracing_pages import section, side, text, with_tracings
from tests.support.typed_tracings import tapped

NO_SCALE: tuple[dict[str, Any], ...] = (
    {"scale": None},
    {"scale": {"from": [100, 950], "to": [700, 950], "length": 100, "lay": "on ground"}},
)


def page(tracing: dict[str, Any]) -> BeautifulSoup:
    """The part of the page of a horse with one tracing."""
    return section(with_tracings(("2026-10-14", {"left_fore": [tracing]})))


@pytest.mark.parametrize("scale", NO_SCALE)
def test_a_sole_tells_shares_alone(scale: dict[str, Any]) -> None:
    """And why it is not drawn."""
    found = page(tapped() | scale)

    assert "mirror match" in text(found)
    assert "sole width" not in text(found)
    assert "No scale lay on the foot, so it is not drawn to scale." in text(found)
    assert "Not traced: a scale on the foot." in text(found)


@pytest.mark.parametrize("scale", NO_SCALE)
def test_a_side_tells_angles_alone(scale: dict[str, Any]) -> None:
    """The toe angle stands, the length of the toe does not."""
    found = page(side() | scale)

    assert "toe angle, °" in text(found)
    assert "toe length, mm" not in text(found)


def test_a_sole_by_a_few_taps_is_drawn_as_any() -> None:
    """With its ring and its figures."""
    found = page(tapped())

    assert len(found.select(".rg-traced-view > div > figure.rg-traced svg")) == 2
    assert "sole width, mm" in text(found)


BULGED = Sole(bulges=(Bulge(at=-30, height=16, width=30),))


@pytest.mark.parametrize(("sole", "said"), [(FORE, False), (BULGED, True)])
def test_a_line_that_left_the_usual_outlines_is_told(sole: Sole, said: bool) -> None:
    """Beside its figures."""
    found = page(tapped(sole, 13, 9, model=1, hand_error=1.0))

    assert ("A tap lies off the usual outlines" in text(found)) == said

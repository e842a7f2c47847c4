"""A white line moved to the ridge of its picture: how far and which way, and that it moves with its taps."""

from __future__ import annotations

from typing import Any

import numpy as np
import pytest

from recordgen.hoof.tracing.figures import reckoned
from recordgen.records.models.lines.ridge import moved_to_ridge
from recordgen.records.models.tracing import RIDGE_PLACES, Tracing
from tests.support.typed_tracings import tapped

ANGLES = np.linspace(-2.6, 2.6, 361)
ROUND = np.stack([100 * np.sin(ANGLES), 100 * np.cos(ANGLES)], axis=-1)
WALL: dict[str, Any] = {"drawn": "smooth", "hand_error": 2.5, "model": 1}


@pytest.mark.parametrize("line", [ROUND, ROUND[::-1], ROUND * [1, -1], np.add(ROUND, [800, 600])])
@pytest.mark.parametrize("away", [4.0, -7.5])
def test_it_moves_outwards_whichever_way_the_line_runs(line: Any, away: float) -> None:
    """A part of a circle becomes one with another radius. Source: geometry."""
    middle = (line.min(axis=0) + line.max(axis=0)) / 2 if line is not ROUND else np.zeros(2)
    found = moved_to_ridge(line, [away] * RIDGE_PLACES)

    moved = np.hypot(*(found - line).T)
    assert moved == pytest.approx(np.full(361, abs(away)), abs=1e-9)
    outwards = ((found - line) * (line - middle))[180].sum()
    assert np.sign(outwards) == np.sign(away)


def test_between_its_places_it_changes_evenly() -> None:
    """From nothing at one end to 24 px at the other."""
    found = moved_to_ridge(ROUND, range(RIDGE_PLACES))

    assert np.hypot(*(found - ROUND).T) == pytest.approx(np.linspace(0, 24, 361), abs=1e-9)


def test_draws_are_moved_each_by_itself() -> None:
    """Many at once, as one by one."""
    draws = np.stack([ROUND, 1.1 * ROUND[::-1]])
    ridge = np.sin(np.arange(RIDGE_PLACES)).tolist()

    assert moved_to_ridge(draws, ridge) == pytest.approx(np.stack([moved_to_ridge(one, ridge) for one in draws]))


def test_the_wall_is_thinner_by_as_much_and_as_unsure_as_before() -> None:
    """The line 6 px further out is 1 mm of wall less; a ridge takes nothing off the error."""
    plain, drawn = (Tracing.model_validate(tapped(**WALL, ridge=ridge)) for ridge in (None, [6.0] * RIDGE_PLACES))
    before, after = reckoned(plain, plain.error_px()), reckoned(drawn, drawn.error_px())

    assert after["ring_toe_mm"].value == pytest.approx(before["ring_toe_mm"].value - 1, abs=0.03)
    assert after["ring_toe_mm"].sd == pytest.approx(before["ring_toe_mm"].sd, rel=0.1)
    assert after["sole_width_mm"] == before["sole_width_mm"]

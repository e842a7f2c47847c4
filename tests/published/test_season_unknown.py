"""The due window against the day that is truly due, in horses whose growth swings through the year."""

from __future__ import annotations

import pytest

from tests.support.simulated_season import Kind, held


@pytest.mark.parametrize("kind", [Kind(), Kind(tails=3)], ids=["normal errors", "heavy tails"])
def test_the_window_holds_the_true_day_whatever_the_season(kind: Kind) -> None:
    """With 3 to 7 cycles, a swing of 15 %, uneven gaps and missing readings: 96 of 100 by `python -m tests.benchmarks`.

    Here of 50 horses; without an error for the unknown season it was 83 of 100. Bound: 96 less two of its errors.
    """
    found = held(kind, horses=50, seed=6)

    assert found.window >= 0.9
    assert found.rate >= 0.9

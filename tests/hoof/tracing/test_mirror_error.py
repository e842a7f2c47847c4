"""The error told with a mirror match, against soles whose match is known."""

from __future__ import annotations

from dataclasses import replace

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.draws import redrawn
from recordgen.hoof.tracing.mirror import MATCHES, mirror_figures, unlowered
from tests.support.sole_shapes import FORE, HIND, Bulge, Sole, jittered

# The error of one pick, mm, and how often each sole is traced anew.
HAND_MM, TIMES, DRAWS = 0.3, 30, 50
SOLES = {
    "alike on both sides": FORE,
    "turned by 6 degrees": replace(HIND, turn=6),
    "lopsided by 3 %": replace(HIND, lopsided=0.03),
    "with a bulge": replace(FORE, bulges=(Bulge(60, 4),)),
}


def held(sole: Sole, times: int) -> dict[str, float]:
    """The share of tracings whose interval holds the true match, by figure."""
    points = sole.points()
    true, traced = mirror_figures(points), jittered(points, times, HAND_MM, seed=3)
    plain = mirror_figures(traced)
    inside: dict[str, list[bool]] = {name: [] for name in MATCHES}
    for count in range(times):
        drawn = mirror_figures(redrawn({name: spots[count] for name, spots in traced.items()}, HAND_MM, DRAWS))
        for name in MATCHES:
            value, sd = unlowered(float(plain[name][count]), float(drawn[name].std(ddof=1)), float(drawn[name].mean()))
            inside[name].append(bool(abs(value - true[name]) <= 1.96 * sd))
    return {name: float(np.mean(found)) for name, found in inside.items()}


@pytest.mark.parametrize("sole", SOLES)
def test_the_error_told_holds_the_true_match(sole: str) -> None:
    """In 86 to 100 of 100 tracings, most between 90 and 98; here so far as thirty tracings can tell.

    As picked, the error told held a perfect best match in none. Bounds: 90 to 98 less or more by two of their errors.
    """
    found = held(SOLES[sole], TIMES)

    assert min(found.values()) >= 0.8
    assert np.mean(list(found.values())) >= 0.86


def test_no_match_is_more_than_perfect() -> None:
    """The share the hand took is given back as far as 100 %."""
    assert unlowered(99.5, 0.2, 98.9) == (100, pytest.approx(np.hypot(0.2, 0.9 * 0.6)))
    assert unlowered(92.0, 0.5, 92.1) == (92.0, 0.5)
    assert repr(unlowered(99.5, 0.2, 98.9)[0]) == "100.0"

"""One sole laid over another by the frog."""

from __future__ import annotations

import numpy as np
import pytest
from scipy.spatial.transform import Rotation

from recordgen.hoof.tracing.foot_frame import FROG
from recordgen.hoof.tracing.registration import laid_onto
from tests.support.sole_shapes import FORE, jittered, moved

SOLE = FORE.points()


def test_a_moved_sole_is_laid_back() -> None:
    """Turned and shifted, every point comes to where it was."""
    found = laid_onto(moved(SOLE, degrees=37, shift=(80, -20)), SOLE)

    assert found is not None
    for name, spots in SOLE.items():
        assert found[name] == pytest.approx(spots, abs=1e-9)


def test_size_is_kept() -> None:
    """A foot that grew stays larger."""
    found = laid_onto(moved(SOLE, degrees=-12, scale=1.1), SOLE)

    assert found is not None
    assert np.ptp(found["wall"], axis=0) == pytest.approx(1.1 * np.ptp(SOLE["wall"], axis=0))


def test_the_turn_is_that_of_least_squares() -> None:
    """With an error on each landmark. Source: scipy, Rotation.align_vectors."""
    other = {name: spots[0] for name, spots in jittered(moved(SOLE, degrees=8), draws=1, sd=1).items()}
    found = laid_onto(other, SOLE)
    own, goal = (np.concatenate([one[name] for name in FROG]) for one in (other, SOLE))
    flat = [np.c_[one - one.mean(axis=0), np.zeros(3)] for one in (goal, own)]
    turn = Rotation.align_vectors(*flat)[0]

    assert found is not None
    back = turn.apply(np.c_[other["wall"] - own.mean(axis=0), np.zeros(len(other["wall"]))])[:, :2] + goal.mean(axis=0)
    assert found["wall"] == pytest.approx(back, abs=1e-4)


@pytest.mark.parametrize("missing", FROG)
def test_without_a_whole_frog_nothing_is_laid(missing: str) -> None:
    """On either side."""
    less = {name: spots for name, spots in SOLE.items() if name != missing}

    assert laid_onto(less, SOLE) is None
    assert laid_onto(SOLE, less) is None

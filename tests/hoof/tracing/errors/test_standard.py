"""Errors of size 1 for each landmark: of mean 0, of size 1, and none goes together with another by chance."""

from __future__ import annotations

import math

import numpy as np
import pytest

from recordgen.hoof.tracing.errors.standard import PLANE, SCALE_FROM, SCALE_TO, TILT, standard_errors
from recordgen.hoof.tracing.figures import reckoned
from recordgen.hoof.tracing.foot_frame import Floats
from recordgen.records.models.tracing import LANDMARKS, Tracing
from tests.support.sole_shapes import FORE
from tests.support.typed_tracings import tapped

DRAWS = 100
HAND_PX = 2.0


def columns(view: str, wall: int) -> Floats:
    """The errors of a view's landmarks, a column each; lines have so many points. view: as in LANDMARKS."""
    counts = {name: takes.least if takes.exactly else wall for name, takes in dict(LANDMARKS)[view].items()}  # type: ignore[index]
    counts |= dict.fromkeys((SCALE_FROM, SCALE_TO, TILT, PLANE), 1)
    return np.concatenate([standard_errors(name, DRAWS, count).reshape(DRAWS, -1) for name, count in counts.items()], 1)


@pytest.mark.parametrize(("view", "points"), [("sole", 13), ("side", 9), ("front", 9)])
def test_no_error_goes_together_with_another(view: str, points: int) -> None:
    """Whatever is tapped of a view, up to 13 points on each line."""
    found = columns(view, points)

    assert np.corrcoef(found.T) == pytest.approx(np.eye(found.shape[1]), abs=1e-9)
    assert found.mean(axis=0) == pytest.approx(0, abs=1e-9)
    assert found.std(axis=0, ddof=1) == pytest.approx(1)


def test_a_point_has_the_same_errors_however_many_there_are() -> None:
    """Of lines longer than there is room for, too."""
    assert np.array_equal(standard_errors("wall", DRAWS, 11), standard_errors("wall", DRAWS, 60)[:, :11])
    assert standard_errors("wall", DRAWS, 60).std(axis=0, ddof=1) == pytest.approx(1)
    assert standard_errors("any other", 2, 3).shape == (2, 3, 2)


def test_errors_are_normal() -> None:
    """Two thirds within 1, and 95 of 100 within 1.96. Source: the normal distribution, 68.3 and 95.0 %."""
    found = np.abs(columns("sole", 13))

    assert (found < 1).mean() == pytest.approx(0.683, abs=0.02)
    assert (found < 1.96).mean() == pytest.approx(0.95, abs=0.01)


def test_a_width_is_as_sure_as_its_points_and_its_scale() -> None:
    """On a drawing. Derived from: the delta method, two points and two ends of a scale off along one direction each."""
    tracing = Tracing.model_validate(tapped(FORE))
    assert tracing.scale is not None
    width = reckoned(tracing, HAND_PX)["frog_width_mm"]
    mm = HAND_PX * tracing.scale.mm_per_px
    expected = math.hypot(math.sqrt(2) * mm, math.sqrt(2) * mm * width.value / tracing.scale.length)

    assert width.sd == pytest.approx(expected, rel=0.01)

"""A small part of what `python -m tests.tapped.judged` looks at: soles of known size, tapped by a settled hand."""

from __future__ import annotations

import pytest

from tests.tapped.judged import Judged, judged, judged_upright

# Of 8 soles at least so many lie within the told error, where 95 of 100 should: 6 or more come out in all but six of a
# thousand runs then. Derived from: the binomial distribution.
SOLES, FEWEST = 8, 6 / 8


@pytest.fixture(scope="module", params=[7, 11])
def found(request: pytest.FixtureRequest) -> dict[str, Judged]:
    """Each figure of some usual soles, tapped at so many places of the wall, the camera square to them."""
    return judged(SOLES, request.param)


@pytest.mark.parametrize(
    ("name", "bias", "rms"),
    [
        ("sole_width_mm", 0.7, 1.5),
        ("sole_length_mm", 0.7, 1.5),
        ("sole_area_mm2", 130, 320),
        ("ring_toe_mm", 0.4, 0.8),
        ("ring_difference_mm", 0.4, 0.9),
    ],
)
def test_a_settled_hand_tells_the_size(found: dict[str, Judged], name: str, bias: float, rms: float) -> None:
    """No lean to one side, and the told error holds the truth. Bounds: Judgement, from a run of 40 soles."""
    assert abs(found[name].bias) < bias
    assert found[name].rms < rms
    assert found[name].held >= FEWEST


@pytest.mark.parametrize(("kind", "tilt_deg"), [("usual", 6), ("odd", 3), ("uneven", 0)])
def test_the_told_error_holds_the_truth_of_every_figure(kind: str, tilt_deg: float) -> None:
    """By seven taps, where the curve tells the most by itself, a camera off square, and soles that no table knows.

    Of all figures together nine tenths, and of each more than half. Bounds: Judgement, from a run of 40 soles.
    """
    told = judged(SOLES, 7, kind, tilt_deg).values()

    assert min(one.held for one in told) > 0.5
    assert sum(one.held for one in told) / len(told) >= 0.9


@pytest.mark.parametrize("view", ["side", "front"])
def test_a_foot_from_the_side_and_the_front_is_told_with_its_error(view: str) -> None:
    """The camera 3 degrees off. Bounds: Judgement, from a run of 40 feet."""
    told = judged_upright(SOLES, view, 3).values()

    assert min(one.held for one in told) > 0.5
    assert sum(one.held for one in told) / len(told) >= 0.9


def test_the_plain_line_through_few_taps_is_no_measure_of_the_ring_and_says_so() -> None:
    """With 7 and 5 it is off by about a millimetre, more than the usual outlines above are, and within its error."""
    told = judged(SOLES, 7, model=None)

    assert told["ring_toe_mm"].rms > 0.8
    assert sum(one.held for one in told.values()) / len(told) >= 0.9

"""How sure a share is, and whether two shares differ."""

from __future__ import annotations

import pytest

from recordgen.hoof.stable.prevalence import Share
from recordgen.hoof.stable.proportions import newcombe, stand, wilson


@pytest.mark.parametrize(
    ("here", "other", "expected"),
    [
        pytest.param((3, 9, 9), (0, 200, 200), "more", id="three horses"),
        pytest.param((2, 9, 9), (0, 200, 200), None, id="only two with it"),
        pytest.param((4, 4, 4), (0, 200, 200), "more", id="four looked at"),
        pytest.param((3, 3, 3), (0, 200, 200), None, id="only three looked at"),
        pytest.param((5, 5, 10), (0, 200, 200), "more", id="half of them looked at"),
        pytest.param((5, 5, 11), (0, 200, 200), None, id="fewer than half looked at"),
        pytest.param((9, 9, 9), (0, 200, 401), None, id="fewer than half of the others"),
        pytest.param((0, 9, 9), (4, 4, 4), "less", id="fewer"),
        pytest.param((0, 200, 200), (2, 9, 9), None, id="only two had it before"),
        pytest.param((5, 9, 9), (1, 8, 8), None, id="within chance"),
        pytest.param((9, 9, 9), None, None, id="nothing to compare with"),
    ],
)
def test_when_a_share_stands_apart(
    here: tuple[int, int, int], other: tuple[int, int, int] | None, expected: str | None
) -> None:
    """Enough horses, enough of them looked at, and a difference that chance does not explain."""
    assert stand(Share(*here), Share(*other) if other else None) == expected


@pytest.mark.parametrize(
    ("count", "of", "confidence"), [(0, 0, 0.95), (3, 2, 0.95), (-1, 2, 0.95), (1, 2, 1), (1, 2, 0)]
)
def test_no_interval_without_a_share(count: int, of: int, confidence: float) -> None:
    """None of none, more than all, and a confidence of nothing or everything are refused."""
    with pytest.raises(ValueError, match=r"is no share|lies between"):
        wilson(count, of, confidence)
    with pytest.raises(ValueError, match=r"is no share|lies between"):
        newcombe(1, 2, count, of, confidence)


@pytest.mark.parametrize("of", [1, 4, 9, 1000])
def test_none_and_all_reach_the_end(of: int) -> None:
    """Exactly: rounding carries neither past it."""
    low, high = wilson(0, of)

    assert (low, wilson(of, of)[1]) == (0, 1)
    assert 0 < high < 1
    assert wilson(of, of)[0] == pytest.approx(1 - high)


def test_a_difference_turned_round_is_the_same_difference() -> None:
    """Which of the two comes first changes the sign alone."""
    low, high = newcombe(6, 9, 1, 8)

    assert newcombe(1, 8, 6, 9) == pytest.approx((-high, -low))

"""What a picture can be drawn from: numbers that are numbers, and in order."""

from __future__ import annotations

import math
from itertools import pairwise


def in_order(what: str, *values: float) -> None:
    """Nothing, where the values are finite numbers none of which is less than the one before it.

    Raises ValueError, naming what they are, where they are not.
    """
    finite(what, *values)
    if any(last > now for last, now in pairwise(values)):
        raise ValueError(f"{what} out of order: {', '.join(f'{value:g}' for value in values)}")


def finite(what: str, *values: float) -> None:
    """Nothing, where all values are finite numbers.

    Raises ValueError, naming what they are, where one is not.
    """
    if not all(math.isfinite(value) for value in values):
        raise ValueError(f"{what} not a number that can be drawn: {', '.join(f'{value:g}' for value in values)}")

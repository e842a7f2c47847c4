"""Tell whether a horse's readings waver more than their error says, as with an animal that does not stand still."""

from __future__ import annotations

import math
import statistics
from collections.abc import Sequence
from datetime import date
from statistics import NormalDist
from typing import Protocol

# The error of the table stands unless so little chance alone would make the readings waver as much. Judgement.
SELDOM = 0.01
# A reading against the line between its neighbours: so many degrees of freedom each, since neighbours share readings.
# Derived from: the correlations of second differences, -2/3 and 1/6.
FREEDOM = 0.514
# The middle of squared standard normal errors, and its degrees of freedom for each reading. Derived from: the normal
# distribution; 0.37 is the efficiency of the median absolute deviation.
MIDDLE, MIDDLE_FREEDOM = 0.4549, 0.37 * FREEDOM


class Wavers(Protocol):
    """A series as it is asked; see `claims.Series`."""

    @property
    def kind(self) -> str:
        """The kind of measure."""

    @property
    def days(self) -> Sequence[date]:
        """The days of the readings."""

    @property
    def values(self) -> Sequence[float]:
        """The readings, in the unit of the measure."""

    @property
    def sds(self) -> Sequence[float]:
        """The error of each reading, in the unit of the measure."""

    @property
    def ways(self) -> Sequence[str]:
        """The way of measuring of each reading."""


def wavering(page: Sequence[Wavers]) -> list[float]:
    """The factor, 1 or more, by which the errors of each series must be multiplied.

    It is the larger of two: that of the other series of its kind, so that its own change cannot hide itself, and that
    of the horse, as the middle one of all its readings tells it. Both look at each reading less the line between its
    neighbours, which neither a step nor a trend lifts by much.
    Source: Gasser, Sroka & Jennen-Steinmetz 1986, Biometrika 73:625-633. From memory, not read.
    """
    squares = [_squares(one) for one in page]
    kinds: dict[str, tuple[float, int]] = {}
    for one, found in zip(page, squares, strict=True):
        total, count = kinds.get(one.kind, (0.0, 0))
        kinds[one.kind] = (total + math.fsum(found), count + len(found))
    horse = _of_horse([square for found in squares for square in found])
    return [max(horse, _of_kind(kinds[one.kind], found)) for one, found in zip(page, squares, strict=True)]


def _of_horse(squares: Sequence[float]) -> float:
    return _factor(statistics.median(squares) / MIDDLE, MIDDLE_FREEDOM * len(squares)) if squares else 1.0


def _of_kind(whole: tuple[float, int], own: Sequence[float]) -> float:
    total, count = whole[0] - math.fsum(own), whole[1] - len(own)
    return _factor(total / count, FREEDOM * count) if count else 1.0


def _factor(square: float, freedom: float) -> float:
    return math.sqrt(square) if square > _limit(freedom) else 1.0


def _limit(freedom: float) -> float:
    """The bound that a mean square with so many degrees of freedom seldom passes.

    Source: Wilson & Hilferty 1931, Proc Natl Acad Sci 17:684-688, the cube root of chi squared. From memory, not read.
    """
    spread = 2 / (9 * freedom)
    return float((1 - spread + NormalDist().inv_cdf(1 - SELDOM) * math.sqrt(spread)) ** 3)


def _squares(one: Wavers) -> list[float]:
    """Of each reading between two others in one way, the square of how far it lies off their line, in its errors."""
    return [
        _off_line(one, at) ** 2
        for at in range(1, len(one.values) - 1)
        if not one.ways or len(set(one.ways[at - 1 : at + 2])) == 1
    ]


def _off_line(one: Wavers, at: int) -> float:
    then, day, later = one.days[at - 1 : at + 2]
    share = (later - day).days / max((later - then).days, 1)
    values, sds = one.values, one.sds
    off = share * values[at - 1] + (1 - share) * values[at + 1] - values[at]
    return off / math.hypot(share * sds[at - 1], (1 - share) * sds[at + 1], sds[at])

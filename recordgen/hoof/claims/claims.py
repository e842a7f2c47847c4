"""The one rule by which a page tells changes: which are real, which may be, and how many may-bes chance alone makes."""

from __future__ import annotations

import math
from collections.abc import Sequence
from dataclasses import dataclass
from datetime import date
from typing import Generic, TypeVar

import numpy as np

from recordgen.hoof.claims.discoveries import FALSE_SHARE, discoveries
from recordgen.hoof.claims.estimate import Kind, estimate
from recordgen.hoof.claims.null_table import chance
from recordgen.hoof.claims.statistic import Shapes, log_ratio, shapes_of
from recordgen.hoof.claims.wavering import wavering

# Below the bar of the page a change is remarked on where chance alone would do so once in twenty. Common practice.
REMARKED_BELOW = 0.05
MONTH_DAYS = 365.25 / 12
# The ends of the interval told with a change. In simulated horses 94 to 96 in 100 of those told hold it.
LOW, HIGH = 0.025, 0.975

Of = TypeVar("Of")


@dataclass(frozen=True)
class Series(Generic[Of]):
    """The readings of one thing through the visits, oldest first.

    of: the thing, such as a measure of a foot. kind: things of one kind waver alike, such as one measure of all feet.
    sds: standard deviation of each reading, rounding counted, in the unit of the values. ways: how each was taken.
    """

    of: Of
    kind: str
    days: tuple[date, ...]
    values: tuple[float, ...]
    sds: tuple[float, ...]
    ways: tuple[str, ...] = ()


@dataclass(frozen=True)
class Claim(Generic[Of]):
    """A change of one thing.

    kind: a step between two visits, or a trend. since: the day of the first reading after a step, or of that at which a
    trend begins; before: the day of the reading before a step, the same day for a trend. latest: of the last reading.
    change, low, high: from before it to the last reading, with its 95 % interval, in the unit of the readings.
    chance: the probability that readings without a change speak as loudly. real: whether the page may tell it.
    """

    of: Of
    kind: Kind
    before: date
    since: date
    latest: date
    change: float
    low: float
    high: float
    chance: float
    real: bool

    @property
    def a_month(self) -> float:
        """The change a month, in the unit of the readings; of a trend."""
        return self.change / max((self.latest - self.since).days, 1) * MONTH_DAYS


@dataclass(frozen=True)
class Claims(Generic[Of]):
    """Claims of a page from all it looked at.

    real: the surest first; the share of false ones among them is held down. maybe: below that bar, to be read again.
    looked_at: how many series could show a change. by_chance: how many would be in `maybe` without any change.
    """

    real: tuple[Claim[Of], ...] = ()
    maybe: tuple[Claim[Of], ...] = ()
    looked_at: int = 0

    @property
    def not_told(self) -> int:
        """Tell how many series were looked at and not told."""
        return self.looked_at - len(self.real)

    @property
    def by_chance(self) -> float:
        """Tell how many remarks chance alone makes among those not told."""
        return REMARKED_BELOW * self.not_told


@dataclass(frozen=True)
class _Weighed(Generic[Of]):
    """A series with its shapes of change, their sizes in standard errors, and the chance."""

    series: Series[Of]
    shapes: Shapes
    sizes: np.ndarray
    chance: float


def claims_of(page: Sequence[Series[Of]], share: float = FALSE_SHARE) -> Claims[Of]:
    """Claims of a page: by the best step or trend over all visits of each series, and one bar for all of them.

    share: of false claims among those told, at most, on average. Series that could show no change, as of one reading
    or of one in each way, are not looked at, and raise no bar for others.
    """
    page = [one for one in page if one.values]
    factors = wavering(page)
    weighed = [_weigh(one, factor) for one, factor in zip(page, factors, strict=True)]
    looked_at = [one for one in weighed if len(one.sizes)]
    told = discoveries([one.chance for one in looked_at], share)
    real = [_claim(one, real=True) for one, tell in zip(looked_at, told, strict=True) if tell]
    maybe = [
        _claim(one, real=False)
        for one, tell in zip(looked_at, told, strict=True)
        if not tell and one.chance <= REMARKED_BELOW
    ]
    return Claims(_surest_first(real), _surest_first(maybe), len(looked_at))


def _weigh(one: Series[Of], factor: float) -> _Weighed[Of]:
    shapes = shapes_of([day.toordinal() for day in one.days], [factor * sd for sd in one.sds], one.ways)
    sizes = shapes.contrasts @ np.array(one.values, dtype=float)
    return _Weighed(one, shapes, sizes, float(chance(log_ratio(sizes), shapes.readings)))


def _claim(one: _Weighed[Of], real: bool) -> Claim[Of]:
    found = estimate(one.sizes, one.shapes)
    days = one.series.days
    return Claim(
        one.series.of,
        found.kind,
        days[found.start - 1] if found.kind == "step" else days[found.start],
        days[found.start],
        days[-1],
        found.change.mean,
        found.change.quantile(LOW),
        found.change.quantile(HIGH),
        one.chance,
        real,
    )


def _surest_first(claims: Sequence[Claim[Of]]) -> tuple[Claim[Of], ...]:
    return tuple(sorted(claims, key=lambda claim: (claim.chance, -math.fabs(claim.change))))

"""A rate of growth from cycles that are few or many: what is usual for the class, and what the cycles say, in one.

The cycles are the independent observations: growth of a cycle = rate x days + error of two readings and of life
between. No line is fitted through summed-up growth, since there the errors add up too.
"""

from __future__ import annotations

import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from functools import cache, cached_property

from recordgen.hoof.mixture import Mixture

# A cycle of six weeks; spreads are told for it.
USUAL_DAYS = 42
# Two readings of a millimetre's error each, and life between taken to make as much again. Assumed; the log-normal
# prior about it lets the cycles of a horse say otherwise.
SPREAD_IN_READINGS = 2.0
LOG_SPREAD_SD = 0.5
# The log-normal prior of the spread as this many values, from so many standard deviations below its middle to above.
_NODES, _REACH = 13, 3.0
LOW, HIGH = 0.025, 0.975


@dataclass(frozen=True)
class Observation:
    """Growth over some days, mm. readings: how many feet it is the mean of."""

    days: float
    growth_mm: float
    readings: int = 1

    @property
    def share_of_variance(self) -> float:
        """Its variance against that of one foot's cycle of six weeks: half from readings, half from the days."""
        return (1 / self.readings + self.days / USUAL_DAYS) / 2


@dataclass(frozen=True)
class Prior:
    """The prior of a rate before any cycle: mean and standard deviation, mm a day."""

    mm_per_day: float
    sd: float


@dataclass(frozen=True)
class Spread:
    """The prior of the standard deviation of a six weeks' cycle: values in mm, and their weights."""

    mm: tuple[float, ...]
    weights: tuple[float, ...]


@dataclass(frozen=True)
class Rate(Mixture):
    """The posterior of a rate, mm a day: a mixture of normal distributions, one for each spread.

    cycles: how many observations it rests on; with none it is the prior alone.
    """

    cycles: int

    @cached_property
    def low(self) -> float:
        """The lower end of the 95 % interval, mm a day."""
        return self.quantile(LOW)

    @cached_property
    def high(self) -> float:
        """The upper end of the 95 % interval, mm a day."""
        return self.quantile(HIGH)

    def less_sure(self, share: float) -> Rate:
        """The same with a further error, independent of the others. share: its SD as a share of the mean."""
        further = share * self.mean
        return Rate(tuple((weight, mean, math.hypot(sd, further)) for weight, mean, sd in self.parts), self.cycles)


@cache
def usual_spread(reading_sd_mm: float = 1.0) -> Spread:
    """The spread that is expected where a toe length is read with this standard deviation, mm."""
    steps = [_REACH * (2 * node / (_NODES - 1) - 1) for node in range(_NODES)]
    heights = [math.exp(-(step**2) / 2) for step in steps]
    middle = SPREAD_IN_READINGS * reading_sd_mm
    return Spread(
        tuple(middle * math.exp(LOG_SPREAD_SD * step) for step in steps),
        tuple(height / math.fsum(heights) for height in heights),
    )


def rate(cycles: Sequence[Observation], prior: Prior, spread: Spread) -> Rate:
    """The rate after some cycles: in closed form for each value of the spread, then weighed by how well each fits.

    Source: conjugate normal regression through the origin and its marginal likelihood, Gelman et al., Bayesian Data
    Analysis, 3rd ed., chapters 2 and 14. From memory, not read.
    """
    parts = list(_parts(cycles, prior, spread))
    top = max(fit for fit, _, _ in parts)
    weights = [math.exp(fit - top) for fit, _, _ in parts]
    total = math.fsum(weights)
    return Rate(
        tuple((weight / total, mean, sd) for weight, (_, mean, sd) in zip(weights, parts, strict=True)), len(cycles)
    )


def _parts(cycles: Sequence[Observation], prior: Prior, spread: Spread) -> Iterator[tuple[float, float, float]]:
    """For each spread: the logarithm of its weight, and mean and sd of the rate."""
    by_variance = [(one.days, one.growth_mm, 1 / one.share_of_variance) for one in cycles]
    days_days = math.fsum(days * days * share for days, _, share in by_variance)
    days_growth = math.fsum(days * growth * share for days, growth, share in by_variance)
    growth_growth = math.fsum(growth * growth * share for _, growth, share in by_variance)
    before = 1 / prior.sd**2
    for mm, weight in zip(spread.mm, spread.weights, strict=True):
        precision = before + days_days / mm**2
        mean = (before * prior.mm_per_day + days_growth / mm**2) / precision
        misfit = growth_growth / mm**2 + before * prior.mm_per_day**2 - precision * mean**2
        fit = math.log(weight) - len(cycles) * math.log(mm) - math.log(precision / before) / 2 - misfit / 2
        yield fit, mean, 1 / math.sqrt(precision)

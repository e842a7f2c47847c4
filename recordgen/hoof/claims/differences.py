"""Tell which things are truly apart from nothing, as two feet of a pair are from each other: one bar for a page."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from datetime import date
from typing import Generic

import numpy as np

from recordgen.hoof.claims.claims import HIGH, LOW, Of, Series
from recordgen.hoof.claims.discoveries import FALSE_SHARE, discoveries
from recordgen.hoof.claims.estimate import estimate
from recordgen.hoof.claims.null_table import chance
from recordgen.hoof.claims.statistic import levels_of, log_ratio, shapes_of

# What changed by so small a chance is looked at since then alone; a laxer bound would pick readings that are out.
# Judgement: with it 7 to 8 in 100 pages of pairs that are alike tell one.
SURELY_CHANGED = 0.002


@dataclass(frozen=True)
class DifferenceClaim(Generic[Of]):
    """The distance of one thing from nothing on the day of its last reading.

    size, low, high: with its 95 % interval, in the unit of the readings. since: the day of the first reading it rests
    on most; latest: of the last. chance: the probability that readings of nothing speak as loudly. real: whether the
    page may tell it.
    """

    of: Of
    since: date
    latest: date
    size: float
    low: float
    high: float
    chance: float
    real: bool


def differences_of(page: Sequence[Series[Of]], share: float = FALSE_SHARE) -> tuple[DifferenceClaim[Of], ...]:
    """Tell how far each series is from nothing now: over its readings since it last changed or the last ones, in order.

    page: each with one reading or more; what is measured in another way must not differ by that. share: of false ones
    among those told, at most, on average.
    """
    found = [_difference(one) for one in page]
    told = discoveries([one.chance for one in found], share)
    return tuple(replace(one, real=real) for one, real in zip(found, told, strict=True))


def _difference(series: Series[Of]) -> DifferenceClaim[Of]:
    one = _since_last_change(series)
    shapes = levels_of(one.sds)
    sizes = shapes.contrasts @ np.array(one.values, dtype=float)
    found, days = estimate(sizes, shapes), one.days
    size, low, high = found.change.mean, found.change.quantile(LOW), found.change.quantile(HIGH)
    by_chance = float(chance(log_ratio(sizes), shapes.readings))
    return DifferenceClaim(one.of, days[found.start], days[-1], size, low, high, by_chance, real=False)


def _since_last_change(one: Series[Of]) -> Series[Of]:
    """The readings since it surely changed: after a step, and of a trend the last one alone."""
    shapes = shapes_of([day.toordinal() for day in one.days], one.sds)
    sizes = shapes.contrasts @ np.array(one.values, dtype=float)
    if not len(sizes) or chance(log_ratio(sizes), shapes.readings) > SURELY_CHANGED:
        return one
    found = estimate(sizes, shapes)
    since = found.start if found.kind == "step" else len(one.values) - 1
    return replace(one, days=one.days[since:], values=one.values[since:], sds=one.sds[since:], ways=one.ways[since:])

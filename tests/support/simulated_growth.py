"""Simulated horses: does the interval of a rate hold the true one as often as it says?"""

from __future__ import annotations

import numpy as np

from recordgen.hoof.growth.rate import Observation, Prior, rate, usual_spread

PRIOR = Prior(0.26, 0.07)
COUNTS = (1, 2, 3, 5, 8, 12, 20)


def coverage(count: int, horses: int, seed: int, tails: float | None = None) -> tuple[float, float]:
    """The share of horses whose true rate lies in the 95 % interval after so many cycles, and its mean width, mm a day.

    Rates vary as the prior says. Cycles last five to eight weeks; both readings are out by a millimetre and rounded to
    one; life between adds as much again over six weeks. tails: degrees of freedom of heavy-tailed noise instead.
    """
    rng = np.random.default_rng(seed)
    held, width = 0, 0.0
    for true in rng.normal(PRIOR.mm_per_day, PRIOR.sd, horses):
        days = rng.integers(35, 57, count)
        read = true * days + _noise(days, rng, tails)
        found = rate(
            [Observation(int(long), float(grown)) for long, grown in zip(days, np.round(read), strict=True)],
            PRIOR,
            usual_spread(),
        )
        held += found.low <= true <= found.high
        width += found.high - found.low
    return held / horses, width / horses


def _noise(days: np.ndarray, rng: np.random.Generator, tails: float | None) -> np.ndarray:
    if tails:
        return np.asarray(1.5 * rng.standard_t(tails, len(days)))
    readings = rng.normal(0, 1, len(days)) - rng.normal(0, 1, len(days))
    return np.asarray(readings + rng.normal(0, np.sqrt(2 * days / 42)))

"""How often chance alone reaches a log ratio, simulated by drawing where changes are and weighing back.

The averaged likelihood ratio S is the density of horses that change over that of horses that do not, so that
P(S >= s without a change) = mean of 1/S over changing horses with S >= s. Few draws then tell even rare cases.
Source: importance sampling, From memory, not read: Siegmund 1976, Annals of Statistics 4:673-684.
"""

from __future__ import annotations

from collections.abc import Iterator

import numpy as np

from recordgen.hoof.claims.null_table import LOG_RATIOS, READINGS
from recordgen.hoof.claims.statistic import EXPECTED_SIZE, log_ratio, shapes_of

DRAWS = 100_000


def rows() -> Iterator[str]:
    """The rows of the table: for each number of readings -log10 of the chance, at each log ratio."""
    for count in READINGS:
        found = -np.log10(chances(count, np.array(LOG_RATIOS), DRAWS))
        yield " ".join(f"{max(value, 0):.3f}" for value in found)


def chances(count: int, least: np.ndarray, draws: int) -> np.ndarray:
    """P(log ratio >= least) without a change, for even gaps and even errors."""
    contrasts = shapes_of(range(count), [1.0] * count).contrasts
    rng = np.random.default_rng(count)
    chosen = rng.integers(len(contrasts), size=draws)
    readings = (
        rng.standard_normal((draws, count)) + (EXPECTED_SIZE * rng.standard_normal(draws))[:, None] * contrasts[chosen]
    )
    reached = log_ratio(readings @ contrasts.T)
    weight = np.exp(-reached)
    return np.array([weight[reached >= one].sum() / draws for one in least])

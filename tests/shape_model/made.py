"""Mean and modes of the outlines of simulated soles, in the polar form in which a few taps are drawn."""

from __future__ import annotations

import numpy as np

from recordgen.hoof.tracing.foot_frame import FROG, Floats, Points
from recordgen.hoof.tracing.own_outlines import RING_MODES, WALL_MODES, both_ways, modes_of, told
from tests.support.photographed_soles import any_sole

SOLES, SEED = 1500, 7
# The frog's points are tapped as well; SD of a tap, mm.
HAND_MM = 0.7


def table(soles: int = SOLES) -> tuple[Floats, Floats]:
    """Wall and ring: the mean and then the modes, each as large as its SD, (1 + modes, angles)."""
    lot = np.random.default_rng(SEED)
    outlines = [told(_tapped(any_sole(lot, odd=bool(number % 2)).points(), lot)) for number in range(soles)]
    walls, rings = (np.array([one[part] for one in outlines]) for part in (0, 1))
    return _modes(walls, WALL_MODES), _modes(rings, RING_MODES)


def _modes(held: Floats, count: int) -> Floats:
    own = both_ways(held)
    return modes_of(own.mean(axis=0), np.cov(own.T), count)


def _tapped(points: Points, lot: np.random.Generator) -> dict[str, Floats]:
    return dict(points) | {name: points[name] + lot.normal(0, HAND_MM, (1, 2)) for name in FROG}

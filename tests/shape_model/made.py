"""Mean and modes of the outlines of simulated soles, in the polar form in which a few taps are drawn."""

from __future__ import annotations

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.records.models.lines.shape_table import FIRST_DEG, STEP_DEG
from recordgen.records.models.lines.usual_shape import FROG, polar_of
from tests.support.photographed_soles import any_sole

SOLES, SEED = 1500, 7
# The frog's points are tapped as well; SD of a tap, mm.
HAND_MM = 0.7
WALL_MODES, RING_MODES = 9, 8
GRID = np.radians(np.arange(FIRST_DEG, -FIRST_DEG + 1, STEP_DEG))
# The size of an outline is its mean reach within this of the toe, rad.
SIZED_BY = 2.2
# Some soles end before the last angle of the table; there their lines run straight on, by so many mm.
LONGER_MM = np.arange(1.0, 26.0)


def table(soles: int = SOLES) -> tuple[Floats, Floats]:
    """Wall and ring: the mean and then the modes, each as large as its SD, (1 + modes, angles)."""
    lot = np.random.default_rng(SEED)
    outlines = [_told(any_sole(lot, odd=bool(number % 2)).points(), lot) for number in range(soles)]
    walls, rings = (np.array([one[part] for one in outlines]) for part in (0, 1))
    return _modes(_both_ways(walls), WALL_MODES), _modes(_both_ways(rings), RING_MODES)


def _both_ways(held: Floats) -> Floats:
    """Each outline and its mirror image, so that the table favours no side."""
    return np.concatenate([held, held[:, ::-1]])


def _told(points: Points, lot: np.random.Generator) -> tuple[Floats, Floats]:
    """One sole: the reach of its wall over the angle, and the ring inside it, in shares of its size."""
    polar = polar_of({name: points[name] + lot.normal(0, HAND_MM, (1, 2)) for name in FROG})
    assert polar is not None
    at, wall = polar.told(points["wall"])
    size = wall[np.abs(at) < SIZED_BY].mean()
    (at, wall), (line_at, line) = (polar.told(_longer(points[name])) for name in ("wall", "white_line"))
    outer = np.interp(GRID, at, wall)
    return outer / size, (outer - np.interp(GRID, line_at, line)) / size


def _longer(line: Floats) -> Floats:
    """A close line that runs straight on at both ends."""
    before, after = (end + _unit(end - inner) * LONGER_MM[:, None] for end, inner in (line[[0, 2]], line[[-1, -3]]))
    return np.concatenate([before[::-1], line, after])


def _unit(way: Floats) -> Floats:
    return np.asarray(way / np.hypot(*way))


def _modes(held: Floats, count: int) -> Floats:
    """The mean of some outlines and their largest modes. Source: principal components by numpy.linalg.eigh, LAPACK."""
    sizes, modes = np.linalg.eigh(np.cov(held.T))
    largest = (modes * np.sqrt(np.maximum(sizes, 0))).T[::-1][:count]
    signs = np.sign(largest[:, np.abs(largest).argmax(axis=1)].diagonal())[:, None]
    return np.concatenate([held.mean(axis=0)[None], largest * signs])

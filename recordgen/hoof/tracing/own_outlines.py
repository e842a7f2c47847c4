"""The usual outlines of a sole as a practice's own tracings tell them, in polar form about a middle by the frog."""

from __future__ import annotations

from collections.abc import Iterable, Iterator, Sequence

import numpy as np

from recordgen.hoof.tracing.figures import tapped_points
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.problems import Trouble
from recordgen.records.models.lines.drawn import drawn_lines
from recordgen.records.models.lines.shape_table import FIRST_DEG, SHIPPED, STEP_DEG, ShapeTable, own_table, text_of
from recordgen.records.models.lines.usual_shape import polar_of
from recordgen.records.models.tracing import Tracing
from recordgen.records.models.visit import Visit
from recordgen.sentences import say, say_counted

WALL_MODES, RING_MODES = 9, 8
GRID = np.radians(np.arange(FIRST_DEG, -FIRST_DEG + 1, STEP_DEG))
# The size of an outline is its mean reach within this of the toe, rad.
SIZED_BY = 2.2
# Some soles end before the last angle of the table; there their lines run straight on, by shares of the size.
LONGER = np.arange(1, 26) / 60
# From so many traced soles on a practice has a table of its own; and so many soles of ours weigh beside them, since
# lines drawn by a table lean towards it and vary less than feet do. Judgement.
FEWEST, OURS = 50, 50


def own_outlines(soles: Sequence[Tracing]) -> ShapeTable:
    """The table of a practice's own soles, with ours weighing as many as OURS. The same soles give the same table.

    Raises Trouble where there are too few.
    """
    if len(soles) < FEWEST:
        message = say_counted(
            "{count} traced sole with wall, white line and frog is here, {fewest} are needed",
            "{count} traced soles with wall, white line and frog are here, {fewest} are needed",
            len(soles),
            fewest=FEWEST,
        )
        raise Trouble(
            message,
            say("Trace {fewest} more; until then soles follow the table that there is", fewest=FEWEST - len(soles)),
        )
    held = [told(drawn_lines(tapped_points(one), one)) for one in soles]
    walls, rings = (np.array([one[part] for one in held]) for part in (0, 1))
    wall, ring = mixed(walls, SHIPPED.wall, WALL_MODES), mixed(rings, SHIPPED.ring, RING_MODES)
    return own_table(text_of(wall), text_of(ring))


def traced_soles(visits: Iterable[Visit]) -> Iterator[Tracing]:
    """The traced soles that tell an outline, one for each foot and visit, after the trim where that was traced."""
    for visit in visits:
        for foot in visit.feet.values():
            whole = [one for one in foot.tracings if one.wall and one.white_line and polar_of(tapped_points(one))]
            yield from sorted(whole, key=lambda one: one.moment)[:1]


def told(points: Points) -> tuple[Floats, Floats]:
    """One sole: the reach of its wall over the angle, and the ring inside it, in shares of its size.

    points: frog and drawn lines, (n, 2) each. Raises ValueError where the frog gives no axis.
    """
    polar = polar_of(points)
    if polar is None:
        raise ValueError("the frog of a traced sole gives no axis")
    at, wall = polar.coordinates(points["wall"])
    size = wall[np.abs(at) < SIZED_BY].mean()
    longer = [_longer(points[name], LONGER * size) for name in ("wall", "white_line")]
    (at, wall), (line_at, line) = map(polar.coordinates, longer)
    outer = np.interp(GRID, at, wall)
    return outer / size, (outer - np.interp(GRID, line_at, line)) / size


def _longer(line: Floats, steps: Floats) -> Floats:
    """A close line that runs straight on at both ends, by steps in its unit."""
    ends = ((line[0], line[2]), (line[-1], line[-3]))
    before, after = (end + _unit(end - inner) * steps[:, None] for end, inner in ends)
    return np.concatenate([before[::-1], line, after])


def _unit(way: Floats) -> Floats:
    return np.asarray(way / np.hypot(*way))


def modes_of(mean: Floats, spread: Floats, count: int) -> Floats:
    """A mean and the largest modes of a covariance, (1 + count, k). Source: numpy.linalg.eigh, LAPACK."""
    sizes, modes = np.linalg.eigh(spread)
    largest = (modes * np.sqrt(np.maximum(sizes, 0))).T[::-1][:count]
    signs = np.sign(largest[:, np.abs(largest).argmax(axis=1)].diagonal())[:, None]
    return np.concatenate([mean[None], largest * signs])


def both_ways(held: Floats) -> Floats:
    """Each outline and its mirror image, so that a table favours no side."""
    return np.concatenate([held, held[:, ::-1]])


def mixed(held: Floats, ours: Floats, count: int) -> Floats:
    """Mean and modes of a practice's outlines, (n, k), with OURS of ours beside them. Source: law of total variance."""
    own, share = both_ways(held), OURS / (len(held) + OURS)
    mean, apart = own.mean(axis=0), ours[0] - own.mean(axis=0)
    spread = (1 - share) * np.cov(own.T) + share * ours[1:].T @ ours[1:] + share * (1 - share) * np.outer(apart, apart)
    return modes_of(mean + share * apart, spread, count)

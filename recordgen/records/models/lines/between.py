"""Tell how an outline may run between its taps: drawn at random from the usual ones, wilder where the taps are odd.

A line through a few taps looks surer than it is, since errors of the taps alone leave it as smooth as before. So each
draw is of an outline that could be: it runs its own way between the taps and keeps to them.
"""

from __future__ import annotations

import hashlib
from functools import cache

import numpy as np

from recordgen.records.models.lines.shape_table import ANGLES, FIRST_DEG, STEP_DEG
from recordgen.records.models.lines.smooth import Floats, smooth
from recordgen.records.models.lines.usual_shape import (
    Astray,
    Families,
    Family,
    Points,
    Polar,
    along,
    covariance,
    distances_at,
    polar_of,
    size_of,
    usual_lines,
    weighed_size,
)

# How many taps the usual outlines weigh against those of this foot in telling how far it may stray. Judgement, tried
# on soles of kinds that the table never saw (`python -m tests.tapped.judged`).
WEIGHT_OF_USUAL = 4.0
# What any foot has besides, since the table's soles were simulated smooth: chips and waves too short for a few taps to
# tell, of the wall alone and of the ring. SD in shares of the size, how far they reach in degrees. Judgement, tried
# likewise.
ROUGH = {"wall": (0.01, 8.0), "white_line": (0.006, 8.0)}


def astray_by(points: Points, sd: float, draws: int, usual: Families) -> Astray:
    """Ways in which a sole may differ from the mean outline, (draws, k); the same on every run.

    points: what was tapped, (n, 2) each; sd: of one tap, in their unit. The further the taps lie from the usual
    outline, the further the draws stray. Source: Shah, Wilson & Ghahramani 2014, AISTATS, Student-t processes, by which
    a scale is told by the taps; from memory, not read.
    """
    wall, ring = oddness(points, sd, usual)
    return Astray(wall * _draw_outlines("wall", draws, usual), ring * _draw_outlines("white_line", draws, usual))


def oddness(points: Points, sd: float, usual: Families) -> tuple[float, float]:
    """Tell how much further wall and ring stray from the usual than usual soles do; 1 where nothing tells."""
    polar, lines = polar_of(points), usual_lines(points, sd, usual=usual)
    if polar is None or lines is None:
        return 1.0, 1.0
    at, far = polar.coordinates(points["wall"])
    size = weighed_size(at, far, sd, usual.wall)
    wall = _odd(at, far / size, sd / size, usual.wall)
    if "white_line" not in points:
        return wall, 1.0
    (line_at, line_far), (wall_at, wall_far) = polar.coordinates(points["white_line"]), polar.coordinates(lines["wall"])
    ring = (distances_at(wall_at, wall_far, line_at) - line_far) / size
    return wall, _odd(line_at, ring, sd / size, usual.ring)


def _odd(at: Floats, taps: Floats, sd: Floats, family: Family) -> float:
    apart = taps - along(family.mean, at)
    squares = float(apart @ np.linalg.solve(covariance(family, at, sd), apart))
    return float(np.sqrt(max(1.0, (WEIGHT_OF_USUAL + squares) / (WEIGHT_OF_USUAL + len(taps)))))


@cache
def _draw_outlines(name: str, draws: int, usual: Families) -> Floats:
    """Outlines of a family less its mean, (draws, k)."""
    family = usual.wall if name == "wall" else usual.ring
    seed = int.from_bytes(hashlib.sha256(f"astray {name}".encode()).digest()[:8], "big")
    lot = np.random.default_rng(seed)
    angle = FIRST_DEG + STEP_DEG * np.arange(ANGLES)
    apart = angle[:, None] - angle
    spread = [sd**2 * np.exp(-0.5 * (apart / reach) ** 2) for sd, reach in (family.rest, ROUGH[name])]
    rest = sum(spread) + 1e-12 * np.eye(ANGLES)
    modes = lot.standard_normal((draws, len(family.modes))) @ family.modes
    return np.asarray(modes + lot.standard_normal((draws, ANGLES)) @ np.linalg.cholesky(rest).T)


def smooth_astray(points: Points, lines: Points, astray: Astray, usual: Families) -> dict[str, Floats]:
    """Plain smooth lines as they may run between their taps, (..., m, 2); as they were without wall or frog.

    points, lines: the taps and the lines through them, (..., n, 2). Each draw is off as the plain line through the same
    places of an outline drawn at random is off that outline.
    """
    polar = polar_of(points) if "wall" in points else None
    if polar is None:
        return dict(lines)
    size = size_of(*polar.coordinates(points["wall"]), usual.wall)[..., None]
    outer = usual.wall.mean + astray.wall
    outlines = {"wall": outer, "white_line": outer - usual.ring.mean - astray.ring}
    return {name: _off(polar, points[name], lines[name], size, outlines[name]) for name in outlines if name in lines}


def _off(polar: Polar, taps: Floats, line: Floats, size: Floats, outline: Floats) -> Floats:
    angle = polar.turns(taps)
    through = smooth(polar.points_at(angle, size * along(outline, angle)))
    at = polar.turns(through)
    away = through - polar.middle[..., None, :]
    return np.asarray(line + polar.points_at(at, size * along(outline, at)) - polar.middle[..., None, :] - away)

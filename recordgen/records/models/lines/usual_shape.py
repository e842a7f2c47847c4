"""The outlines of a sole through a few taps as outlines usually run: the mean of many, bent as far as the taps ask.

Each outline is told in polar form about a middle behind the frog's point, so that taps may come in any order. Between
the taps it is the conditional mean of a normal distribution, whose mean and modes stand in `shape_table.py`.
Source: Rasmussen & Williams 2006, Gaussian Processes for Machine Learning, ch. 2; from memory, not read.
The tracing screen draws the same line in `site_templates/trace/lines.js`; shared cases hold both together.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass
from functools import cache
from typing import NamedTuple

import numpy as np

from recordgen.records.models.lines.shape_table import ANGLES, FIRST_DEG, SHIPPED, STEP_DEG, ShapeTable
from recordgen.records.models.lines.smooth import STRETCHES, Floats

Points = Mapping[str, Floats]
FROG = ("frog_apex", "frog_medial", "frog_lateral")
# The middle lies behind the frog's point by this share of the frog's length. Judgement.
BEHIND = 0.13
# How often the size of the outline is found anew by the weights that hang on it.
ROUNDS = 3
# A tap is off the curve from so many SD of a tap on; then the plain line through all taps is drawn. Judgement.
FURTHEST_OFF = 3.5


class Family(NamedTuple):
    """A family of outlines over the angle from the toe, in shares of their size.

    mean: (k,). modes: (m, k), each as large as its SD. rest: SD of what the modes leave out, and how far it reaches,
    in degrees.
    """

    mean: Floats
    modes: Floats
    rest: tuple[float, float]


class Astray(NamedTuple):
    """The way outlines differ from the mean: wall and ring over the table's angles, (..., k), in shares of the size."""

    wall: Floats
    ring: Floats


NEVER_ASTRAY = Astray(*np.zeros((2, ANGLES)))
WALL_REST, RING_REST = (0.011, 16.0), (0.007, 14.0)


@dataclass(frozen=True, eq=False)
class Families:
    """The families of walls and of rings, as one table tells them."""

    wall: Family
    ring: Family


@cache
def families_of(table: ShapeTable) -> Families:
    """The families of a table."""
    return Families(Family(table.wall[0], table.wall[1:], WALL_REST), Family(table.ring[0], table.ring[1:], RING_REST))


USUAL = families_of(SHIPPED)


class Polar(NamedTuple):
    """The middle of a sole and its axes, each (..., 2)."""

    middle: Floats
    toe: Floats
    lateral: Floats

    def coordinates(self, line: Floats) -> tuple[Floats, Floats]:
        """Angles from the toe, rad, rising, and distances from the middle, both (..., n)."""
        angle, far = self.turns(line), np.hypot(*np.moveaxis(line - self.middle[..., None, :], -1, 0))
        order = np.argsort(angle, axis=-1)
        return np.take_along_axis(angle, order, axis=-1), np.take_along_axis(far, order, axis=-1)

    def turns(self, line: Floats) -> Floats:
        """Angles from the toe, rad, in the order of the points, (..., n)."""
        away = line - self.middle[..., None, :]
        x, y = ((away * axis[..., None, :]).sum(axis=-1) for axis in (self.lateral, self.toe))
        return np.asarray(np.arctan2(x, y))

    def points_at(self, angle: Floats, far: Floats) -> Floats:
        """Points at angles and distances, (..., n, 2)."""
        lateral, toe = (axis[..., None, :] for axis in (self.lateral, self.toe))
        spots = (far * np.sin(angle))[..., None] * lateral + (far * np.cos(angle))[..., None] * toe
        return np.asarray(self.middle[..., None, :] + spots)


def usual_lines(
    points: Points, sd: float, astray: Astray = NEVER_ASTRAY, usual: Families = USUAL
) -> dict[str, Floats] | None:
    """Wall and white line by name, as many close points each, (..., m, 2); None without wall or frog.

    points: landmarks of a sole, (..., n, 2); leading axes are draws. sd: of one tap, in the unit of the points.
    astray: by how much each draw runs otherwise than the mean outline; near the taps the line keeps to them all the
    same. usual: the outlines to go by. Source: Wilson et al. 2021, J. Mach. Learn. Res. 22(105), Matheron's rule; from
    memory, not read.
    """
    polar = polar_of(points) if "wall" in points else None
    if polar is None:
        return None
    size, at, wall = _wall(polar, points["wall"], sd, astray.wall, usual.wall)
    lines = {"wall": polar.points_at(at, wall)}
    if "white_line" in points:
        told = _white_line(polar, points["white_line"], size, at, wall, sd, astray.ring, usual.ring)
        lines["white_line"] = polar.points_at(*told)
    return lines


def off_the_curve(points: Points, sd: float, usual: Families = USUAL) -> bool:
    """Tell whether a tap of the wall or the white line lies so far off that the outline is none of the usual ones.

    points: (n, 2) each; sd, usual: as in `usual_lines`. True as well where there is nothing to draw by.
    """
    polar, lines = polar_of(points), usual_lines(points, sd, usual=usual)
    if polar is None or lines is None:
        return True
    for name, line in lines.items():
        at, far = polar.coordinates(points[name])
        if np.abs(far - np.interp(at, *polar.coordinates(line))).max() > FURTHEST_OFF * sd:
            return True
    return False


def polar_of(points: Points) -> Polar | None:
    """The middle and the axes of a sole by its frog; None where it gives none. points: (..., n, 2)."""
    if any(name not in points for name in FROG):
        return None
    apex, medial, lateral = (points[name][..., 0, :] for name in FROG)
    axis = apex - (medial + lateral) / 2
    length = np.hypot(axis[..., 0], axis[..., 1])[..., None]
    if not np.all(length > 0):
        return None
    toe = axis / length
    across = np.stack([toe[..., 1], -toe[..., 0]], axis=-1)
    side = np.sign((across * (lateral - medial)).sum(axis=-1))[..., None]
    return Polar(apex - BEHIND * axis, toe, across * side) if np.all(side) else None


def _wall(polar: Polar, taps: Floats, sd: float, astray: Floats, walls: Family) -> tuple[Floats, Floats, Floats]:
    """The size of the wall, (...), and its angles and distances, both (..., m)."""
    at, far = polar.coordinates(taps)
    rough = size_of(at, far, walls)[..., None]
    far = far - rough * along(astray, at)
    size = weighed_size(at, far, sd, walls)
    places = _places(at[..., 0], at[..., -1])
    bent = size[..., None] * _bent(walls, at, far / size[..., None], sd / size, places)
    return size, places, bent + rough * along(astray, places)


def size_of(at: Floats, far: Floats, walls: Family) -> Floats:
    """The size of a wall with these distances at angles, (...), by least squares."""
    mean = along(walls.mean, at)
    return np.asarray((mean * far).sum(axis=-1) / (mean**2).sum(axis=-1))


def weighed_size(at: Floats, far: Floats, sd: float, walls: Family) -> Floats:
    """The same, each tap by how much it tells. Source: generalised least squares."""
    mean, size = along(walls.mean, at), size_of(at, far, walls)
    for _ in range(ROUNDS):
        both = np.stack([far, mean], axis=-1)
        weighed = np.linalg.solve(covariance(walls, at, sd / size), both)
        size = (mean * weighed[..., 0]).sum(axis=-1) / (mean * weighed[..., 1]).sum(axis=-1)
    return size


def _white_line(
    polar: Polar, taps: Floats, size: Floats, wall_at: Floats, wall: Floats, sd: float, astray: Floats, rings: Family
) -> tuple[Floats, Floats]:
    """Angles and distances of the white line: the wall less a ring, in shares of the wall's size as in the table."""
    at, far = polar.coordinates(taps)
    ring = (distances_at(wall_at, wall, at) - far) / size[..., None]
    places = _places(at[..., 0], at[..., -1])
    bent = _bent(rings, at, ring - along(astray, at), sd / size, places) + along(astray, places)
    return places, distances_at(wall_at, wall, places) - size[..., None] * bent


def _bent(family: Family, at: Floats, taps: Floats, sd: Floats, places: Floats) -> Floats:
    """The conditional mean at places, (..., m), given what was tapped at angles."""
    apart = (taps - along(family.mean, at))[..., None]
    weights = np.linalg.solve(covariance(family, at, sd), apart)
    return np.asarray(along(family.mean, places) + (_family_covariance(family, places, at) @ weights)[..., 0])


def covariance(family: Family, at: Floats, sd: Floats) -> Floats:
    """The covariance of taps at angles, (..., n, n), in shares of the size. sd: of one tap, the same, (...)."""
    return _family_covariance(family, at, at) + np.asarray(sd)[..., None, None] ** 2 * np.eye(at.shape[-1])


def _family_covariance(family: Family, one: Floats, other: Floats) -> Floats:
    """The covariance between angles, (..., a, b)."""
    modes = sum(along(mode, one)[..., :, None] * along(mode, other)[..., None, :] for mode in family.modes)
    sd, reach = family.rest
    apart = (one[..., :, None] - other[..., None, :]) / np.radians(reach)
    return np.asarray(modes + sd**2 * np.exp(-0.5 * apart**2))


def along(values: Floats, angle: Floats) -> Floats:
    """A table over the angle, (k,), or one for each draw, (..., k), at angles in rad, (..., n); held at its ends."""
    last = values.shape[-1] - 1
    place = np.clip((np.degrees(angle) - FIRST_DEG) / STEP_DEG, 0, last)
    below = np.minimum(place.astype(int), last - 1)
    if values.ndim == 1:
        low, high = values[below], values[below + 1]
    else:
        low, high = (np.take_along_axis(values, below + step, axis=-1) for step in (0, 1))
    return np.asarray(low + (place - below) * (high - low))


def _places(first: Floats, last: Floats) -> Floats:
    """Even angles from the first to the last, (..., m)."""
    share = np.arange(STRETCHES + 1) / STRETCHES
    return np.asarray(first[..., None] + share * (last - first)[..., None])


def distances_at(at: Floats, far: Floats, angle: Floats) -> Floats:
    """Distances at angles of a line that was told at even ones, (..., n); straight on beyond its ends.

    The white line ends some degrees nearer to the heel than the wall, where distances grow by half a mm in a degree.
    """
    first, last = at[..., :1], at[..., -1:]
    place = (angle - first) / (last - first) * STRETCHES
    below = np.clip(place.astype(int), 0, STRETCHES - 1)
    low, high = (np.take_along_axis(far, below + step, axis=-1) for step in (0, 1))
    return np.asarray(low + (place - below) * (high - low))

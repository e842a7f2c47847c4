"""Tell how nearly the outer wall is concentric with the white line, which follows the bone inside.

The measure of even is the line that runs everywhere equally far outside the white line, as far as the wall is thick on
the mean. A sound wall is not even: it is thicker at the toe, in front feet more than behind.
"""

from __future__ import annotations

from collections.abc import Mapping, Sequence

import numpy as np
import shapely
from numpy.typing import NDArray

from recordgen.hoof.tracing.errors.spread import Figure
from recordgen.hoof.tracing.errors.uneven import Size, Uneven
from recordgen.hoof.tracing.foot_frame import Floats
from recordgen.hoof.tracing.polygons import centroid, directions, reach

# Straight stretches in a quarter of a corner's circle: 12 mm about a corner are cut by less than 0.01 mm.
QUARTER_STRETCHES = 24
CONCENTRIC = "concentric_mm"


def even_thickness(angle_deg: Floats, thickness_mm: Floats) -> Floats:
    """The mean thickness of a ring over the angles that were traced on both sides, (...), mm.

    angle_deg: (k,), from the toe, in even steps. thickness_mm: (..., k).
    Raises ValueError where no angle was traced on both sides.
    """
    both = np.isin(angle_deg, -angle_deg)
    if not both.any():
        raise ValueError("no place of the ring was traced on both sides")
    return np.asarray(thickness_mm[..., both].mean(axis=-1))


def off_even(angle_deg: Floats, thickness_mm: Floats) -> Floats:
    """Tell how far the wall stands outside the line of equal distance, (..., k), mm; below 0 inside it.

    Arguments and errors as in `even_thickness`.
    """
    return np.asarray(thickness_mm - even_thickness(angle_deg, thickness_mm)[..., None])


def concentric_figures(
    angle_deg: Floats, thickness_mm: Floats, zones: Mapping[str, NDArray[np.bool_]]
) -> dict[str, Floats]:
    """The figures by name, each (...), mm.

    zones: by name, which of the angles belong to each, (k,). concentric_<zone>_mm: the mean of a zone off the line of
    equal distance, above 0 outside it. concentric_mm: the root of the mean square of these, each weighed by its
    angles; 0 where the wall is as thick all round. The hand's error alone gives an even wall some 0.2 mm, which
    `told_concentric` takes away.
    Raises ValueError as `even_thickness` does, or where there is no zone.
    """
    off = off_even(angle_deg, thickness_mm)
    means = np.stack([off[..., inside].mean(axis=-1) for inside in zones.values()], axis=-1)
    apart = {zone_figure(name): np.asarray(means[..., number]) for number, name in enumerate(zones)}
    return {CONCENTRIC: _mean_square(zones)(means)} | apart


def told_concentric(found: Sequence[Mapping[str, Floats]], zones: Mapping[str, NDArray[np.bool_]]) -> Figure | None:
    """Tell how far the foot itself is off concentric, with its error; None where the draws lack a zone.

    found: as concentric_figures gives them: as picked, and over the three kinds of draws, (draws,) each. zones: as
    there, of what was picked.
    """
    names = [zone_figure(name) for name in zones]
    if any(name not in one for one in found for name in names):
        return None
    return Uneven(*(np.stack([one[name] for name in names], axis=-1) for one in found)).figure(_mean_square(zones))


def zone_figure(name: str) -> str:
    """The name of the figure of a zone."""
    return f"concentric_{name}_mm"


def _mean_square(zones: Mapping[str, NDArray[np.bool_]]) -> Size:
    """Tells the root of the mean square of the zones' means, (..., zones), each weighed by its angles."""
    places = np.array([inside.sum() for inside in zones.values()], dtype=float)
    return lambda means: np.asarray(np.sqrt(means**2 @ (places / places.sum())))


def equal_distance(white_line: Floats, away_mm: float, angle_deg: Floats) -> Floats:
    """The line that runs everywhere so many mm outside a white line, at angles about its centroid, (k, 2), mm.

    white_line: (n, 2), in the foot's frame, closed at the heels by a straight line. Source: shapely.buffer.
    """
    grown = shapely.buffer(shapely.make_valid(shapely.Polygon(white_line)), away_mm, quad_segs=QUARTER_STRETCHES)
    edge = shapely.get_coordinates(shapely.get_exterior_ring(shapely.convex_hull(grown) if _parted(grown) else grown))
    middle = centroid(white_line)
    far = reach(edge, middle, angle_deg, closed=True)
    return np.asarray(middle + far[:, None] * directions(angle_deg))


def _parted(area: shapely.Geometry) -> bool:
    """Tell whether an area lies in parts, as that of a white line that crosses itself may."""
    return not isinstance(area, shapely.Polygon)

"""Tell how thick the wall stands between white line and outer edge, from heel round the toe to heel, and its flares."""

from __future__ import annotations

from collections.abc import Mapping
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray

from recordgen.hoof.tracing.concentric import CONCENTRIC, concentric_figures, told_concentric
from recordgen.hoof.tracing.errors.spread import Draws, Figure, spread
from recordgen.hoof.tracing.foot_frame import Floats, FootFrame, Points, frame_along, frame_of
from recordgen.hoof.tracing.polygons import centroid, directions, nearest, reach
from recordgen.records.models.names import ZONES, Zone

# Degrees from one place of the ring to the next.
STEP = 3
# Where each zone of the wall begins and ends, degrees from the toe. Common practice, no source.
ZONE_BOUNDS: dict[Zone, tuple[float, float]] = {
    "medial heel": (-180, -115),
    "medial quarter": (-115, -70),
    "medial toe quarter": (-70, -25),
    "toe": (-25, 25),
    "lateral toe quarter": (25, 70),
    "lateral quarter": (70, 115),
    "lateral heel": (115, 180),
}
# A zone is told where at least this many places of it were traced.
FEWEST_PLACES = 3

# What is clearly thicker, mm. Common practice, no source.
BULGE = 1.0
# The zones that are there on both sides.
PAIRED = ("heel", "quarter", "toe_quarter")

LINES = ("wall", "white_line")
NAMES = {zone: zone.replace(" ", "_") for zone in ZONES}
SIDES = ("ring_medial_mm", "ring_lateral_mm", "ring_difference_mm")
# The landmarks that each figure needs.
NEEDS: dict[str, tuple[str, ...]] = dict.fromkeys(
    [
        *(f"ring_{name}_mm" for name in NAMES.values()),
        *SIDES,
        *(f"flare_{name}_mm" for name in NAMES.values()),
        CONCENTRIC,
        *(f"concentric_{name}_mm" for name in NAMES.values()),
    ],
    LINES,
)


class WallRing(NamedTuple):
    """The thickness of the wall by angle about the centroid of the area inside the white line.

    angle_deg: (k,), every 3 degrees from the toe (0), medial below 0, lateral above. thickness_mm: (..., k), the
    shortest distance from the outer edge of the wall there to the white line.
    """

    angle_deg: Floats
    thickness_mm: Floats

    def within(self, zone: Zone) -> Floats:
        """The thickness at the places of one zone, (..., places)."""
        return self.thickness_mm[..., in_zone(self.angle_deg, zone)]


def ring(points: Points) -> WallRing | None:
    """The ring of a sole; None where wall or white line are missing, or never stand beside each other.

    points: landmarks of a sole, (..., n, 2), mm; leading axes are draws. Angles count from the direction of the frog's
    axis; without a frog, from that in which the foot lies before the ends of its wall, and the wall is then taken to
    run from the medial heel to the lateral one. Only angles at which both lines were traced in every draw are kept,
    so that the open heels are left out. A zone's mean follows from `Ring.within`.
    """
    if any(name not in points for name in LINES):
        return None
    frame = sole_frame(points)
    if frame is None:
        return None
    wall, white = (frame.seen(points[name]) for name in LINES)
    middle = centroid(white)
    angles = np.arange(-180.0 + STEP, 180.0 + STEP, STEP)
    outer, inner = (reach(line, middle, angles, closed=False) for line in (wall, white))
    traced = np.isfinite(outer + inner).reshape(-1, len(angles)).all(axis=0)
    if not traced.any():
        return None
    angles, outer = angles[traced], outer[..., traced]
    edge = middle[..., None, :] + outer[..., None] * directions(angles)
    return WallRing(angles, nearest(edge, white))


def ring_figures(points: Points) -> dict[str, Floats]:
    """The figures of the ring by name, each (...), mm, in the order of NEEDS; those that were not traced are left out.

    points: as in `ring`. ring_<zone>_mm: the mean thickness of a zone. ring_medial_mm and ring_lateral_mm: of a side,
    over the angles traced on both, the toe's zone left out; ring_difference_mm: lateral less medial. flare_<zone>_mm:
    the mean of what stands above the smooth curve through both sides, which `outline_flare.baseline` tells with its
    limits; below 0 the wall is thinner than it; told where the ring was traced to 90 degrees on both sides.
    concentric_mm and concentric_<zone>_mm: see `concentric.concentric_figures`.

    With straight lines between the picks the ring is some 0.2 mm too thick where the white line has 18 picks, 0.02
    where it has 60. Nothing here is a diagnosis.
    """
    found = ring(points)
    return _figures(found, _concentric(found))


def _figures(found: WallRing | None, concentric: Mapping[str, Floats]) -> dict[str, Floats]:
    if found is None:
        return {}
    figures = {**_zones("ring", found), **_sides(found), **_zones("flare", flares(found)), **concentric}
    return {name: figures[name] for name in NEEDS if name in figures}


def told_ring(plain: Points, draws: Draws) -> dict[str, Figure]:
    """The figures with their errors, `concentric_mm` as it is of the foot itself. plain: as picked, (n, 2)."""
    rings = [ring(points) for points in (plain, draws.shaken, draws.strayed, draws.seen)]
    concentric = [_concentric(one) for one in rings]
    told = spread(*(_figures(rings[at], concentric[at]) for at in (0, -1)))
    whole = told_concentric(concentric, _held_zones(rings[0])) if CONCENTRIC in told else None
    return told | ({CONCENTRIC: whole} if whole else {})


def flares(found: WallRing) -> WallRing | None:
    """The part of a ring above its baseline, as a ring, mm; None where that was not traced far enough."""
    if not far_enough(found.angle_deg):
        return None
    return found._replace(thickness_mm=above_baseline(found.angle_deg, found.thickness_mm))


def both_sides_bulge(found: WallRing) -> NDArray[np.bool_]:
    """Tell whether the wall seems pushed out on both sides alike, (...): then only an earlier visit can tell how far.

    True where the same zone of both sides stands 1 mm above the baseline, or the quarters of both sides are 1 mm
    thicker than the toe, which no sound wall's are. The 1 mm is common practice, no source. False does not mean that
    nothing bulges: a front foot whose quarters are both pushed out by 4 mm over 80 degrees still has an even ring.
    Source: Lungwitz & Adams 1913, A Text-Book of Horseshoeing, p. 47.
    """
    above = flares(found)
    if above is None:
        return np.zeros(found.thickness_mm.shape[:-1], dtype=bool)
    bulging = _both_over(found, "quarter", found.within("toe").mean(axis=-1))
    for place in PAIRED:
        bulging = bulging | _both_over(above, place, np.zeros(()))
    return bulging


def in_zone(angle_deg: Floats, zone: Zone) -> NDArray[np.bool_]:
    """Tell which of some angles belong to a zone; a bound belongs to the zone nearer to the toe."""
    low, high = sorted(abs(bound) for bound in ZONE_BOUNDS[zone])
    if zone == "toe":
        return np.abs(angle_deg) <= high
    side = -1 if zone.startswith("medial") else 1
    return (side * angle_deg > low) & (side * angle_deg <= high)


def sole_frame(points: Points) -> FootFrame | None:
    """The frame of a sole by its frog, else as it lies before the ends of its wall; None where neither gives one.

    points: as in `ring`; without a frog the wall is taken to run from the medial heel to the lateral one.
    """
    found = frame_of(points)
    if found or "wall" not in points:
        return found
    wall = points["wall"]
    first, last = wall[..., 0, :], wall[..., -1, :]
    return frame_along((first + last) / 2, centroid(wall), last - first)


def _both_over(found: WallRing, place: str, level: Floats) -> NDArray[np.bool_]:
    """Tell whether the means of one place on both sides stand clearly above a level; not where one was not traced."""
    sides = _zones("", found)
    means = [sides.get(f"_{side}_{place}_mm", np.array(np.nan)) for side in ("medial", "lateral")]
    return np.asarray(np.minimum(*means) > level + BULGE)


def _zones(kind: str, found: WallRing | None) -> dict[str, Floats]:
    if found is None:
        return {}
    inside = {zone: found.within(zone) for zone in ZONES}
    return {
        f"{kind}_{NAMES[zone]}_mm": np.asarray(places.mean(axis=-1))
        for zone, places in inside.items()
        if places.shape[-1] >= FEWEST_PLACES
    }


def _concentric(found: WallRing | None) -> dict[str, Floats]:
    if found is None or not far_enough(found.angle_deg):
        return {}
    return concentric_figures(found.angle_deg, found.thickness_mm, _held_zones(found))


def _held_zones(found: WallRing | None) -> dict[str, NDArray[np.bool_]]:
    """Tell which places of a ring lie in each zone that is told."""
    if found is None:
        return {}
    inside = {NAMES[zone]: in_zone(found.angle_deg, zone) for zone in ZONES}
    return {name: places for name, places in inside.items() if places.sum() >= FEWEST_PLACES}


def _sides(found: WallRing) -> dict[str, Floats]:
    both = np.isin(found.angle_deg, -found.angle_deg) & ~in_zone(found.angle_deg, "toe")
    if not both.any():
        return {}
    medial, lateral = (
        np.asarray(found.thickness_mm[..., both & side].mean(axis=-1))
        for side in (found.angle_deg < 0, found.angle_deg > 0)
    )
    return dict(zip(SIDES, (medial, lateral, lateral - medial), strict=True))


# Beyond these many spreads of the ring about the curve a place counts less: above sooner, as a bulge must not lift the
# curve; below later, as a chip out of the wall must not pull it down.
# Judgement, tried on smooth soles as `baseline` tells.
ABOVE, BELOW = 1.5, 2.5
# The least spread, mm: about the error of a thickness from two picks. Judgement.
LEAST_SPREAD = 0.25
# How fast the weight falls beyond them: with the fourth power, and how often it is weighed anew. Judgement.
FALL = 4
ROUNDS = 20
# The curve is told where the ring was traced this far on both sides, degrees from the toe. Judgement.
FAR_ENOUGH = 90.0


def far_enough(angle_deg: Floats) -> bool:
    """Tell whether the ring was traced far enough on both sides for a curve through it; angle_deg: (k,), from toe."""
    return bool(angle_deg.min() <= -FAR_ENOUGH and angle_deg.max() >= FAR_ENOUGH)


def above_baseline(angle_deg: Floats, thickness_mm: Floats) -> Floats:
    """The part of the thickness above the baseline, (..., k), mm; below 0 where the wall is thinner than that.

    angle_deg: (k,), from the toe. thickness_mm: (..., k).
    Raises ValueError where the ring was not traced far enough on both sides.
    """
    return thickness_mm - baseline(angle_deg, thickness_mm)


def baseline(angle_deg: Floats, thickness_mm: Floats) -> Floats:
    """The smooth curve through a ring that is the same on both sides, (..., k), mm; arguments as in above_baseline.

    Fitted by least squares, each time with less weight for what stands far off, above sooner than below.

    How well it knows a bulge, tried on smooth soles (toe 12 or 9.5 mm, quarters near 9) with an error of 0.5 mm:
    no bulge: each zone within 0.1 mm. One bulge, 2 to 8 mm high and 30 to 80 degrees wide: its zone's mean 3 % too
    small in the middle of the cases, 17 % at worst (wide ones), the other zones within 0.3 mm. A whole side pushed out,
    140 degrees wide by 4 mm: about half of it is seen, and the other side reads 1 mm too thin. Both quarters
    pushed out alike: 9 tenths of it where they are 50 degrees wide, a quarter where they are 80. A wall that is
    thick at the toe alone reads as a flare there. A chip of 6 mm reads too shallow, and others up to 0.6 mm too thick.
    """
    if not far_enough(angle_deg):
        raise ValueError("the ring was not traced far enough on both sides")
    turn = np.radians(angle_deg)
    curves = np.stack([np.ones_like(turn), np.cos(turn), np.cos(2 * turn)], axis=-1)
    fitted = _fitted(curves, thickness_mm, np.ones_like(thickness_mm))
    for _ in range(ROUNDS):
        fitted = _fitted(curves, thickness_mm, _weights(thickness_mm - fitted))
    return fitted


def _weights(above: Floats) -> Floats:
    """1 near the curve, and less beyond its limit above and below."""
    # 1.4826 makes of the median the standard deviation where errors are normal.
    spread = np.maximum(1.4826 * np.median(np.abs(above), axis=-1, keepdims=True), LEAST_SPREAD)
    limit = np.where(above > 0, ABOVE, BELOW) * spread
    return np.asarray((limit / np.maximum(np.abs(above), limit)) ** FALL)


def _fitted(curves: Floats, thickness: Floats, weight: Floats) -> Floats:
    """Weighted least squares, for all draws at once."""
    weighted = curves.T * weight[..., None, :]
    factors = np.linalg.solve(weighted @ curves, weighted @ thickness[..., None])
    return np.asarray((curves @ factors)[..., 0])

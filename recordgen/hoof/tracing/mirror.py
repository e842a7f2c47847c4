"""The mirror match of a sole: how far its outline covers its own mirror image.

Two figures tell a turned axis from a lopsided foot. Folded about the frog's axis, both match badly; folded about the
best axis, a foot whose frog merely stands askew matches well, and a lopsided one still does not.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
import shapely
from numpy.typing import NDArray

from recordgen.hoof.tracing.errors.spread import Draws, Figure
from recordgen.hoof.tracing.errors.uneven import Size, Uneven
from recordgen.hoof.tracing.foot_frame import FROG, Floats, Points, in_foot
from recordgen.hoof.tracing.polygons import centroid, directions, reach

MATCHES = ("mirror_match_percent", "best_mirror_match_percent")
NEEDS: dict[str, tuple[str, ...]] = dict.fromkeys((*MATCHES, "turn_deg"), ("wall", *FROG))

# The best axis is looked for within this of the frog's: a round outline matches as well folded aslant or crosswise.
# Judgement.
WIDEST_TURN = 20
# One ray per two degrees: folded about an axis at a whole degree, each ray falls on a ray. Judgement.
STEP = 2
RAYS = np.arange(0.0, 360.0, STEP)
# Rays to the lateral side from front to back, and to the medial one.
SIDES_DEG = np.concatenate([sign * np.arange(STEP / 2, 180.0, STEP) for sign in (1, -1)])


class Axis(NamedTuple):
    """A wall in the foot's frame, (..., n, 2), mm, and its best axis: a point, (..., 2), and its turn, (...), deg."""

    wall: Floats
    through: Floats
    turn: Floats


class Fold(NamedTuple):
    """An outline folded about an axis: the squares of its reach to each side, (..., k), mm²."""

    lateral: Floats
    medial: Floats

    @property
    def apart(self) -> Floats:
        """By how much the lateral side covers more, (..., k), mm²."""
        return self.lateral - self.medial

    @property
    def lost(self) -> Size:
        """Tells what a mirror match lacks, (...), in %, of how far both sides of such a size are apart, (..., k)."""
        whole = (self.lateral + self.medial).sum(axis=-1)

        def lost(apart: Floats) -> Floats:
            off = np.abs(apart).sum(axis=-1)
            return np.asarray(200 * off / (whole + off))

        return lost


def mirror_figures(points: Points) -> dict[str, Floats]:
    """The mirror match by name, each (...); nothing where wall or frog are missing.

    points: landmarks of a sole, (..., n, 2), mm; leading axes are draws.

    mirror_match_percent: what the outline and its mirror image about the frog's axis share, over what either covers.
    best_mirror_match_percent: the same about the best axis, or about the frog's where that one matches better still.
    turn_deg: from the frog's axis to the best axis through the centroid of the area, above 0 where that one leans to
    the lateral side at the toe; the best axis of all has that turn and may stand aside.

    Limits: the nearer an outline is to a circle, the less it has an axis, and turn_deg spreads widely over the draws.
    The bulges of a lopsided outline draw the best axis to themselves; near 20 degrees, where the search ends, turn_deg
    tells nothing but that. A frog that stands straight but beside the middle shows as a turn of 0, unequal shares of
    the area, and a good best match. The hand's error alone, 0.3 mm a pick, takes 1 % from a perfect outline's match,
    which `told_mirror` gives back.
    """
    best = best_axis(points)
    return {} if best is None else _matches(best)


def _matches(best: Axis) -> dict[str, Floats]:
    own = match_about(best.wall, np.zeros(2), np.zeros(()))
    other = match_about(best.wall, best.through, best.turn)
    return dict(zip(MATCHES, (100 * own, 100 * np.maximum(other, own)), strict=True)) | {"turn_deg": best.turn}


def told_mirror(plain: Points, draws: Draws) -> dict[str, Figure]:
    """The figures with their errors, the matches as they are of the foot itself. plain: landmarks as picked, (n, 2)."""
    axes = [best_axis(points) for points in (plain, draws.shaken, draws.strayed, draws.seen)]
    held = [axis for axis in axes if axis is not None]
    if len(held) < len(axes):
        return {}
    values = _matches(held[0])
    if not all(np.isfinite(value) for value in values.values()):
        return {}
    own, best = (
        _told_match(float(values[name]), [fold(axis) for axis in held])
        for name, fold in zip(MATCHES, (own_fold, best_fold), strict=True)
    )
    turn = Figure(float(values["turn_deg"]), float(np.nanstd(held[-1].turn, ddof=1)))
    return dict(zip(MATCHES, (own, max(own, best, key=lambda one: one.value)), strict=True)) | {"turn_deg": turn}


def _told_match(match: float, folds: list[Fold]) -> Figure:
    """A match as it is of the foot itself. folds: as picked, and over the three kinds of draws."""
    lost = folds[0].lost
    own = Uneven(*(fold.apart for fold in folds)).figure(lost)
    return Figure(min(match + float(lost(folds[0].apart)) - own.value, 100.0), own.sd)


def best_axis(points: Points) -> Axis | None:
    """The wall with its best axis; None where wall or frog are missing. points: as in mirror_figures."""
    foot = in_foot(points)
    if foot is None or "wall" not in foot:
        return None
    wall = foot["wall"]
    middle = centroid(wall)
    turn = best_turn(wall, middle)
    return Axis(wall, middle + best_aside(wall, middle, turn), turn)


def own_fold(axis: Axis) -> Fold:
    """The wall folded about the frog's axis."""
    middle = centroid(axis.wall) * [0, 1]
    return _folded(axis.wall - middle[..., None, :])


def best_fold(axis: Axis) -> Fold:
    """The wall folded about its best axis."""
    return _folded(_seen_along(axis.wall, axis.through, axis.turn))


def _folded(outline: Floats) -> Fold:
    """An outline, (..., n, 2), mm, folded about the axis upward through nought."""
    squares = reach(outline, np.zeros(2), SIDES_DEG, closed=True) ** 2
    return Fold(*np.split(squares, 2, axis=-1))


def _seen_along(outline: Floats, through: Floats, turn: Floats) -> Floats:
    """An outline with a point at nought and an axis upward; shapes and units as in match_about."""
    away = outline - through[..., None, :]
    ways = (directions(turn + 90), directions(turn))
    return np.stack([(away * way[..., None, :]).sum(axis=-1) for way in ways], axis=-1)


def match_about(outline: Floats, through: Floats, angle: Floats) -> Floats:
    """Intersection over union of a closed outline and its mirror image about an axis, 0 to 1, (...).

    outline: (..., n, 2), in the foot's frame. through: (..., 2), a point of the axis. angle: (...), degrees from the
    frog's axis to it, lateral positive. Not a number where the outline has no area.
    """
    own, other = _polygons(outline), _polygons(mirrored(outline, through, angle))
    shared = shapely.area(shapely.intersection(own, other))
    with np.errstate(divide="ignore", invalid="ignore"):
        return np.asarray(shared / (shapely.area(own) + shapely.area(other) - shared))


def mirrored(outline: Floats, through: Floats, angle: Floats) -> Floats:
    """The mirror image of an outline about an axis; shapes and units as in match_about."""
    axis = directions(angle)[..., None, :]
    away = outline - through[..., None, :]
    return np.asarray(through[..., None, :] + 2 * (away * axis).sum(axis=-1, keepdims=True) * axis - away)


def best_turn(outline: Floats, middle: Floats) -> Floats:
    """The angle of the axis through middle about which an outline matches best, within 20 degrees of the frog's.

    outline: (..., n, 2) and middle: (..., 2), in the foot's frame. The result: (...), degrees, lateral positive.

    Every degree is tried for every draw, so that no lesser peak can hold the search: on the squares of the reach of 180
    rays, what both halves share is a sum of smaller values. A parabola over the best three refines it to about 0.1
    degrees. This holds for outlines that each ray leaves once, as hooves are.
    """
    squares = np.nan_to_num(reach(outline, middle, RAYS, closed=True) ** 2)
    turns = np.arange(-WIDEST_TURN, WIDEST_TURN + 1)
    backwards = -np.arange(len(RAYS))
    folded = (np.minimum(squares, squares[..., (2 * turn // STEP + backwards) % len(RAYS)]) for turn in turns)
    shared = np.stack([both.sum(axis=-1) for both in folded], axis=-1)
    best = shared[..., 1:-1].argmax(axis=-1)
    before, at, after = (np.take_along_axis(shared, best[..., None] + step, axis=-1)[..., 0] for step in (0, 1, 2))
    bend = before - 2 * at + after
    aside = np.where(bend < 0, (before - after) / np.where(bend < 0, 2 * bend, 1), 0)
    return np.asarray(turns[best + 1] + np.clip(aside, -1, 1))


def best_aside(outline: Floats, middle: Floats, turn: Floats) -> Floats:
    """From middle to the axis with this turn about which an outline matches best, (..., 2), mm.

    Across the axis an outline and its mirror image share the most where half of its height has its middle on either
    side: the median of the middles between both sides, each ray weighed by the height it stands for.
    outline: (..., n, 2), middle: (..., 2), in the foot's frame; turn: (...), degrees.
    """
    across, angles = directions(turn + 90), SIDES_DEG[: len(SIDES_DEG) // 2]
    met = reach(_seen_along(outline, middle, turn), np.zeros(2), SIDES_DEG, closed=True)
    sides = np.split(np.nan_to_num(met), 2, axis=-1)
    aside = (sides[0] - sides[1]) * np.sin(np.radians(angles)) / 2
    high = np.abs(np.gradient((sides[0] + sides[1]) * np.cos(np.radians(angles)), axis=-1))
    order = np.argsort(aside, axis=-1)
    aside, high = np.take_along_axis(aside, order, axis=-1), np.take_along_axis(high, order, axis=-1)
    below = np.cumsum(high, axis=-1) < high.sum(axis=-1, keepdims=True) / 2
    middle_one = np.minimum(below.sum(axis=-1), below.shape[-1] - 1)[..., None]
    return np.asarray(np.take_along_axis(aside, middle_one, axis=-1) * across)


def _polygons(outline: Floats) -> NDArray[np.object_]:
    """Polygons of outlines; one that crosses itself, as a draw may, becomes the area that it covers."""
    made = np.asarray(shapely.polygons(outline))
    return made if np.all(shapely.is_valid(made)) else np.asarray(shapely.make_valid(made))

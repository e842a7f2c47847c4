"""The mirror match of a sole: how far its outline covers its own mirror image.

Two figures tell a turned axis from a lopsided foot. Folded about the frog's axis, both match badly; folded about the
best axis, a foot whose frog merely stands askew matches well, and a lopsided one still does not.
"""

from __future__ import annotations

import math

import numpy as np
import shapely
from numpy.typing import NDArray

from recordgen.hoof.tracing.foot_frame import FROG, Floats, Points, in_foot
from recordgen.hoof.tracing.polygons import centroid, directions, reach

MATCHES = ("mirror_match_percent", "best_mirror_match_percent")
NEEDS: dict[str, tuple[str, ...]] = dict.fromkeys((*MATCHES, "turn_deg"), ("wall", *FROG))

# Errors of the hand lower a match: of the loss that drawing them once more brings, a perfect match has lost 2.4 times
# already, one far from perfect once. Twice lies between, the rest counts as error. Derived from: the mean size of
# normal errors, once and with as much again; simulated soles hold it (tests/hoof/tracing/test_mirror_error.py).
LOST, UNSURE = 2.0, 0.9
# The same of what a camera takes that is not square, less sure, as most cameras are nearly so. Judgement, tried on
# soles photographed square, 3 and 6 degrees from it (`python -m tests.tapped.judged`).
LOST_BY_CAMERA, UNSURE_BY_CAMERA = 0.5, 0.5
# The best axis is looked for within this of the frog's: a round outline matches as well folded aslant or crosswise.
# Judgement.
WIDEST_TURN = 20
# One ray per two degrees: folded about an axis at a whole degree, each ray falls on a ray. Judgement.
STEP = 2
RAYS = np.arange(0.0, 360.0, STEP)


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
    the area, and a good best match. The hand's error alone, 0.3 mm a pick, takes 1 % from a
    perfect outline's match, which `unlowered` gives back.
    """
    foot = in_foot(points)
    if foot is None or "wall" not in foot:
        return {}
    wall = foot["wall"]
    middle = centroid(wall)
    turn = best_turn(wall, middle)
    through = middle + best_aside(wall, middle, turn)
    own, best = match_about(wall, np.zeros(2), np.zeros(())), match_about(wall, through, turn)
    return dict(zip(MATCHES, (100 * own, 100 * np.maximum(best, own)), strict=True)) | {"turn_deg": turn}


def told_match(match: float, by_hand: Floats, seen: Floats, usual: bool) -> tuple[float, float]:
    """A match without what hand and camera took from it, and its standard deviation, both in %.

    match: as picked. by_hand, seen: (draws,), with the hand's errors alone, and with the camera's too. usual: whether
    the draws are of outlines that usually run so. A line through a few taps is too even by about what they lose, while
    an even foot is as even as its line: what is told lies midway, and may be off to either.
    """
    middle, spread = float(np.nanmean(by_hand)), float(np.nanstd(by_hand, ddof=1))
    half = (match - middle) / 2
    found, sd = (match - half, math.hypot(spread, half)) if usual else unlowered(match, spread, middle)
    lost = max(middle - float(np.nanmean(seen)), 0)
    more = max(float(np.nanvar(seen, ddof=1)) - spread**2, 0)
    return min(found + LOST_BY_CAMERA * lost, 100.0), math.sqrt(sd**2 + more + (UNSURE_BY_CAMERA * lost) ** 2)


def unlowered(match: float, sd: float, redrawn: float) -> tuple[float, float]:
    """A match without what the hand took from it, and its standard deviation, both in %.

    match, sd: as picked, and over draws of the hand's error; redrawn: the mean of those draws.
    """
    lost = max(match - redrawn, 0)
    return min(match + LOST * lost, 100.0), math.hypot(sd, UNSURE * lost)


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
    axis, across = directions(turn), directions(turn + 90)
    angles = np.arange(STEP / 2, 180.0, STEP)
    away = outline - middle[..., None, :]
    seen = np.stack([(away * way[..., None, :]).sum(axis=-1) for way in (across, axis)], axis=-1)
    sides = [np.nan_to_num(reach(seen, np.zeros(2), sign * angles, closed=True)) for sign in (1, -1)]
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

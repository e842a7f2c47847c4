"""Data for the pictures of a traced sole and its ring: the foot's own frame, its flares, its best axis."""

from __future__ import annotations

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from recordgen.hoof.tracing.figures import Traced
from recordgen.hoof.tracing.foot_frame import FROG, Floats, Points
from recordgen.hoof.tracing.polygons import centroid, directions, reach
from recordgen.hoof.tracing.wall_thickness import (
    BULGE,
    NAMES,
    STEP,
    ZONE_BOUNDS,
    WallRing,
    both_sides_bulge,
    flares,
    ring,
    sole_frame,
)
from recordgen.pictures.shapes import Point
from recordgen.pictures.tracing.sole import TracedSole
from recordgen.pictures.tracing.zone_names import NamedZone, NamedZones
from recordgen.records.models.names import ZONES, Zone

Line = tuple[Point, ...]
# So many SD hold the truth 95 times of 100.
WITHIN = 1.96


@dataclass(frozen=True)
class RingShape:
    """A ring in degrees from the toe and mm, in stretches that were traced without a gap.

    band: polygons about the stretches, as far as the error reaches, 95 of 100. baseline: empty where it is not told.
    above: polygons between ring and baseline where a flare stands. on_sole: the same on the sole, mm in the foot's
    frame. both_sides: whether only an earlier visit can tell how far they stand out.
    """

    stretches: tuple[Line, ...]
    band: tuple[Line, ...]
    baseline: tuple[Line, ...]
    above: tuple[Line, ...]
    on_sole: tuple[Line, ...]
    both_sides: bool


def ring_shape(one: Traced) -> RingShape | None:
    """The ring of a traced sole; None where it was not traced, or no scale tells its mm."""
    found = ring(one.points) if one.tracing.tells_lengths else None
    if found is None:
        return None
    thickness, runs = found.thickness_mm, runs_of(found.angle_deg)
    stretches = tuple(_line_of(found.angle_deg[run], thickness[run]) for run in runs)
    band = tuple(_band(one, found.angle_deg[run], thickness[run]) for run in runs)
    over = flares(found)
    if over is None:
        return RingShape(stretches, band, (), (), (), False)
    base = thickness - over.thickness_mm
    hills = [hill for run in runs for hill in _hills(run, over.thickness_mm)]
    return RingShape(
        stretches,
        band,
        tuple(_line_of(found.angle_deg[run], base[run]) for run in runs),
        tuple(_polygon(_spots(found, hill, thickness), _spots(found, hill, base)) for hill in hills),
        tuple(on_sole(one.points, found, base, hill) for hill in hills),
        bool(both_sides_bulge(found)),
    )


def sole_shape(one: Traced, found: RingShape | None) -> TracedSole | None:
    """A traced sole in the foot's own frame; None where nothing gives one, or no scale its mm. found: its ring."""
    seen = in_own_frame(one)
    if not seen:
        return None
    return TracedSole(
        wall=plain_line(seen.get("wall")),
        white_line=plain_line(seen.get("white_line")),
        frog=frog_corners(seen),
        bars=bar_lines(seen),
        best_axis=_best_axis(one, seen),
        breakover=plain_line(seen["breakover"])[0] if "breakover" in seen else None,
        flares=found.on_sole if found else (),
    )


def named_zones(one: Traced, words: Mapping[Zone, tuple[str, str]]) -> NamedZones | None:
    """The zones that are told of a sole with their names, in the foot's own frame; None where none is.

    words: how each zone is called beside a side of the foot, and its whole name.
    """
    found, seen = ring(one.points) if one.tracing.tells_lengths else None, in_own_frame(one)
    if found is None or not seen:
        return None
    first, last = found.angle_deg.min(), found.angle_deg.max()
    told = [zone for zone in ZONES if f"ring_{NAMES[zone]}_mm" in one.figures]
    middles = [(max(ZONE_BOUNDS[zone][0], first) + min(ZONE_BOUNDS[zone][1], last)) / 2 for zone in told]
    bounds = [ZONE_BOUNDS[zone][0] for zone in ZONES if first < ZONE_BOUNDS[zone][0] < last]
    named = zip(told, _across(seen, middles), strict=True)
    return NamedZones(tuple(NamedZone(*words[zone], *across) for zone, across in named), tuple(_across(seen, bounds)))


def _across(seen: Points, angles: Sequence[float]) -> list[tuple[Point, Point]]:
    """White line and outer edge at angles about the ring's middle, degrees from the toe."""
    middle, turns = centroid(seen["white_line"]), np.array(angles)
    ends = [
        plain_line(middle + reach(seen[name], middle, turns, closed=False)[:, None] * directions(turns))
        for name in ("white_line", "wall")
    ]
    return list(zip(*ends, strict=True))


def in_own_frame(one: Traced) -> dict[str, Floats]:
    """The landmarks of a sole in the foot's own frame, mm; empty where nothing gives one, or no scale its mm."""
    frame = sole_frame(one.points) if one.tracing.tells_lengths else None
    return {name: frame.seen(spots) for name, spots in one.points.items()} if frame else {}


def frog_corners(seen: Points) -> Line:
    """The inner corner of a frog, its apex and its outer corner; empty where one of them was not traced."""
    corners = (FROG[1], FROG[0], FROG[2])
    return plain_line(np.concatenate([seen[name][:1] for name in corners])) if set(FROG) <= seen.keys() else ()


def bar_lines(seen: Points) -> tuple[Line, ...]:
    """The bars that were traced, the inner one first."""
    return tuple(plain_line(seen[name]) for name in ("bar_medial", "bar_lateral") if name in seen)


def _best_axis(one: Traced, seen: Points) -> tuple[Point, float] | None:
    turn = one.figures.get("turn_deg")
    if turn is None or not turn.beyond_error:
        return None
    return plain_line(centroid(seen["wall"])[None])[0], round(turn.value, 2)


def plain_line(spots: Floats | None) -> Line:
    """Points as plain numbers; pictures are kept by what they show, to a hundredth of a mm."""
    return () if spots is None else tuple((round(float(x), 2), round(float(y), 2)) for x, y in spots)


def _line_of(angles: Floats, mm: Floats) -> Line:
    return plain_line(np.stack([angles, mm], axis=-1))


def _band(one: Traced, angles: Floats, mm: Floats) -> Line:
    """A stretch as wide as its error: that of each zone at the zone's middle, and evenly between."""
    figures = {zone: one.figures.get(f"ring_{NAMES[zone]}_mm") for zone in ZONES}
    told = [(sum(ZONE_BOUNDS[zone]) / 2, figure.sd) for zone, figure in figures.items() if figure]
    if not told:
        return ()
    middles, sds = np.array(told).T
    wide = WITHIN * np.interp(angles, middles, sds)
    ends = [np.stack([angles, np.maximum(edge, 0)], axis=-1) for edge in (mm + wide, mm - wide)]
    return _polygon(*ends)


def runs_of(angles: Floats) -> list[NDArray[np.intp]]:
    """Tell which places follow each other without a gap; a place alone makes no line."""
    gaps = np.nonzero(np.diff(angles) > 1.5 * STEP)[0] + 1
    return [run for run in np.split(np.arange(len(angles)), gaps) if len(run) > 1]


def _hills(run: NDArray[np.intp], above: Floats) -> Iterator[NDArray[np.intp]]:
    """The stretches of a run that stand above the baseline and reach what is clearly thicker."""
    bounds = np.nonzero(np.diff(above[run] > 0))[0] + 1
    for part in np.split(run, bounds):
        if above[part].max() >= BULGE and len(part) > 1:
            yield part


def _spots(found: WallRing, at: NDArray[np.intp], mm: Floats) -> Floats:
    return np.stack([found.angle_deg[at], mm[at]], axis=-1)


def _polygon(outer: Floats, inner: Floats) -> Line:
    return plain_line(np.concatenate([outer, inner[::-1]]))


def on_sole(points: Points, found: WallRing, base: Floats, hill: NDArray[np.intp]) -> Line:
    """The outer share of the wall that stands above the baseline, along the rays by which the ring was taken."""
    frame = sole_frame(points)
    if frame is None:
        return ()
    wall, white = (frame.seen(points[name]) for name in ("wall", "white_line"))
    middle, angles = centroid(white), found.angle_deg[hill]
    outer, inner = (reach(line, middle, angles, closed=False) for line in (wall, white))
    share = base[hill] / found.thickness_mm[hill]
    rays = directions(angles)
    edge, bare = (middle + far[:, None] * rays for far in (outer, inner + share * (outer - inner)))
    # Between two rays the outline may have a corner, which belongs to what is shaded.
    return _polygon(_with_corners(edge, angles, wall, middle), bare)


def _with_corners(edge: Floats, angles: Floats, wall: Floats, middle: Floats) -> Floats:
    """Places on the outline with its own points between them, in order of their angles."""
    away = wall - middle
    turns = np.degrees(np.arctan2(away[:, 0], away[:, 1]))
    inside = (turns > angles[0]) & (turns < angles[-1])
    order = np.argsort(np.concatenate([angles, turns[inside]]), kind="stable")
    return np.asarray(np.concatenate([edge, wall[inside]])[order])

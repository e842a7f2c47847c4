"""Data for soles beside or over each other, over their photograph, and against the line of equal distance."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from recordgen.hoof.naming import Naming
from recordgen.hoof.tracing.concentric import equal_distance, even_thickness, off_even
from recordgen.hoof.tracing.figures import Traced, tapped_landmarks
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.polygons import centroid, directions, reach
from recordgen.hoof.tracing.registration import laid_onto
from recordgen.hoof.tracing.wall_thickness import NAMES, ZONE_BOUNDS, far_enough, ring
from recordgen.pictures.shapes import Point
from recordgen.pictures.tracing.off_concentric import OffConcentric
from recordgen.pictures.tracing.sole import TracedSole
from recordgen.pictures.tracing.sole_over import SoleOnPhoto
from recordgen.records.models.lines.drawn import drawn_lines
from recordgen.records.models.names import ZONES, Zone
from recordgen.site.tracing.soles import bar_lines, frog_corners, in_own_frame, on_sole, plain_line, runs_of
from recordgen.site.tracing.words import with_hand_error

# A stretch outside the line of equal distance is shaded where it reaches so far, mm. Judgement.
SHADED_FROM = 0.5


def sole_on_photo(one: Traced) -> SoleOnPhoto:
    """The lines of a sole in px of its picture."""
    seen = drawn_lines(tapped_landmarks(one.tracing), one.tracing)
    return SoleOnPhoto(
        (one.tracing.image.width, one.tracing.image.height),
        plain_line(seen.get("wall")),
        plain_line(seen.get("white_line")),
        frog_corners(seen),
        bar_lines(seen),
    )


def register_soles(first: Traced, last: Traced) -> tuple[TracedSole, TracedSole] | None:
    """Two soles in the frame of the first, the last laid onto it by the frog; None without scales or frogs."""
    both = [in_own_frame(one) for one in (first, last)]
    if not all(both):
        return None
    moved = laid_onto(both[1], both[0])
    return (_outline(both[0]), _outline(moved)) if moved else None


def off_shape(one: Traced, sole: TracedSole | None, naming: Naming) -> OffConcentric | None:
    """A sole against the line of equal distance; None where the ring was not traced far enough. sole: as drawn."""
    found, seen = ring(one.points) if one.tracing.tells_lengths else None, in_own_frame(one)
    if sole is None or found is None or not seen or not far_enough(found.angle_deg):
        return None
    even, off = float(even_thickness(*found)), off_even(*found)
    base = np.full(len(off), even)
    hills = [hill for run in runs_of(found.angle_deg) for hill in _outside(run, off)]
    return OffConcentric(
        sole,
        plain_line(equal_distance(seen["white_line"], even, found.angle_deg)),
        tuple(on_sole(one.points, found, base, hill) for hill in hills),
        tuple(_zone_labels(one, seen, naming)),
    )


def zones_outside(one: Traced) -> list[tuple[Zone, float]]:
    """The zones that stand outside the line of equal distance by more than the error, the farthest first, mm."""
    found = [(zone, one.figures.get(f"concentric_{NAMES[zone]}_mm")) for zone in ZONES]
    beyond = [(zone, figure.value) for zone, figure in found if figure and figure.value > 0 and figure.beyond_error]
    return sorted(beyond, key=lambda pair: -pair[1])


def _zone_labels(one: Traced, seen: Points, naming: Naming) -> list[tuple[str, Point]]:
    middle, wall = centroid(seen["white_line"]), seen["wall"]
    told = []
    for zone, _ in zones_outside(one):
        turn = np.array([sum(ZONE_BOUNDS[zone]) / 2])
        far = reach(wall, middle, turn, closed=False)
        if np.isfinite(far).all():
            words = with_hand_error(naming, one.figures[f"concentric_{NAMES[zone]}_mm"], 1)
            told.append((words, plain_line(middle + far[:, None] * directions(turn))[0]))
    return told


def _outside(run: NDArray[np.intp], off: Floats) -> Sequence[NDArray[np.intp]]:
    parts = np.split(run, np.nonzero(np.diff(off[run] > 0))[0] + 1)
    return [part for part in parts if len(part) > 1 and off[part].max() >= SHADED_FROM]


def _outline(seen: Points) -> TracedSole:
    return TracedSole(plain_line(seen.get("wall")), plain_line(seen.get("white_line")), frog_corners(seen))

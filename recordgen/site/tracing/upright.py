"""Data for the pictures of feet traced from the side or the front: upright on blank, or as in a photograph."""

from __future__ import annotations

from collections.abc import Mapping

import numpy as np

from recordgen.hoof.tracing.figures import Traced, tapped_landmarks
from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.upright import direction, level, mirrored
from recordgen.pictures.tracing.upright import TracedUpright, TracedWall
from recordgen.site.tracing.soles import plain_line

# The walls of each view, the first at the left on blank paper, with the figures of angle and gap.
WALLS: dict[str, tuple[tuple[str, str, str], ...]] = {
    "side": (("dorsal_wall", "toe_angle_deg", "dorsal_gap_mm"), ("heel_wall", "heel_angle_deg", "")),
    "front": (
        ("medial_wall", "medial_wall_angle_deg", "medial_gap_mm"),
        ("lateral_wall", "lateral_wall_angle_deg", "lateral_gap_mm"),
    ),
}
HAIRLINES = {"side": ("coronet_toe", "coronet_heel"), "front": ("coronet_medial", "coronet_lateral")}
PASTERN = "pastern_angle_deg"
# How far the straight line of the front wall goes on above the hairline, to be seen beside the pastern, by its length.
GOES_ON = 0.4


def upright_shape(one: Traced, words: Mapping[str, str], over: bool = False) -> TracedUpright | None:
    """A foot seen from the side or the front; None where there is nothing but its ground, or on blank no scale.

    words: by figure, what stands beside it: its angle, or how deep the wall is hollow. over: as it lies in its
    photograph, px; otherwise in mm with the ground level, and the toe or the inner side at the left.
    """
    view = one.tracing.view
    if not over and not one.tracing.tells_lengths:
        return None
    seen = tapped_landmarks(one.tracing) if over else _upright(one)
    ground = seen.get("ground")
    walls = tuple(_wall(one, seen, ground, words, *named) for named in WALLS[view] if named[0] in seen)
    pastern = seen.get("pastern")
    foot = TracedUpright(
        walls=walls,
        ground=plain_line(ground),
        pastern=plain_line(pastern),
        pastern_words=words.get(PASTERN, "") if ground is not None else "",
        hairline=plain_line(_join(seen, HAIRLINES[view])),
        marks=tuple((mark, plain_line(seen[mark])[0]) for mark in ("breakover", "heel_contact") if mark in seen),
        image=(one.tracing.image.width, one.tracing.image.height) if over else None,
        mm=_px_in_mm(one) if over else 1.0,
    )
    return foot if foot.points else None


def _px_in_mm(one: Traced) -> float:
    """Tell how many px of the picture are a millimetre; 0 where no scale lay on the foot."""
    scale = one.tracing.scale
    return round(1 / scale.mm_per_px, 3) if scale and one.tracing.tells_lengths else 0.0


def _upright(one: Traced) -> Points:
    """The landmarks in mm, y down, on level ground; the toe at the left, or the inner side."""
    foot = level(one.points) or one.points
    if one.tracing.view == "side":
        wall = foot.get("dorsal_wall")
        flip = wall is not None and bool(wall[-1, 0] > wall[0, 0])
    else:
        middles = [foot[name][:, 0].mean() for name, _, _ in WALLS["front"] if name in foot]
        flip = len(middles) == 2 and bool(middles[0] > middles[1])
    return {name: spots * [1, -1] for name, spots in mirrored(foot, np.array(flip)).items()}


def _wall(
    one: Traced, seen: Points, ground: Floats | None, words: Mapping[str, str], name: str, angle: str, gap: str
) -> TracedWall:
    line = seen[name]
    hollow = one.figures.get(gap)
    edged = hollow is not None and hollow.value > 0 and hollow.beyond_error
    along = _along(seen, ground, name)
    return TracedWall(
        line=plain_line(line),
        along=plain_line(along[None])[0],
        straight=plain_line(_straight(line, ground, GOES_ON if name == "dorsal_wall" else 0.0)),
        words=words.get(angle, ""),
        edge=plain_line(line[[0, -1]]) if edged else (),
        edge_words=words.get(gap, "") if edged else "",
    )


def _along(seen: Points, ground: Floats | None, name: str) -> Floats:
    """Along the ground to where the wall's angle is taken: behind the toe, or towards the other wall.

    A front wall and the walls of a front view run outward on their way down, so that this is the other way.
    """
    run = np.array([1.0, 0.0]) if ground is None else ground[1] - ground[0]
    wall = seen["dorsal_wall"] if name == "heel_wall" and "dorsal_wall" in seen else seen[name]
    if name in ("medial_wall", "lateral_wall"):
        others = [seen[other].mean(axis=0) for other, _, _ in WALLS["front"] if other in seen and other != name]
        inward = others[0] - wall.mean(axis=0) if others else wall[0] - wall[-1]
    else:
        inward = wall[0] - wall[-1]
    return np.asarray(run / np.hypot(*run) * (1 if run @ inward >= 0 else -1))


def _straight(wall: Floats, ground: Floats | None, goes_on: float) -> Floats | None:
    """The line nearest to a wall's points, from its first point or above to the ground; None where they never meet."""
    if ground is None:
        return None
    run, middle, floor = direction(wall), wall.mean(axis=0), ground[1] - ground[0]
    cross = run[0] * floor[1] - run[1] * floor[0]
    if abs(cross) < 1e-6 * np.hypot(*floor):
        return None
    away = ground[0] - middle
    down = (away[0] * floor[1] - away[1] * floor[0]) / cross
    up = (wall[0] - middle) @ run - goes_on * np.hypot(*(wall[-1] - wall[0]))
    return np.stack([middle + up * run, middle + down * run])


def _join(seen: Points, names: tuple[str, str]) -> Floats | None:
    return np.concatenate([seen[name] for name in names]) if all(name in seen for name in names) else None

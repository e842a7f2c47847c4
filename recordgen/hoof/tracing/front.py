"""The figures of a foot seen from the front: both walls against the ground and each other, and the hairline."""

from __future__ import annotations

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.upright import direction, gap, level, mirrored, rise, turned_from, upper_and_lower

SIDES = ("medial", "lateral")

# The landmarks that each figure needs; which side is which is told by the two walls.
NEEDS: dict[str, tuple[str, ...]] = {
    **{f"{side}_wall_angle_deg": ("ground", "medial_wall", "lateral_wall") for side in SIDES},
    **{f"{side}_flare_deg": ("ground", "medial_wall", "lateral_wall") for side in SIDES},
    **{f"{side}_gap_mm": ("ground", "medial_wall", "lateral_wall") for side in SIDES},
    **{f"{side}_wall_height_mm": ("ground", "medial_wall", "lateral_wall", f"coronet_{side}") for side in SIDES},
    "wall_angle_difference_deg": ("ground", "medial_wall", "lateral_wall"),
    "wall_height_difference_mm": ("ground", "medial_wall", "lateral_wall", "coronet_medial", "coronet_lateral"),
    "coronet_tilt_deg": ("ground", "medial_wall", "lateral_wall", "coronet_medial", "coronet_lateral"),
}


def front_figures(points: Points) -> dict[str, Floats]:
    """The figures of a front view by name, each (...), in the order of NEEDS; those that lack a landmark are left out.

    points: landmarks of a front view, (..., n, 2), mm, y up; leading axes are draws. Told by the names medial and
    lateral, so that left and right feet come out alike.

    *_wall_angle_deg: the wall to the ground, inside the hoof: 90 is upright, less leans out on its way down.
    *_flare_deg: the upper third less the part below, above 0 where the wall runs out below. *_gap_mm: as
    `upright.gap` tells. *_wall_height_mm: straight down from the hairline. wall_*_difference: lateral less
    medial. coronet_tilt_deg: of the hairline against the ground, above 0 where it is higher on the lateral side.
    """
    foot = level(points)
    if foot is None or not {f"{side}_wall" for side in SIDES} <= foot.keys():
        return {}
    middles = [foot[f"{side}_wall"][..., 0].mean(axis=-1) for side in SIDES]
    foot = mirrored(foot, middles[1] < middles[0])
    walls = {**_wall("medial", mirrored(foot, np.array(True))), **_wall("lateral", foot)}
    found = {**walls, **_differences(walls), **_hairline(foot)}
    return {name: found[name] for name in NEEDS if name in found}


def _wall(side: str, foot: Points) -> dict[str, Floats]:
    """The figures of one wall, which stands to the right."""
    wall = foot[f"{side}_wall"]
    found = {
        f"{side}_wall_angle_deg": 180 - rise(-direction(wall)),
        f"{side}_gap_mm": gap(wall, np.array([1.0, 0.5])),
        f"{side}_flare_deg": turned_from(*upper_and_lower(wall)),
    }
    if f"coronet_{side}" in foot:
        found[f"{side}_wall_height_mm"] = foot[f"coronet_{side}"][..., 0, 1]
    return found


def _differences(walls: dict[str, Floats]) -> dict[str, Floats]:
    """Lateral less medial, whose error is less than that of two pictures: ground and scale count once."""
    found = {}
    for figure, name in (
        ("wall_angle_deg", "wall_angle_difference_deg"),
        ("wall_height_mm", "wall_height_difference_mm"),
    ):
        if all(f"{side}_{figure}" in walls for side in SIDES):
            found[name] = walls[f"lateral_{figure}"] - walls[f"medial_{figure}"]
    return found


def _hairline(foot: Points) -> dict[str, Floats]:
    if not {f"coronet_{side}" for side in SIDES} <= foot.keys():
        return {}
    rises = foot["coronet_lateral"][..., 0, :] - foot["coronet_medial"][..., 0, :]
    return {"coronet_tilt_deg": np.degrees(np.arctan2(rises[..., 1], rises[..., 0]))}

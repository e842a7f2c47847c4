"""The figures of a foot seen from the side: angles to the ground, the front wall's shape, lengths."""

from __future__ import annotations

import numpy as np

from recordgen.hoof.tracing.foot_frame import Floats, Points
from recordgen.hoof.tracing.upright import direction, gap, level, mirrored, rise, turned_from, upper_and_lower

# The landmarks that each figure needs.
NEEDS: dict[str, tuple[str, ...]] = {
    "toe_angle_deg": ("ground", "dorsal_wall"),
    "heel_angle_deg": ("ground", "dorsal_wall", "heel_wall"),
    "pastern_angle_deg": ("ground", "dorsal_wall", "pastern"),
    "toe_heel_difference_deg": ("ground", "dorsal_wall", "heel_wall"),
    "hoof_pastern_axis_deg": ("ground", "dorsal_wall", "pastern"),
    "dorsal_flare_deg": ("ground", "dorsal_wall"),
    "dorsal_gap_mm": ("ground", "dorsal_wall"),
    "toe_length_mm": ("ground", "dorsal_wall"),
    "heel_length_mm": ("ground", "dorsal_wall", "heel_wall"),
    "heel_height_mm": ("ground", "dorsal_wall", "coronet_heel"),
    "coronet_angle_deg": ("ground", "dorsal_wall", "coronet_toe", "coronet_heel"),
    "support_length_mm": ("ground", "dorsal_wall", "toe_tip", "heel_contact"),
    "side_breakover_mm": ("ground", "dorsal_wall", "toe_tip", "breakover"),
}


def side_figures(points: Points) -> dict[str, Floats]:
    """The figures of a side view by name, each (...), in the order of NEEDS; those that lack a landmark are left out.

    points: landmarks of a side view, (..., n, 2), mm, y up; leading axes are draws. All is told against the ground
    line, and the same whether the toe points left or right.

    toe_angle_deg, heel_angle_deg, pastern_angle_deg: to the ground, of the straight line nearest to the picked points.
    toe_heel_difference_deg: toe less heel. hoof_pastern_axis_deg: toe less pastern; below 0 the pastern is steeper,
    which the trade calls broken back, above 0 the hoof is, which it calls broken forward.
    Source: USDA, Special Report on Diseases of the Horse, shoeing chapter, Fig. 6.
    dorsal_flare_deg: the front wall's upper third less the part below, above 0 where it runs out flatter below.
    dorsal_gap_mm: as `upright.gap` tells. toe_length_mm: from the hairline at the toe (else the wall's first
    point) to the tip of the toe (else its last point); heel_length_mm: along the heel wall; heel_height_mm: straight
    down from the hairline at the heel. coronet_angle_deg: of the hairline, above 0 where it stands higher at the toe.
    support_length_mm: from the tip of the toe to the hindmost point that bears weight, along the ground;
    side_breakover_mm: from the tip of the toe back to where the foot rolls over.
    """
    foot = _facing_right(points)
    if foot is None:
        return {}
    found = {**_angles(foot), **_front_wall(foot), **_lengths(foot)}
    return {name: found[name] for name in NEEDS if name in found}


def _facing_right(points: Points) -> dict[str, Floats] | None:
    """The foot on level ground with its toe to the right: a front wall runs outward on its way down."""
    foot = level(points)
    if foot is None or "dorsal_wall" not in foot:
        return None
    wall = foot["dorsal_wall"]
    return mirrored(foot, wall[..., -1, 0] < wall[..., 0, 0])


def _slope(line: Floats) -> Floats:
    """The angle of a line to the ground behind it, degrees from 0 to 180: of a front wall, the toe angle."""
    found = direction(line)
    upward = found * np.where(found[..., 1] < 0, -1.0, 1.0)[..., None]
    return np.asarray(180 - rise(upward))


def _angles(foot: Points) -> dict[str, Floats]:
    toe = _slope(foot["dorsal_wall"])
    found = {"toe_angle_deg": toe}
    if "heel_wall" in foot:
        heel = _slope(foot["heel_wall"])
        found |= {"heel_angle_deg": heel, "toe_heel_difference_deg": toe - heel}
    if "pastern" in foot:
        pastern = _slope(foot["pastern"])
        found |= {"pastern_angle_deg": pastern, "hoof_pastern_axis_deg": toe - pastern}
    if {"coronet_toe", "coronet_heel"} <= foot.keys():
        rises = foot["coronet_toe"][..., 0, :] - foot["coronet_heel"][..., 0, :]
        found["coronet_angle_deg"] = np.degrees(np.arctan2(rises[..., 1], rises[..., 0]))
    return found


def _front_wall(foot: Points) -> dict[str, Floats]:
    wall = foot["dorsal_wall"]
    return {
        "dorsal_gap_mm": gap(wall, np.array([1.0, 1.0])),
        "dorsal_flare_deg": turned_from(*upper_and_lower(wall)),
    }


def _lengths(foot: Points) -> dict[str, Floats]:
    top, tip = (_one(foot, name, place) for name, place in (("coronet_toe", 0), ("toe_tip", -1)))
    found = {"toe_length_mm": np.hypot(*np.moveaxis(tip - top, -1, 0))}
    if "heel_wall" in foot:
        heel = foot["heel_wall"]
        found["heel_length_mm"] = np.hypot(*np.moveaxis(heel[..., -1, :] - heel[..., 0, :], -1, 0))
    if "coronet_heel" in foot:
        found["heel_height_mm"] = foot["coronet_heel"][..., 0, 1]
    if "toe_tip" in foot:
        for name, mark in (("support_length_mm", "heel_contact"), ("side_breakover_mm", "breakover")):
            if mark in foot:
                found[name] = foot["toe_tip"][..., 0, 0] - foot[mark][..., 0, 0]
    return found


def _one(foot: Points, name: str, place: int) -> Floats:
    """A single landmark, or where it was not traced, a point of the front wall."""
    return foot[name][..., 0, :] if name in foot else foot["dorsal_wall"][..., place, :]

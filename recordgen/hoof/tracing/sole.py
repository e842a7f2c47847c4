"""The figures of a sole seen from below: sizes, where it is widest, shares, buttresses, frog and bars.

All figures stand in the foot's frame (`foot_frame.py`): the frog's axis is the measure of straight, and a side is
medial or lateral, never left or right. The outline is what was picked, with straight lines between the picks: with 14
picks it is some 2 % smaller in area than the rounded wall, with 28 about 0.5 %.
"""

from __future__ import annotations

from collections.abc import Callable

import numpy as np

from recordgen.hoof.tracing.foot_frame import FROG, Floats, Points, in_foot
from recordgen.hoof.tracing.polygons import Widest, area, lateral_area, medial_area, widest

BUTTRESSES = ("buttress_medial", "buttress_lateral")

# The landmarks that each figure needs.
NEEDS: dict[str, tuple[str, ...]] = {
    "sole_length_mm": ("wall", *FROG, *BUTTRESSES),
    "sole_width_mm": ("wall", *FROG),
    "width_to_length": ("wall", *FROG, *BUTTRESSES),
    "widest_from_toe_percent": ("wall", *FROG, *BUTTRESSES),
    "toe_to_heel_part": ("wall", *FROG, *BUTTRESSES),
    "sole_area_mm2": ("wall", *FROG),
    "medial_area_percent": ("wall", *FROG),
    "lateral_area_percent": ("wall", *FROG),
    "heel_buttress_medial_mm": ("buttress_medial", *FROG),
    "heel_buttress_lateral_mm": ("buttress_lateral", *FROG),
    "buttress_difference_mm": (*BUTTRESSES, *FROG),
    "frog_length_mm": FROG,
    "frog_width_mm": FROG,
    "frog_width_to_length": FROG,
    "bar_medial_deg": ("bar_medial", *FROG),
    "bar_lateral_deg": ("bar_lateral", *FROG),
    "bar_difference_deg": ("bar_medial", "bar_lateral", *FROG),
    "sole_breakover_mm": ("wall", "breakover", *FROG),
}


def sole_figures(points: Points) -> dict[str, Floats]:
    """The figures of a sole by name, each (...), in the order of NEEDS; those whose landmarks are missing are left out.

    points: landmarks of a sole, (..., n, 2), mm, y up; leading axes are draws.

    sole_length_mm: toe to the middle of the line across the buttresses, along the axis. sole_width_mm: the widest
    chord across the axis. widest_from_toe_percent: the widest place from the toe, in % of the length; toe_to_heel_part:
    the length before that place over the length behind it, not a number where nothing is behind. heel_buttress_*_mm:
    how far back along the axis each buttress stands from the frog's apex; the difference is lateral less medial, above
    0 where the lateral one stands further back. frog_*: apex to the middle of the base, and from base corner to base
    corner. bar_*_deg: against the axis, above 0 where the bar comes nearer to it toward the toe; the difference is
    lateral less medial. sole_breakover_mm: how far behind the toe the foot rolls over, along the axis.
    """
    foot = in_foot(points)
    if foot is None:
        return {}
    found: dict[str, Floats] = {}
    for part, needed in _PARTS:
        if needed <= foot.keys():
            found |= part(foot)
    return {name: np.asarray(found[name]) for name in NEEDS if name in found}


def _size(foot: Points) -> dict[str, Floats]:
    wide = widest(foot["wall"])
    found = {"sole_width_mm": wide.width}
    return found | _length(foot, wide) if set(BUTTRESSES) <= foot.keys() else found


def _length(foot: Points, wide: Widest) -> dict[str, Floats]:
    toe = _toe(foot)
    heel = (_back(foot, "buttress_medial") + _back(foot, "buttress_lateral")) / 2
    length, before, behind = toe - heel, toe - wide.place, wide.place - heel
    with np.errstate(divide="ignore", invalid="ignore"):
        return {
            "sole_length_mm": length,
            "width_to_length": wide.width / length,
            "widest_from_toe_percent": 100 * before / length,
            "toe_to_heel_part": np.where(behind > 0, before / behind, np.nan),
        }


def _areas(foot: Points) -> dict[str, Floats]:
    wall = foot["wall"]
    medial, lateral = medial_area(wall), lateral_area(wall)
    with np.errstate(divide="ignore", invalid="ignore"):
        share = 100 * medial / (medial + lateral)
    return {"sole_area_mm2": area(wall), "medial_area_percent": share, "lateral_area_percent": 100 - share}


def _buttress(name: str) -> Callable[[Points], dict[str, Floats]]:
    return lambda foot: {f"heel_{name}_mm": _back(foot, "frog_apex") - _back(foot, name)}


def _buttresses(foot: Points) -> dict[str, Floats]:
    return {"buttress_difference_mm": _back(foot, "buttress_medial") - _back(foot, "buttress_lateral")}


def _frog(foot: Points) -> dict[str, Floats]:
    base = foot["frog_lateral"][..., 0, :] - foot["frog_medial"][..., 0, :]
    length, width = _back(foot, "frog_apex"), np.hypot(base[..., 0], base[..., 1])
    return {"frog_length_mm": length, "frog_width_mm": width, "frog_width_to_length": width / length}


def _bar(name: str) -> Callable[[Points], dict[str, Floats]]:
    return lambda foot: {f"{name}_deg": _converging(foot, name)}


def _bars(foot: Points) -> dict[str, Floats]:
    return {"bar_difference_deg": _converging(foot, "bar_lateral") - _converging(foot, "bar_medial")}


def _breakover(foot: Points) -> dict[str, Floats]:
    return {"sole_breakover_mm": _toe(foot) - _back(foot, "breakover")}


def _toe(foot: Points) -> Floats:
    """Tell how far forward the wall reaches."""
    return np.asarray(foot["wall"][..., 1].max(axis=-1))


def _back(foot: Points, name: str) -> Floats:
    """Tell how far forward a single point stands."""
    return foot[name][..., 0, 1]


def _converging(foot: Points, name: str) -> Floats:
    run = foot[name][..., 1, :] - foot[name][..., 0, :]
    inward = 1 if name == "bar_medial" else -1
    return np.degrees(np.arctan2(inward * run[..., 0], run[..., 1]))


_PARTS: tuple[tuple[Callable[[Points], dict[str, Floats]], set[str]], ...] = (
    (_size, {"wall"}),
    (_areas, {"wall"}),
    *((_buttress(name), {name}) for name in BUTTRESSES),
    (_buttresses, set(BUTTRESSES)),
    (_frog, set(FROG)),
    *((_bar(name), {name}) for name in ("bar_medial", "bar_lateral")),
    (_bars, {"bar_medial", "bar_lateral"}),
    (_breakover, {"wall", "breakover"}),
)
